import { afterAll, describe, expect, test } from 'vitest';
import type { Finding } from '../../src/checks/define.ts';
import { examine } from '../../src/checks/index.ts';
import { runChecks } from '../../src/checks/run.ts';
import { applyEdits } from '../../src/report/index.ts';
import { readSheet } from '../../src/sheet/index.ts';
import { demoContext, demoSheets, orderChecks, removals, swaps } from './demo-sheets.ts';

/*
 * Doing what a finding says, and nothing else, clears it: what --fix would do, and the steps that a
 * remedy asks to add, pasted where it says.
 */

const tally = { moved: 0, byHand: 0, added: 0 };

function findings(text: string): readonly Finding[] {
  return examine(text, 'sheets/demo.md', demoContext).findings;
}

/** Only what is said of the order. */
function orderFindings(text: string): readonly Finding[] {
  return runChecks(orderChecks, readSheet(text, 'sheets/demo.md', demoContext), demoContext);
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
  const [, step = '', heading = ''] = /^add `(\d+\. .*)` at the end of `(## .*)`$/.exec(fix) ?? [];
  const sections = text.split(/^(?=## )/m);
  const at = sections.findIndex((section) => section.split(/ \{#|\n/)[0] === heading);
  if (at < 0) return null;
  sections[at] = `${sections[at]?.trimEnd()}\n${step}\n\n`;
  return sections.join('');
}

describe.each(demoSheets)('%s', (_, text) => {
  const before = new Set(findings(text).map(words));

  test('a heading out of place, moved as told', { timeout: 180_000 }, () => {
    for (const [what, changed] of swaps(text)) {
      for (const finding of orderFindings(changed)) {
        const byHand = movedAs(finding.fix ?? '', changed);
        if (byHand !== null) {
          tally.byHand++;
          const left = orderFindings(byHand).map(words);
          expect([what, left]).toEqual([what, []]);
        }
        if (finding.edits === null) continue;
        tally.moved++;
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
    for (const [what, changed] of removals(text)) {
      const told = orderFindings(changed);
      const known = new Set(told.map(words));
      for (const finding of told) {
        const mended = addedAs(finding.fix ?? '', changed);
        if (mended === null) continue;
        tally.added++;
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
  console.log(
    `${tally.byHand} headings moved as told, ${tally.moved} of them by --fix; ${tally.added} steps added as told`,
  );
  expect(Math.min(tally.byHand, tally.moved, tally.added)).toBeGreaterThan(0);
});
