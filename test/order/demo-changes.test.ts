import { afterAll, describe, expect, test } from 'vitest';
import type { Finding } from '../../src/checks/define.ts';
import { examine } from '../../src/checks/list.ts';
import { runChecks } from '../../src/checks/run.ts';
import { applyEdits } from '../../src/report/edits.ts';
import { readSheet } from '../../src/sheet/index.ts';
import { casesToTry, isQuick } from '../suite/part.ts';
import { demoContext, demoSheets, orderChecks, removals, swaps } from './demo-sheets.ts';
import { canBeDone } from './naive-oracle.ts';

/*
 * Every two neighboring operations of the demo changed about, and every step that carries a state left
 * out. What is told is held against a naive simulation; and doing what a finding says, and nothing
 * else, clears it: what --fix would do, and the steps that a remedy asks to add, pasted where it says.
 */

const tally = { swaps: 0, wrongSwaps: 0, removals: 0, wrongRemovals: 0 };
const cures = { moved: 0, byHand: 0, added: 0 };

/** The work of one text, done once: a sheet that is changed, and changed back by its cure, comes again. */
function once<T>(work: (text: string) => T): (text: string) => T {
  const known = new Map<string, T>();
  return (text) => {
    const found = known.get(text) ?? work(text);
    known.set(text, found);
    return found;
  };
}

/** All that is said of a sheet. */
const findings = once(
  (text): readonly Finding[] => examine(text, 'sheets/demo.md', demoContext).findings,
);

/** Only what is said of the order. */
const orderFindings = once((text): readonly Finding[] =>
  runChecks(orderChecks, readSheet(text, 'sheets/demo.md', demoContext), demoContext),
);

/** What is said of the order, with the lines that it is said of. */
function linesOf(text: string): readonly string[] {
  return orderFindings(text).map(({ check, severity, message, span }) => {
    const line = text.slice(0, span.start).split('\n').length;
    return `${severity} ${line} ${check}: ${message}`;
  });
}

/** What is wrong has to be found, and what is right has to be free of errors. */
function agrees(isRight: boolean, found: readonly string[]): boolean {
  return isRight
    ? !found.some((each) => each.startsWith('error'))
    : found.some((each) => !each.startsWith('note'));
}

function kindIn(text: string): string {
  return /^ {2}kind: ([a-z-]+)$/m.exec(text)?.[1] ?? '';
}

/** What a finding says, without its place. */
function words({ check, message }: Finding): string {
  return `${check}: ${message}`;
}

/** The sheet with one section moved as a remedy says: “move `## One` above `## Two`”. */
function movedAs(fix: string, text: string): string | null {
  const [, what = '', side = '', where = ''] =
    /^move `(## .*?)` (above|below) `(## .*?)`/.exec(fix) ?? [];
  const sections = text.trimEnd().split(/^(?=## )/m);
  const named = (heading: string): number =>
    sections.findIndex((section) => section.split(/ \{#|\n/)[0] === heading);
  const from = named(what);
  if (from < 0) return null;
  const [section = ''] = sections.splice(from, 1);
  sections.splice(named(where) + (side === 'below' ? 1 : 0), 0, section);
  return `${sections.map((each) => each.trimEnd()).join('\n\n')}\n`;
}

/** The sheet with one step added as a remedy says: “add `4. ...` at the end of `## One`”. */
function addedAs(fix: string, text: string): string | null {
  const [, step = '', heading = ''] =
    /^add `(\d+\. [^`]*)` at the end of `(## [^`]*)`/.exec(fix) ?? [];
  const sections = text.split(/^(?=## )/m);
  const at = sections.findIndex((section) => section.split(/ \{#|\n/)[0] === heading);
  if (at < 0) return null;
  sections[at] = `${sections[at]?.trimEnd()}\n${step}\n\n`;
  return sections.join('');
}

describe.each(demoSheets)('%s', (_, text) => {
  const kind = kindIn(text);
  const before = new Set(findings(text).map(words));

  test('as it is, can be done', () => {
    expect([canBeDone(text, kind), linesOf(text)]).toEqual([true, []]);
  });

  test('with two neighboring operations changed about', { timeout: 120_000 }, () => {
    for (const [what, changed] of casesToTry(swaps(text), 12)) {
      const isRight = canBeDone(changed, kind);
      tally.swaps++;
      if (!isRight) tally.wrongSwaps++;
      const found = linesOf(changed);
      expect({ what, isRight, found, agrees: agrees(isRight, found) }).toEqual({
        what,
        isRight,
        found,
        agrees: true,
      });
    }
  });

  test('without one of the steps that carry a state', { timeout: 120_000 }, () => {
    for (const [what, changed] of casesToTry(removals(text), 12)) {
      const isRight = canBeDone(changed, kind);
      tally.removals++;
      if (!isRight) tally.wrongRemovals++;
      const found = linesOf(changed);
      expect({ what, isRight, found, agrees: agrees(isRight, found) }).toEqual({
        what,
        isRight,
        found,
        agrees: true,
      });
    }
  });

  test('a heading out of place, moved as told', { timeout: 180_000 }, () => {
    for (const [what, changed] of casesToTry(swaps(text), 12)) {
      for (const finding of orderFindings(changed)) {
        const byHand = movedAs(finding.fix ?? '', changed);
        if (byHand !== null) {
          cures.byHand++;
          const left = orderFindings(byHand).map(words);
          expect([what, left]).toEqual([what, []]);
        }
        if (finding.edits === null) continue;
        cures.moved++;
        const mended = applyEdits(changed, finding.edits);
        const fresh = findings(mended)
          .map(words)
          .filter((each) => !before.has(each));
        expect([what, fresh]).toEqual([what, []]);
        expect(mended.length).toBe(changed.length);
      }
    }
  });

  test('a step that is missing, added as told', { timeout: 180_000 }, () => {
    for (const [what, changed] of casesToTry(removals(text), 12)) {
      const told = orderFindings(changed);
      const known = new Set(told.map(words));
      for (const finding of told) {
        const mended = addedAs(finding.fix ?? '', changed);
        if (mended === null) continue;
        cures.added++;
        const left = orderFindings(mended).map(words);
        expect([what, left.filter((each) => each === words(finding) || !known.has(each))]).toEqual([
          what,
          [],
        ]);
      }
    }
  });
});

afterAll(() => {
  const { swaps: s, wrongSwaps, removals: r, wrongRemovals } = tally;
  console.log(
    `check and the naive simulation agree: ${s} swaps (${wrongSwaps} wrong), ${r} removals (${wrongRemovals} wrong)`,
  );
  console.log(
    `${cures.byHand} headings moved as told, ${cures.moved} of them by --fix; ${cures.added} steps added as told`,
  );
  // A few of them need no cure of one sort.
  if (isQuick) return;
  expect(Math.min(cures.byHand, cures.moved, cures.added)).toBeGreaterThan(0);
});
