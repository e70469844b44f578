import { describe, expect, test } from 'vitest';
import type { Check, Example, Finding } from '../../src/checks/define.ts';
import { allChecks } from '../../src/checks/index.ts';
import { examine } from '../../src/checks/list.ts';
import { runChecks } from '../../src/checks/run.ts';
import { applyEdits } from '../../src/report/edits.ts';
import { readSheet } from '../../src/sheet/index.ts';
import { exampleContext, exampleFile, wholeSheet } from './examples.ts';

const context = exampleContext();

/**
 * What a check finds on a sheet. It alone is run, except that one which looks at the findings of the
 * others has them all: what one check finds depends on no other, as the planted mistakes show.
 */
function foundBy(check: Check, text: string): readonly Finding[] {
  const all =
    check.last === true
      ? examine(text, exampleFile, context).findings
      : runChecks([check], readSheet(text, exampleFile, context), context);
  return all.filter((finding) => finding.check === check.id);
}

const known = new Map<Example, readonly Finding[]>();

function found(check: Check, example: Example): readonly Finding[] {
  const findings = known.get(example) ?? foundBy(check, wholeSheet(example.sheet));
  known.set(example, findings);
  return findings;
}

/** Which message of a check's table a finding was made from. */
function keyOf(check: Check, finding: Finding): string | undefined {
  return Object.entries(check.messages).find(
    ([, { message, fix }]) => fits(message, finding.message) && fits(fix, finding.fix),
  )?.[0];
}

function fits(template: string | null, text: string | null): boolean {
  if (template === null || text === null) return template === text;
  const parts = template
    .split(/\{[a-zA-Z]+\}/)
    .map((part) => part.replace(/[\\^$.*+?()[\]{}|]/g, '\\$&'));
  return new RegExp(`^${parts.join('[^]+')}$`).test(text);
}

describe('the clean sheet that examples start from', () => {
  test('has no findings', () => {
    const { findings } = examine(wholeSheet({}), exampleFile, context);
    expect(findings).toEqual([]);
  });
});

describe.each(allChecks.map((check) => [check.id, check] as const))('%s', (_, check) => {
  test.each(check.examples.map((example) => [example.name, example] as const))(
    '%s',
    (_name, example) => {
      const text = wholeSheet(example.sheet);
      const findings = found(check, example);
      expect(
        findings.map(({ span, message, fix, severity }) => ({
          at: text.slice(span.start, span.end),
          message,
          fix,
          severity,
        })),
      ).toEqual(
        example.expect.map(({ at, message, fix, severity }) => ({
          at,
          message,
          fix,
          severity: severity ?? check.severity,
        })),
      );
      for (const [index, finding] of findings.entries()) {
        expect(`${finding.message}${finding.fix}`).not.toMatch(/\{[a-zA-Z]+\}|undefined/);
        for (const { span } of finding.related) {
          expect(span.start).toBeGreaterThanOrEqual(0);
          expect(span.end).toBeLessThanOrEqual(text.length);
          expect(span.end).toBeGreaterThan(span.start);
        }
        const fixed = example.expect[index]?.fixed;
        if (finding.edits === null) {
          expect(fixed, 'only an example with edits says `fixed`').toBeUndefined();
          continue;
        }
        const mended = applyEdits(text, finding.edits);
        expect(fixed).toBeDefined();
        expect(changedLines(text, mended)).toBe(fixed);
        const again = foundBy(check, mended).map(({ message }) => message);
        expect(again).not.toContain(finding.message);
      }
    },
  );

  test('hits every message of its table', () => {
    const hit = new Set(
      check.examples.flatMap((example) => found(check, example)).map((one) => keyOf(check, one)),
    );
    expect([...hit].sort()).toEqual(Object.keys(check.messages).sort());
  });

  test('shows a right sheet and a wrong one', () => {
    expect(check.examples.some((example) => example.expect.length === 0)).toBe(true);
    expect(check.examples.some((example) => example.expect.length > 0)).toBe(true);
  });
});

/** The lines of the mended text from the first that differs to the last that does. */
function changedLines(before: string, after: string): string {
  const old = before.split('\n');
  const lines = after.split('\n');
  let start = 0;
  while (start < lines.length && lines[start] === old[start]) start++;
  let end = 0;
  while (end < lines.length - start && lines.at(-1 - end) === old.at(-1 - end)) end++;
  return lines.slice(start, lines.length - end).join('\n');
}
