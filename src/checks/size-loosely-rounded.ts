import {
  agree,
  differenceText,
  liesInside,
  principal,
  rational,
  sizeBeside,
} from '../quantity/index.ts';
import type { Amount, Statement } from '../quantity/model.ts';
import { defineCheck } from './define.ts';
import { doubtfulPairs, restatements } from './statement-pairs.ts';

/** Half a thousandth of an inch in mm: what the finest figure of an ordinary card resolves. */
const HALF_THOU = rational('0.0127');

/** A restated size with so few places that it is another setting in the hand. */
export default defineCheck({
  id: 'size-loosely-rounded',
  severity: 'note',
  group: 'sizes',
  summary: 'A size was rounded so far that it no longer says the same in the hand.',
  explain:
    'A decimal carries its rounding: .20 for 13/64 is right to two places and three thousandths off ' +
    'on the feeler. A rounding that takes more than a tenth of the tolerance is worth a place more; ' +
    'one that leaves the limits is a warning.',
  messages: {
    loose: {
      message: '{second} for {first} is rounded by {off}; {first} is {exact}',
      fix: 'give it a place more',
    },
    outside: {
      message: '{second} for {first} is rounded out of the limits, by {off}; {first} is {exact}',
      fix: 'give it a place more',
    },
    apart: {
      message:
        '{second} and {first} could both be roundings of one size, but neither is the other converted',
      fix: 'write {expected}, or give the size that both come from',
    },
  },
  run(sheet, context, report) {
    for (const setting of sheet.settings.values()) {
      const subject = setting.canonical ?? setting.name.value;
      const sizes = restatements(setting);
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
            off: differenceText(one, two, other.statement).replace(/ (?:more|less)$/, ''),
            exact: sizeBeside(one, two, other.statement),
          },
          compared: [value.statement.text, other.statement.text],
          related: [{ span: value.stated.size.span, label: 'the value' }],
          subject,
          severity: outside ? 'warning' : 'note',
        });
      }
      for (const { trusted, doubtful, agreement } of doubtfulPairs(setting, context.gauges)) {
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
  examples: [],
});

function hasBand(statement: Statement): boolean {
  return statement.low !== null && statement.high !== null;
}

/**
 * Whether a restatement is off by more than half a thousandth of an inch and by more than a tenth
 * of the tolerance, where there is one.
 */
function isLoose(value: Statement, one: Amount, two: Amount): boolean {
  if (two.places === null) return false;
  const off = two.base.sub(one.base).abs();
  if (off.compare(HALF_THOU) <= 0) return false;
  if (!value.low || !value.high) return true;
  return off.compare(value.high.base.sub(value.low.base).div(10)) > 0;
}
