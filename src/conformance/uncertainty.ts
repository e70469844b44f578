import {
  type ReadOptions,
  rational,
  readStatement,
  sameFamily,
  type UnitOfMeasure,
  unitById,
  ZERO,
} from '../quantity/index.ts';
import type { Amount, Rational } from '../quantity/model.ts';

/** An uncertainty in the unit of a reading, or why it is none, in a restorer's words. */
export type UncertaintyRead =
  | { readonly ok: true; readonly value: Rational }
  | { readonly ok: false; readonly message: string; readonly fix: string | null };

/**
 * The expanded uncertainty (k = 2) that a text states, as a difference in the unit of a reading:
 * `0.0002 in`, `± 0.005 mm (k=2)`, `4 %` of the reading. Of a volume in so many strokes or a time for
 * so much volume the figure of the upper part may be stated alone: `0.5 cm3`, `0.3 s`.
 */
export function uncertaintyOf(
  text: string,
  reading: Amount,
  options: ReadOptions,
): UncertaintyRead {
  const factor = /\(?\bk ?= ?([\d.]{1,8})\)?\s*$/.exec(text);
  if (factor && Number(factor[1]) !== 2) {
    return {
      ok: false,
      message: `${text} is stated for k=${factor[1]}, and readings are judged with k=2`,
      fix: 'work it out for k=2 and write that',
    };
  }
  const plain = (factor ? text.slice(0, factor.index) : text).replace(/^\s*(?:±|\+\/?-)\s*/, '');
  const read = readStatement(plain, options);
  if (!read.ok) return { ok: false, message: read.problem.message, fix: read.problem.fix };
  const { statement } = read;
  const amount = statement.nominal;
  if (amount === null || statement.form !== 'exact') {
    return {
      ok: false,
      message: `${text} is no uncertainty: one figure either side is wanted`,
      fix: 'such as 0.0002 in',
    };
  }
  const unit = unitById(reading.unit);
  if (statement.dimension === 'percent' && unit.dimension !== 'percent') {
    return { ok: true, value: reading.number.abs().mul(amount.number).div(100) };
  }
  const value = difference(amount, unit);
  if (value !== null) return { ok: true, value };
  return {
    ok: false,
    message: `${text} tells ${statement.dimension}, and the reading ${reading.text} is one of ${unit.dimension}`,
    fix: 'state the uncertainty in the unit of the reading',
  };
}

/** An amount as a difference in another unit: zeros of temperature scales play no part. */
function difference(amount: Amount, into: UnitOfMeasure): Rational | null {
  const unit = unitById(amount.unit);
  const magnitude = amount.number.abs();
  if (sameFamily(unit.dimension, into.dimension) && unit.inverse === into.inverse) {
    return unit.inverse
      ? magnitude.mul(into.factor).div(unit.factor)
      : magnitude.mul(unit.factor).div(into.factor);
  }
  const [over = ''] = into.id.split('/');
  if (over === into.id) return null;
  const upper = unitById(over);
  return upper.dimension === unit.dimension ? magnitude.mul(unit.factor).div(upper.factor) : null;
}

/**
 * The expanded uncertainty (k = 2) of independent parts together, each expanded alike: standard
 * uncertainties are squared and added (GUM, JCGM 100:2008, 5.1.2), rounded up in the twelfth place.
 * One part alone, or none, is exact.
 */
export function together(...parts: readonly Rational[]): Rational {
  const counted = parts.filter(({ n }) => n !== 0n);
  const [only] = counted;
  if (counted.length < 2) return only ?? ZERO;
  return rootOf(counted.reduce((sum, part) => sum.add(part.mul(part)), ZERO));
}

/**
 * What rounding to the last figure leaves open, expanded (k = 2): a rectangle of half a last place
 * either side has the standard uncertainty of that half over √3 (GUM, 4.3.7).
 */
export function ofRounding(half: Rational): Rational {
  return rootOf(half.mul(half).mul(4).div(3));
}

/** The square root, rounded up in the twelfth place. */
function rootOf(square: Rational): Rational {
  const scale = 10n ** 12n;
  const wanted = (square.n * scale * scale + square.d - 1n) / square.d;
  let root = BigInt(Math.floor(Math.sqrt(Number(wanted))));
  // A double is near; Newton's step and two corrections make it the least whole number that is enough.
  if (root > 0n) root = (root + wanted / root) / 2n;
  while (root * root < wanted) root += 1n;
  while (root > 0n && (root - 1n) * (root - 1n) >= wanted) root -= 1n;
  return rational(root, scale);
}

/**
 * The uncertainty of a flow, in its unit, from those of the time and of the volume, whose parts of
 * the whole are combined (GUM, 5.1.6). Null where the unit does not say both.
 */
export function ofTimedFlow(reading: Amount, timeS: Rational, volumeMl: Rational): Rational | null {
  const unit = unitById(reading.unit);
  const [over = '', under = ''] = unit.id.split('/');
  if (unit.dimension !== 'flow' || under === '' || reading.number.n === 0n) return null;
  const size = reading.number.abs();
  const timeUnit = unit.inverse ? over : under;
  if (unitById(timeUnit).dimension !== 'time') return null;
  const second = unitById(timeUnit).factor;
  // Of `s per 100 ml` the factor is 100 ml over a second, of `cm3/min` a cm³ over a minute.
  const time = unit.inverse ? size.mul(second) : second;
  const volume = unit.inverse ? unit.factor.mul(second) : size.mul(unit.factor).mul(second);
  return size.mul(together(timeS.div(time), volumeMl.div(volume)));
}

/** Half of the last decimal place of an amount as written: closer than this it tells nothing. */
export function halfLastPlace(amount: Amount): Rational | null {
  return amount.places === null ? null : rational(1, 2).div(10n ** BigInt(amount.places));
}
