import type { Dimension, PressureReference, Rational } from './model.ts';
import { ONE, rational, ZERO } from './rational.ts';
import { Spellings } from './spelling.ts';
import { UNIT_ROWS, type UnitRow } from './units-table.ts';

/** A unit of measure and how it leads to the base unit of its dimension. */
export interface UnitOfMeasure {
  readonly id: string;
  readonly dimension: Dimension;
  /** Base units in one of it, exactly. */
  readonly factor: Rational;
  /** Added after the factor: only temperature has one that is not zero. */
  readonly offset: Rational;
  /** Ways it is written, lower case, longest forms first where one begins another. */
  readonly spellings: readonly string[];
  /** What a pressure in it refers to when nothing is said. */
  readonly reference: PressureReference | null;
  /** Whether nobody tells a vacuum in it: psi is a pressure unless `vacuum` stands beside it. */
  readonly neverVacuum: boolean;
  /** Whether a whole number of it is a count (a turn, a flat), and so exact. */
  readonly counted: boolean;
  /** Whether it tells a time per volume: base is then the factor over the number. */
  readonly inverse: boolean;
  /** Whether people write it with a decimal comma; elsewhere a comma before three digits parts thousands. */
  readonly metric: boolean;
}

function unitFrom(id: string, row: UnitRow): UnitOfMeasure {
  return {
    id,
    dimension: row.dimension,
    factor: row.factor,
    offset: row.offset ?? ZERO,
    spellings: row.spellings.split('|'),
    reference: row.reference ?? (isPressure(row.dimension) ? 'unstated' : null),
    neverVacuum: row.neverVacuum ?? false,
    counted: row.counted ?? false,
    inverse: false,
    metric: row.metric ?? false,
  };
}

function isPressure(dimension: Dimension): boolean {
  return dimension === 'pressure' || dimension === 'vacuum';
}

const UNITS: ReadonlyMap<string, UnitOfMeasure> = new Map(
  Object.entries(UNIT_ROWS).map(([id, row]) => [id, unitFrom(id, row)]),
);

/** A unit by its id; fails with a RangeError where there is none. */
export function unitById(id: string): UnitOfMeasure {
  const unit = UNITS.get(id) ?? compoundUnit(id);
  if (!unit) throw new RangeError(`no unit has the id ${id}`);
  return unit;
}

/** All plain units, in the order of the table. */
export function allUnits(): readonly UnitOfMeasure[] {
  return [...UNITS.values()];
}

/** Standard gravity, 9.80665 m/s², by definition. */
const NEWTONS_OF_A_GRAM = rational('0.00980665');

const compounds = new Map<string, UnitOfMeasure | null>();

/**
 * A volume over so many strokes, a volume over a time or a time over so much volume, a weight over
 * a time or over a volume, from its id: `cm3/10 strokes`, `cm3/minute`, `s/100 cm3`, `lb/h`,
 * `lb/US gal`. Delivery is held in mL a stroke, flow in mL/s, mass flow in g/s, density in kg/m³.
 */
function compoundUnit(id: string): UnitOfMeasure | null {
  const known = compounds.get(id);
  if (known !== undefined) return known;
  const made = makeCompound(id);
  compounds.set(id, made);
  return made;
}

function makeCompound(id: string): UnitOfMeasure | null {
  const [over = '', under = ''] = id.split('/');
  const top = UNITS.get(over);
  const count = /^([\d.]+) (.+)$/.exec(under);
  const amount = count ? rational(count[1] ?? '1') : ONE;
  const bottom = count ? (count[2] ?? '') : under;
  if (!top || amount.n === 0n) return null;
  if (top.dimension === 'volume' && bottom === 'strokes') {
    return { ...top, id, dimension: 'delivery', factor: top.factor.div(amount), spellings: [] };
  }
  const below = UNITS.get(bottom);
  if (top.dimension === 'volume' && below?.dimension === 'time') {
    const factor = top.factor.div(amount.mul(below.factor));
    return { ...top, id, dimension: 'flow', factor, spellings: [] };
  }
  if (top.dimension === 'mass' && below?.dimension === 'time') {
    const factor = top.factor.div(amount.mul(below.factor));
    return { ...top, id, dimension: 'mass-flow', factor, spellings: [] };
  }
  if (top.dimension === 'mass' && below?.dimension === 'volume') {
    // A gram a milliliter is a thousand kilograms a cubic meter.
    const factor = top.factor.div(amount.mul(below.factor)).mul(1000);
    return { ...top, id, dimension: 'density', factor, spellings: [] };
  }
  if ((top.dimension === 'force' || top.dimension === 'mass') && below?.dimension === 'length') {
    // A load told by its weight is what that weight presses with under standard gravity.
    const newtons = top.dimension === 'force' ? top.factor : top.factor.mul(NEWTONS_OF_A_GRAM);
    const factor = newtons.div(amount.mul(below.factor));
    return { ...top, id, dimension: 'spring-rate', factor, spellings: [] };
  }
  if (top.dimension === 'time' && below?.dimension === 'volume') {
    const factor = amount.mul(below.factor).div(top.factor);
    return { ...below, id, dimension: 'flow', factor, inverse: true, spellings: [] };
  }
  return null;
}

/** Every spelling of every unit: what the grammar looks up. */
const SPELLED = new Spellings(
  [...UNITS.values()].flatMap((unit) =>
    unit.spellings.map((spelling) => [spelling, unit] as const),
  ),
);

/**
 * The unit that is spelled at an offset of a lower-cased text, and the offset after it; null where
 * none is.
 */
export function unitAt(lower: string, offset: number): { unit: UnitOfMeasure; end: number } | null {
  const found = SPELLED.longest(lower, offset);
  return found && { unit: found.value, end: found.end };
}

/** Whether a text is a unit's name in any case and pointing, and nothing else. */
export function isUnit(text: string): boolean {
  const lower = text.toLowerCase();
  return unitAt(lower, 0)?.end === lower.length;
}

/**
 * A number of a unit, in the base unit of its dimension. Fails with a RangeError for no time at all
 * per volume.
 */
export function toBase(value: Rational, unit: UnitOfMeasure): Rational {
  if (unit.inverse) {
    if (value.n === 0n) throw new RangeError('no time for a volume is no flow');
    return unit.factor.div(value);
  }
  const scaled = value.mul(unit.factor);
  return unit.offset.n === 0n ? scaled : scaled.add(unit.offset);
}

/** A number of base units, in a unit; fails with a RangeError for another dimension's unit. */
export function inUnit(base: Rational, dimension: Dimension, unitId: string): Rational {
  const unit = unitById(unitId);
  if (!sameFamily(unit.dimension, dimension)) {
    throw new RangeError(`${unitId} measures ${unit.dimension}, not ${dimension}`);
  }
  if (unit.inverse) return base.n === 0n ? ZERO : unit.factor.div(base);
  return base.sub(unit.offset).div(unit.factor);
}

/** Whether two dimensions are told in the same units: vacuum and pressure are. */
export function sameFamily(a: Dimension, b: Dimension): boolean {
  return a === b || (isPressure(a) && isPressure(b));
}
