import { isNumbered } from '../quantity/index.ts';
import type { Statement } from '../quantity/model.ts';
import { defineCheck } from './define.ts';
import { ruledSlips } from './size-slips.ts';
import { statedSizes } from './stated-sizes.ts';

/** Divisions of an inch that rules, drills and period papers know. */
const RULED: ReadonlySet<string> = new Set([
  '2',
  '4',
  '8',
  '16',
  '32',
  '64',
  '128',
  '10',
  '20',
  '50',
  '100',
  '1000',
]);

/** A fraction of an inch with a denominator that no rule is divided by. */
export default defineCheck({
  id: 'fraction-unruled',
  severity: 'warning',
  group: 'sizes',
  depth: 5,
  summary: 'A fraction of an inch has a denominator that no rule or drill knows.',
  explain:
    'Inches are halved, down to sixty-fourths. A denominator of 34 or 46 is almost always a misprint ' +
    'of one that is. Accept it where the source really divides so.',
  messages: {
    odd: {
      message: '{fraction} in is a fraction that no rule or drill is divided by',
      fix: 'look in the source again: 2, 4, 8, 16, 32 and 64 are usual',
    },
  },
  run(sheet, _context, report) {
    for (const { size, subject } of statedSizes(sheet)) {
      if (!size.reading.ok || !isInches(size.reading.statement)) continue;
      const fractions = /(\d+)[/⁄](\d+)/g;
      for (let match = fractions.exec(size.text); match; match = fractions.exec(size.text)) {
        if (RULED.has(match[2] ?? '')) continue;
        const [fraction] = match;
        const suggest = () =>
          ruledSlips(fraction).map((each) => ({ write: size.text.replace(fraction, each) }));
        report({ message: 'odd', span: size.span, values: { fraction }, subject, suggest });
        break;
      }
    }
  },
  examples: [
    {
      name: 'twelfths and twenty-fourths',
      sheet: {
        settings:
          'float-drop: { value: 7/12 in, from: m48 p. 31 }\nunloader: { value: 5/24 in, from: m48 p. 33 }',
      },
      expect: [
        {
          at: '7/12 in',
          message: '7/12 in is a fraction that no rule or drill is divided by',
          fix: 'look in the source again: 2, 4, 8, 16, 32 and 64 are usual',
        },
        {
          at: '5/24 in',
          message: '5/24 in is a fraction that no rule or drill is divided by',
          fix: 'look in the source again: 2, 4, 8, 16, 32 and 64 are usual',
        },
      ],
    },
    {
      name: 'the fractions that rules and drills have',
      sheet: {
        settings:
          'float-drop: { value: 1-7/16 in, from: m48 p. 31 }\nidle-stop: { value: 1/3 turn in after contact, from: m48 p. 40 }',
      },
      expect: [],
    },
    {
      name: 'the number of a thick wire',
      sheet: { settings: 'float-drop: { value: 4/0 BWG, from: m48 p. 31 }' },
      expect: [],
    },
  ],
});

function isInches(statement: Statement): boolean {
  const amount = statement.nominal ?? statement.low?.amount ?? statement.high?.amount;
  return (
    statement.dimension === 'length' &&
    amount?.unit === 'in' &&
    // `4/0 AWG` is a number.
    !(amount.gauge && isNumbered(amount.gauge.system))
  );
}
