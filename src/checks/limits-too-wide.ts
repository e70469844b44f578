import { principal, rational } from '../quantity/index.ts';
import type { Dimension, Statement } from '../quantity/model.ts';
import { isBlank } from './blank.ts';
import { defineCheck } from './define.ts';
import { fractionSlips, pointSlips } from './size-slips.ts';
import { readOf, sizesOfSetting } from './stated-sizes.ts';

/** `0.020 ± 0.2 in`: limits that let everything through. */
export default defineCheck({
  id: 'limits-too-wide',
  severity: 'warning',
  group: 'sizes',
  summary: 'Limits are wider than the figure itself, or reach down to nothing.',
  explain:
    'A tolerance is a small part of its figure. One that is larger, or that lets the size go to nothing, ' +
    'has mostly lost a zero or a digit, and proves nothing. Accept it where the paper really says so.',
  messages: {
    below: {
      message: '{text} reaches down to {low}, and there is no such size',
      fix: 'look for a slipped point in the tolerance, or a lost digit in its figure',
    },
    wide: {
      message: 'the limits of {text} are wider than the figure itself',
      fix: 'look for a slipped point in the tolerance, or a lost digit in its figure',
    },
    apart: {
      message: 'the upper limit of {text} is {times} times the lower',
      fix: 'look for a slipped point in one of the two',
    },
  },
  run(sheet, _context, report) {
    for (const setting of sheet.figures) {
      for (const { size, role, subject } of sizesOfSetting(setting)) {
        if (!STATED.has(role) || isBlank(size.text)) continue;
        const statement = readOf(size);
        if (!statement || ANY_ZERO.has(statement.dimension)) continue;
        const text = statement.text;
        const floor = setting.known?.usual.find(
          ({ dimension }) => dimension === statement.dimension,
        )?.low;
        const isSome = floor !== undefined && (principal(floor)?.base.n ?? 0n) > 0n;
        const wide = widthOf(statement, isSome);
        if (wide === null) continue;
        const suggest = () =>
          [...fractionSlips(text), ...pointSlips(text)].slice(0, 4).map((write) => ({ write }));
        if (wide === 'below' || wide === 'nothing') {
          report({
            message: 'below',
            suggest,
            span: size.span,
            values: { text, low: wide === 'below' ? 'less than nothing' : wide },
            subject,
          });
        } else if (wide === 'wide') {
          report({ message: 'wide', span: size.span, values: { text }, subject, suggest });
        } else {
          report({
            message: 'apart',
            suggest,
            span: size.span,
            values: { text, times: String(wide) },
            subject,
          });
        }
      }
    }
  },
  examples: [
    {
      name: 'a tolerance that lost a zero',
      sheet: { settings: 'float-drop: { value: 0.050 ± 0.2 in, from: m48 p. 31 }' },
      expect: [
        {
          at: '0.050 ± 0.2 in',
          message: '0.050 ± 0.2 in reaches down to less than nothing, and there is no such size',
          fix: 'look for a slipped point in the tolerance, or a lost digit in its figure',
        },
      ],
    },
    {
      name: 'a tolerance wider than its figure',
      sheet: { settings: 'idle-speed: { value: 500 ± 300 rpm, from: m48 p. 31 }' },
      expect: [
        {
          at: '500 ± 300 rpm',
          message: 'the limits of 500 ± 300 rpm are wider than the figure itself',
          fix: 'look for a slipped point in the tolerance, or a lost digit in its figure',
        },
      ],
    },
    {
      name: 'limits of which one slipped its point',
      sheet: { settings: 'float-drop: { value: 0.018–0.22 in, from: m48 p. 31 }' },
      expect: [
        {
          at: '0.018–0.22 in',
          message: 'the upper limit of 0.018–0.22 in is 12 times the lower',
          fix: 'look for a slipped point in one of the two',
        },
      ],
    },
    {
      name: 'a tolerance that takes a jet down to nothing',
      sheet: { settings: 'main-jet: { value: 0.050 +0/-0.050 in, from: m48 p. 28 }' },
      expect: [
        {
          at: '0.050 +0/-0.050 in',
          message: '0.050 +0/-0.050 in reaches down to nothing, and there is no such size',
          fix: 'look for a slipped point in the tolerance, or a lost digit in its figure',
        },
      ],
    },
    {
      name: 'a tolerance about flush, where flush is a size',
      sheet: { settings: 'float-drop: { value: 0 ± 1/64 in, from: m48 p. 31 }' },
      expect: [],
    },
    {
      name: 'limits as wide as the figure, from nothing up, and about a mark that counts both ways',
      sheet: {
        settings:
          'float-drop: { value: 0.02 ± 0.01 in, from: m48 p. 31 }\nbalance: { value: 0 to 3 %, from: m48 p. 32 }\nchoke-cover-index: { value: 1 ± 2 notches, from: m48 p. 33 }',
      },
      expect: [],
    },
  ],
});

const STATED: ReadonlySet<string> = new Set(['value', 'also', 'place', 'but']);

/** What counts to either side of a mark, so that nothing is no end of it. */
const ANY_ZERO: ReadonlySet<Dimension> = new Set(['notches', 'angle', 'temperature', 'condition']);

/** From this many times on, limits that are stated as two figures are doubtful (common practice, no source). */
const TIMES = 10;

/**
 * How a statement's limits are too wide: the times between them, where they are two figures; null if
 * not. About nothing itself (flush) limits go both ways; `isSome` says that ordinary units have none
 * of so small a size.
 */
function widthOf(
  { form, nominal, low, high }: Statement,
  isSome: boolean,
): 'below' | 'nothing' | 'wide' | number | null {
  if (!low || !high || nominal?.base.n === 0n) return null;
  if (low.base.s < 0n) return 'below';
  if (form === 'tolerance' && isSome && low.base.n === 0n) return 'nothing';
  const width = high.base.sub(low.base);
  if (form === 'tolerance' && nominal) return width.compare(nominal.base) > 0 ? 'wide' : null;
  if (form !== 'range' || low.base.n === 0n) return null;
  const times = high.base.div(low.base);
  return times.compare(rational(TIMES)) >= 0 ? Math.floor(times.valueOf()) : null;
}
