import { spaced, spelledUnit } from './amount-text.ts';
import type { Amount, Rational, Statement } from './model.ts';
import { formatDecimal } from './rational.ts';
import { inUnit, unitById } from './units.ts';
import { placesToShow, unitWord, writeCount, writeIn } from './write.ts';

/** The first amount written as the second is: same unit and spelling, same places, same marks. */
export function rewritten(from: Amount, as: Amount, statement: Statement): string {
  const number = inUnit(from.base, statement.dimension, as.unit);
  const figure = inStyleOf(as, formatDecimal(number, as.places ?? 4));
  return figure + spelledUnit(statement.text, as.unit, spaced(unitWord(as.unit, number)));
}

/** A leading zero is left off where the writer left it off, and a comma stands where they put one. */
function inStyleOf(as: Amount, figure: string): string {
  const bare = /^[.·]/.test(as.text) ? figure.replace(/^0\./, '.') : figure;
  return /^\d+,\d+(?![\d.,])/.test(as.text) ? bare.replace('.', ',') : bare;
}

/** The first amount's size in the unit of the second, at places that show how they differ. */
export function sizeBeside(from: Amount, beside: Amount, statement: Statement): string {
  const unit = beside.unit;
  if (unit === 'turn' || unit === 'flat' || unit === 'notch') return writeCount(from.base, unit);
  const least = unit === 'in' ? 4 : unit === 'mm' ? 3 : (beside.places ?? 1);
  return writeIn(from.base, statement.dimension, unit, Math.max(least, beside.places ?? 0));
}

/** `0.027 in more`: the second less the first, in the second's unit. */
export function differenceText(one: Amount, two: Amount, statement: Statement): string {
  const isMore = gapOf(one, two, statement).s > 0n;
  const [more, less] = two.unit === 'notch' ? ['richer', 'leaner'] : ['more', 'less'];
  return `${gapText(one, two, statement)} ${isMore ? more : less}`;
}

/** `0.027 in`: how far the two are apart, in the second's unit. */
export function gapText(one: Amount, two: Amount, statement: Statement): string {
  const gap = gapOf(one, two, statement);
  const unit = unitById(two.unit);
  if (unit.counted) return writeCount(gap.abs(), two.unit as 'turn' | 'flat' | 'notch');
  const places = placesToShow(gap, unit.id === 'in' ? 3 : unit.id === 'mm' ? 2 : (two.places ?? 2));
  const word = unitWord(two.unit, gap);
  return `${formatDecimal(gap.abs(), places)}${spaced(word)}`;
}

/** The second less the first: of what is counted in its base unit, else in the second's unit. */
function gapOf(one: Amount, two: Amount, { dimension }: Statement): Rational {
  if (unitById(two.unit).counted) return two.base.sub(one.base);
  return two.number.sub(inUnit(one.base, dimension, two.unit));
}

/** The finest division of a rule or of a drill by fractions. */
const FINEST = 64;

/**
 * The first amount as a fraction of the second's unit with the smallest usual denominator that it may
 * be a rounding of: `13/64 in`; null where there is none.
 */
export function asFraction(from: Amount, as: Amount, statement: Statement): string | null {
  const { dimension } = statement;
  const [low, high] = [from.could.low, from.could.high].map((end) =>
    inUnit(end, dimension, as.unit),
  ) as [Rational, Rational];
  for (let under = 1; under <= FINEST; under *= 2) {
    const parts = inUnit(from.base, dimension, as.unit).mul(under).round();
    const number = parts.div(under);
    if (number.compare(low) < 0 || number.compare(high) > 0) continue;
    const [whole, rest] = [number.floor(), number.mod(1)];
    const figure =
      rest.n === 0n
        ? whole.toFraction()
        : `${whole.n === 0n ? '' : `${whole.toFraction()}-`}${rest.toFraction()}`;
    return figure + spelledUnit(statement.text, as.unit, spaced(unitWord(as.unit, number)));
  }
  return null;
}
