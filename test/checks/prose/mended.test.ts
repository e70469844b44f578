import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { Finding } from '../../../src/checks/define.ts';
import { examine } from '../../../src/checks/list.ts';
import { mend } from '../../../src/report/index.ts';
import { runs } from '../../suite/part.ts';
import { exampleContext } from '../examples.ts';
import { alteration } from './alterations.ts';

const folder = new URL('../../../sheets/', import.meta.url);
const texts = readdirSync(folder)
  .filter((name) => name.endsWith('.md'))
  .map((name) => readFileSync(new URL(name, folder), 'utf8'))
  .filter((text) => !text.includes('\nbased-on:'));

const context = { ...exampleContext(), picture: null };
const mostRounds = 5;

function findingsOf(text: string): readonly Finding[] {
  return examine(text, 'sheets/altered.md', context).findings;
}

/** As `check --fix` does it: round by round, until nothing more is certain. */
function fixed(
  text: string,
  first: readonly Finding[],
): { text: string; findings: readonly Finding[]; rounds: readonly string[] } {
  const rounds: string[] = [];
  let now = text;
  let findings = first;
  for (let round = 0; round < mostRounds; round++) {
    const step = mend(now, findings);
    if (step.mended.length === 0) break;
    rounds.push(now);
    now = step.text;
    findings = findingsOf(now);
  }
  return { text: now, findings, rounds };
}

const errorsOf = (findings: readonly Finding[]): Map<string, number> => {
  const count = new Map<string, number>();
  for (const { severity, check, subject } of findings)
    if (severity === 'error')
      count.set(`${check} ${subject}`, (count.get(`${check} ${subject}`) ?? 0) + 1);
  return count;
};

/** The stretches of a text that mending changed: whatever stands between equal heads and tails of lines. */
function outside(before: string, after: string, findings: readonly Finding[]): string | null {
  const edits = findings
    .filter(({ accepted }) => accepted === null)
    .flatMap((finding) => finding.edits ?? [])
    .sort((a, b) => a.span.start - b.span.start);
  // What no edit touches has to stand in the mended text, in its order.
  let at = 0;
  let from = 0;
  for (const { span } of [...edits, { span: { start: before.length, end: before.length } }]) {
    if (span.start < from) continue;
    const kept = before.slice(from, span.start);
    const found = after.indexOf(kept, at);
    if (found < 0) return kept.slice(0, 60);
    at = found + kept.length;
    from = span.end;
  }
  return null;
}

/** Forty by default, some ten seconds on a busy machine; all 2,000 with ALTERED_SHEETS=2000. */
const sheets = Number(process.env.ALTERED_SHEETS ?? runs(40));

describe('--fix on sheets altered at random', () => {
  it('mends once what it would mend twice, makes no error, and touches nothing else', () => {
    let mended = 0;
    let edits = 0;
    let errors = 0;
    for (let seed = 1; seed <= sheets; seed++) {
      const text = alteration(texts[seed % texts.length] ?? '', seed);
      const before = findingsOf(text);
      const once = fixed(text, before);
      errors += before.filter(({ severity }) => severity === 'error').length;
      if (once.text === text) continue;
      mended += 1;
      edits += before.filter((finding) => finding.edits !== null).length;
      const told = `sheet ${seed}`;
      expect(fixed(once.text, once.findings).text, `${told}: twice is once`).toBe(once.text);
      const was = errorsOf(before);
      const fresh = [...errorsOf(once.findings)].filter(
        ([key, count]) => count > (was.get(key) ?? 0),
      );
      expect(fresh, `${told}: no error is new`).toEqual([]);
      const first = once.rounds[1] ?? once.text;
      expect(outside(text, first, before), `${told}: nothing else is changed`).toBeNull();
    }
    console.log(
      `${sheets} altered sheets: ${errors} errors before, ${mended} sheets mended by ${edits} findings with a cure`,
    );
    expect(mended).toBeGreaterThan(sheets / 20);
  }, 1_200_000);
});
