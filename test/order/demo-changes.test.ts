import { afterAll, describe, expect, test } from 'vitest';
import { runChecks } from '../../src/checks/run.ts';
import { readSheet } from '../../src/sheet/index.ts';
import { demoContext, demoSheets, orderChecks, removals, swaps } from './demo-sheets.ts';
import { canBeDone } from './naive-oracle.ts';

const tally = { swaps: 0, wrongSwaps: 0, removals: 0, wrongRemovals: 0 };

function orderFindings(text: string): readonly string[] {
  const sheet = readSheet(text, 'sheets/demo.md', demoContext);
  return runChecks(orderChecks, sheet, demoContext).map(
    ({ check, severity, message, span }) =>
      `${sheet.lines.place(span.start).line} ${severity} ${check}: ${message}`,
  );
}

function kindIn(text: string): string {
  return /^ {2}kind: ([a-z-]+)$/m.exec(text)?.[1] ?? '';
}

describe.each(demoSheets)('%s', (_, text) => {
  const kind = kindIn(text);

  test('as it is, can be done', () => {
    expect([canBeDone(text, kind), orderFindings(text)]).toEqual([true, []]);
  });

  test('with two neighboring operations changed about', { timeout: 120_000 }, () => {
    for (const [what, changed] of swaps(text)) {
      const isRight = canBeDone(changed, kind);
      tally.swaps++;
      if (!isRight) tally.wrongSwaps++;
      const found = orderFindings(changed);
      expect({ what, isRight: found.length === 0, found }).toEqual({ what, isRight, found });
    }
  });

  test('without one of the steps that carry a state', { timeout: 120_000 }, () => {
    for (const [what, changed] of removals(text)) {
      const isRight = canBeDone(changed, kind);
      tally.removals++;
      if (!isRight) tally.wrongRemovals++;
      const found = orderFindings(changed);
      expect({ what, isRight: found.length === 0, found }).toEqual({ what, isRight, found });
    }
  });
});

afterAll(() => {
  const { swaps: s, wrongSwaps, removals: r, wrongRemovals } = tally;
  console.log(
    `check and the naive simulation agree: ${s} swaps (${wrongSwaps} wrong), ${r} removals (${wrongRemovals} wrong)`,
  );
});
