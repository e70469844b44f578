import { formatDecimal, inUnit, rational, toBase, unitById } from '../quantity/index.ts';
import type { Amount, Rational } from '../quantity/model.ts';
import type { PrintedFigure, Sample } from './model.ts';

/**
 * The simplest figure that the units allow, written as the printed one is, limits and all: `3/4 ± 1/64 in`
 * where `49/64 ± 1/64 in` cannot be. Null where none as short as that can.
 */
export function allowedText(printed: PrintedFigure, sample: Sample): string | null {
  const { statement } = printed;
  const { spread, mean } = sample.statistics;
  if (spread === null) return null;
  const ends = [statement.low?.amount ?? null, statement.high?.amount ?? null];
  const amounts = statement.nominal ? [statement.nominal] : ends;
  const [first = null, last = first] = amounts;
  if (first === null || last === null || first.gauge !== null || first.unit !== last.unit)
    return null;
  const told = (number: Rational): Rational =>
    inUnit(toBase(number, unitById(sample.unit)), statement.dimension, first.unit);
  const stretch = [spread.mean95.low, spread.mean95.high].map((end) =>
    told(rational(end.toFixed(12))),
  );
  const [low, high] = stretch;
  if (low === undefined || high === undefined) return null;
  const middle = first.number.add(last.number).div(2);
  const right = simplest(first, told(mean), low, high);
  if (right === null) return null;
  const shift = right.sub(middle);
  let text = statement.text;
  let from = 0;
  for (const amount of first === last ? [first] : [first, last]) {
    const number = /^[+-]?[\d./-]*\d/.exec(amount.text)?.[0];
    const at = number === undefined ? -1 : text.indexOf(number, from);
    if (number === undefined || at < 0) return null;
    const written = writtenAs(amount, amount.number.add(shift));
    text = text.slice(0, at) + written + text.slice(at + number.length);
    from = at + written.length;
  }
  return text === statement.text ? null : text;
}

/** The number nearest to the mean with the fewest figures that lies in the stretch, as fine as the amount at most. */
function simplest(as: Amount, mean: Rational, low: Rational, high: Rational): Rational | null {
  const steps: Rational[] = [];
  if (as.places === null) {
    for (let part = 1n; part <= as.number.d; part *= 2n) steps.push(rational(1n, part));
  } else {
    for (let places = -3; places <= as.places; places++) {
      steps.push(places < 0 ? rational(10 ** -places) : rational(1, 10 ** places));
    }
  }
  for (const step of steps) {
    const number = mean.div(step).add(rational(1, 2)).floor().mul(step);
    if (number.n !== 0n && number.compare(low) >= 0 && number.compare(high) <= 0) return number;
  }
  return null;
}

function writtenAs({ places }: Amount, number: Rational): string {
  if (places !== null) return formatDecimal(number, places);
  const whole = number.n / number.d;
  const rest = number.n % number.d;
  if (rest === 0n) return String(whole);
  return `${whole === 0n ? '' : `${whole}-`}${rest}/${number.d}`;
}
