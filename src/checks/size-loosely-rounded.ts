import { agree, gapText, liesInside, principal, rational, sizeBeside } from '../quantity/index.ts';
import type { Amount, Statement } from '../quantity/model.ts';
import { defineCheck } from './define.ts';
import { hiddenSwaps } from './hidden-swaps.ts';
import { toldAs } from './likely-misprint.ts';
import { doubtfulPairs, restatements } from './statement-pairs.ts';

/** Half a thousandth of an inch in mm: the finest that a figure with a tolerance is held to. */
const HALF_THOU = rational('0.0127');

/** What rounding to a tenth of a millimeter takes at most: ordinary where no tolerance is stated. */
const ORDINARY = rational('0.05');

/** A restated size with so few places that it is another setting in the hand. */
export default defineCheck({
  id: 'size-loosely-rounded',
  severity: 'note',
  group: 'sizes',
  summary: 'A size was rounded so far that it no longer says the same in the hand.',
  explain:
    'A decimal carries its rounding: .20 for 13/64 is right to two places and three thousandths off ' +
    'on the feeler. A rounding that takes more than a tenth of the tolerance (or, where none is stated, more than ' +
    'a twentieth of a millimeter) is worth a place more; one that leaves the limits is a warning.',
  messages: {
    loose: {
      message: '{second} for {first} is rounded by {off}, from {exact}',
      fix: 'give it a place more',
    },
    outside: {
      message: '{second} for {first} is rounded out of the limits, by {off} from {exact}',
      fix: 'give it a place more',
    },
    apart: {
      message:
        '{second} and {first} could both be roundings of one size, but neither is the other converted',
      fix: 'write {expected}, or give the size that both come from',
      suggest: [{ write: '{expected}' }],
    },
    swapped: {
      message: '{second} rounds to {first}, but {suggestion} is {first} converted',
      fix: '{suggestion}, if two digits were swapped; if the source has both as they stand, accept it with a reason',
      suggest: [{ write: '{suggestion}' }],
    },
  },
  run(sheet, context, report) {
    for (const setting of sheet.figures) {
      const subject = setting.id;
      const sizes = restatements(setting);
      for (const { finer, coarser, suggestion } of hiddenSwaps(sizes)) {
        report({
          message: 'swapped',
          span: finer.stated.size.span,
          values: { second: finer.statement.text, first: coarser.statement.text, suggestion },
          compared: [coarser.statement.text, finer.statement.text],
          related: [{ span: coarser.stated.size.span, label: 'the size it may restate' }],
          subject,
          severity: 'warning',
        });
      }
      const [value, ...rest] = sizes;
      if (!value) continue;
      for (const other of rest) {
        if (value.statement.dimension !== 'length') break;
        const one = principal(value.statement);
        const two = principal(other.statement);
        if (!one || !two || !isLoose(value.statement, one, two)) continue;
        if (
          agree(value.statement, other.statement, { gauges: context.gauges }).verdict !== 'agrees'
        )
          continue;
        const outside = hasBand(value.statement) && !liesInside(value.statement, two);
        report({
          message: outside ? 'outside' : 'loose',
          span: other.stated.size.span,
          values: {
            first: value.statement.text,
            second: other.statement.text,
            off: gapText(one, two, other.statement),
            exact: sizeBeside(one, two, other.statement),
          },
          compared: [value.statement.text, other.statement.text],
          related: [{ span: value.stated.size.span, label: 'the value' }],
          suggest: () => {
            const told = toldAs(value.statement, other.statement, context.gauges);
            const exact = sizeBeside(one, two, other.statement);
            return [told, exact].flatMap((write) => (write === null ? [] : [{ write }]));
          },
          subject,
          severity: outside ? 'warning' : 'note',
        });
      }
      for (const { trusted, doubtful, agreement } of doubtfulPairs(setting)) {
        if (agreement.verdict !== 'loose') continue;
        report({
          message: 'apart',
          span: doubtful.stated.size.span,
          values: {
            first: trusted.statement.text,
            second: doubtful.statement.text,
            expected: agreement.expected,
          },
          compared: [trusted.statement.text, doubtful.statement.text],
          related: [{ span: trusted.stated.size.span, label: 'the size it restates' }],
          subject,
        });
      }
    }
  },
  examples: [
    {
      name: 'two places for a sixty-fourth',
      sheet: {
        settings:
          'float-level: { value: 13/64 in, also: [.20 in], at: free end, gasket: removed, from: m48 p. 31 }',
      },
      expect: [
        {
          at: '.20 in',
          message: '.20 in for 13/64 in is rounded by 0.003 in, from 0.2031 in',
          fix: 'give it a place more',
        },
      ],
    },
    {
      name: 'rounded out of the limits',
      sheet: {
        settings: 'fast-idle-cam: { value: 0.0180 ± 0.0015 in, also: [0.02 in], from: m48 p. 33 }',
      },
      expect: [
        {
          at: '0.02 in',
          message:
            '0.02 in for 0.0180 ± 0.0015 in is rounded out of the limits, by 0.002 in from 0.0180 in',
          fix: 'give it a place more',
          severity: 'warning',
        },
      ],
    },
    {
      name: 'swapped digits that a coarser figure hides',
      sheet: { settings: 'fast-idle-gap: { value: 0.035 in, also: [0.898 mm], from: m48 p. 31 }' },
      expect: [
        {
          at: '0.898 mm',
          severity: 'warning',
          message: '0.898 mm rounds to 0.035 in, but 0.889 mm is 0.035 in converted',
          fix: '0.889 mm, if two digits were swapped; if the source has both as they stand, accept it with a reason',
        },
      ],
    },
    {
      name: 'swapped digits that a coarser limit hides',
      sheet: {
        settings: 'fast-idle-gap: { value: 0.010 in max, also: [0.245 mm max], from: m48 p. 31 }',
      },
      expect: [
        {
          at: '0.245 mm max',
          severity: 'warning',
          message:
            '0.245 mm max rounds to 0.010 in max, but 0.254 mm max is 0.010 in max converted',
          fix: '0.254 mm max, if two digits were swapped; if the source has both as they stand, accept it with a reason',
        },
      ],
    },
    {
      name: 'a figure in millimeters that was rounded to thousandths, no digits swapped',
      sheet: { settings: 'fast-idle-gap: { value: 0.895 mm, also: [0.035 in], from: m48 p. 31 }' },
      expect: [],
    },
    {
      name: 'two roundings, neither the other converted',
      sheet: { settings: 'float-drop: { value: 0.222 in, also: [5.7 mm], from: m48 p. 31 }' },
      expect: [
        {
          at: '5.7 mm',
          message:
            '5.7 mm and 0.222 in could both be roundings of one size, but neither is the other converted',
          fix: 'write 5.6 mm, or give the size that both come from',
        },
      ],
    },
    {
      name: 'to a tenth of a millimeter, with no tolerance to take from',
      sheet: { settings: 'float-drop: { value: 19.05 mm, also: [19.1 mm], from: m48 p. 31 }' },
      expect: [],
    },
    {
      name: 'a tenth of the tolerance off, and no more',
      sheet: {
        settings: 'float-drop: { value: 0.754 ± 0.020 in, also: [.75 in], from: m48 p. 31 }',
      },
      expect: [],
    },
    {
      name: 'three places',
      sheet: {
        settings:
          'float-level: { value: 13/64 in, also: [.203 in], at: free end, gasket: removed, from: m48 p. 31 }',
      },
      expect: [],
    },
  ],
});

function hasBand(statement: Statement): boolean {
  return statement.low !== null && statement.high !== null;
}

/**
 * Whether a restatement is off by more than half a thousandth of an inch and a tenth of the
 * tolerance, or, where none is stated, by more than tenths of a millimeter can be.
 */
function isLoose(value: Statement, one: Amount, two: Amount): boolean {
  if (two.places === null) return false;
  const off = two.base.sub(one.base).abs();
  if (!value.low || !value.high) return off.compare(ORDINARY) > 0;
  if (off.compare(HALF_THOU) <= 0) return false;
  return off.compare(value.high.base.sub(value.low.base).div(10)) > 0;
}
