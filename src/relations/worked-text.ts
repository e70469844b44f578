import {
  type ExactFigures,
  exactPlaces,
  figuresText,
  formatDecimal,
  inUnit,
  type PrintedFigures,
  printedFigures,
  unitById,
  writeCount,
  writeIn,
} from '../quantity/index.ts';
import type { Amount, Dimension, Rational, Statement } from '../quantity/model.ts';
import type { Figure } from './figure.ts';
import type { Interval, RelationDimension } from './model.ts';
import { exactly, simplestIn } from './simplest.ts';

/** A unit of an inch paper and of a metric one, for what a sheet states no unit of. */
const UNITS: Readonly<Partial<Record<Dimension, readonly [inch: string, metric: string]>>> = {
  length: ['in', 'mm'],
  area: ['in2', 'mm2'],
  volume: ['in3', 'cm3'],
  delivery: ['cm3/10 strokes', 'cm3/10 strokes'],
  flow: ['cm3/minute', 'cm3/minute'],
  vacuum: ['inHg', 'kPa'],
  pressure: ['psi', 'kPa'],
  torque: ['ft-lb', 'N·m'],
  mass: ['oz', 'g'],
  force: ['lbf', 'N'],
  'spring-rate': ['N/mm', 'N/mm'],
  'mass-flow': ['lb/h', 'kg/h'],
  density: ['kg/m3', 'kg/m3'],
  temperature: ['degF', 'degC'],
};

/** Units of the dimensions that every paper tells alike. */
const COMMON: Readonly<Partial<Record<Dimension, string>>> = {
  turns: 'turn',
  angle: 'deg',
  speed: 'rpm',
  percent: 'percent',
  time: 's',
  notches: 'notch',
  capacitance: 'uF',
  resistance: 'ohm',
  voltage: 'V',
  current: 'A',
};

/** Units that a worked figure is told in as their plainer neighbor. */
const PLAINER: Readonly<Record<string, string>> = {
  thou: 'in',
  'hundredths of mm': 'mm',
  psig: 'psi',
  flat: 'turn',
};

/** A figure that was worked, in a unit and as fine as its inputs allow. */
export interface WorkedText {
  /** A unit's id; empty for a plain number. */
  readonly unit: string;
  /** Decimal places that the inputs' own rounding leaves. */
  readonly places: number;
  /** `0.0391 in`, with its limits behind it where there are some; `0.031–0.047 in` of limits alone. */
  readonly text: string;
  /** The figure alone; null where only limits are known. */
  readonly nominal: string | null;
  /** Limits rounded inward; null where there are none. */
  readonly limits: string | null;
  /** `0.0388 to 0.0394 in`: all that the inputs' rounding allows; null where it cannot be seen. */
  readonly stretch: string | null;
}

/** A time below which seconds would be told in thousandths. */
const SHORT_SECONDS = 0.1;

/** The unit that a figure is told in, from the statements that it was worked from. */
export function unitFor(
  dimension: RelationDimension,
  beside: readonly Statement[],
  { nominal, limits }: Figure,
): string {
  if (dimension === 'ratio') return '';
  const units = beside.flatMap((statement) => {
    const one = amountOf(statement);
    return one ? [unitById(one.unit)] : [];
  });
  const same = units.find((unit) => unit.dimension === dimension);
  if (same) return PLAINER[same.id] ?? same.id;
  if (dimension === 'time' && ((nominal ?? limits)?.hi ?? 1) < SHORT_SECONDS) return 'ms';
  const common = COMMON[dimension];
  if (common) return common;
  const isMetric = units.find((unit) => METRIC_TELLS.has(unit.dimension))?.metric ?? false;
  const [inch, metric] = UNITS[dimension] ?? ['', ''];
  return isMetric ? metric : inch;
}

/** Dimensions whose unit tells an inch paper from a metric one. */
const METRIC_TELLS: ReadonlySet<Dimension> = new Set([
  'length',
  'area',
  'vacuum',
  'pressure',
  'torque',
]);

function amountOf({ nominal, low, high }: Statement): Amount | null {
  return nominal ?? low?.amount ?? high?.amount ?? null;
}

/**
 * A worked figure as people write it, in a unit; to `least` places at least, where a stated figure
 * beside it has as many, and otherwise to `most` at most.
 */
export function workedText(
  { point, nominal, limits, side }: Figure,
  dimension: RelationDimension,
  unit: string,
  least = 0,
  most = MOST_PLACES,
): WorkedText {
  const value = point ?? nominal;
  const base = value && (point ? simplestIn(value) : middle(value));
  // Limits alone are each as fine as their source tells them, which their distance only hints at.
  const wide =
    nominal ?? (limits && { lo: limits.lo, hi: limits.lo + (limits.hi - limits.lo) / 10 });
  const ours = placesFor(base ?? (limits && exactly(limits.hi)), wide, dimension, unit);
  const places = Math.max(Math.min(ours, most), least);
  const write = (number: Rational, mode: 'nearest' | 'up' | 'down' = 'nearest') =>
    writeBase(number, dimension, unit, places, mode);
  const [single, band] = shownFigures(
    {
      nominal: side ? null : base,
      low: side === 'min' ? base : limits && lowestIn(limits),
      high: side === 'max' ? base : limits && highestIn(limits),
    },
    dimension,
    unit,
    places,
  );
  const stretch =
    nominal && write(exactly(nominal.lo)) !== write(exactly(nominal.hi))
      ? `${write(exactly(nominal.lo), 'down')} to ${write(exactly(nominal.hi), 'up')}`
      : null;
  const text = single && band ? `${single} (${band})` : (single ?? band ?? '');
  return { unit, places, text, nominal: single, limits: band, stretch };
}

/** A number of base units in a unit; a plain number for a ratio. */
export function writeBase(
  base: Rational,
  dimension: RelationDimension,
  unit: string,
  places: number,
  mode: 'nearest' | 'up' | 'down' = 'nearest',
): string {
  if (dimension === 'ratio') return formatDecimal(base, places, mode);
  const isCount = dimension === 'turns' || dimension === 'notches';
  if (isCount && base.d <= 64n) return writeCount(base, unit === 'notch' ? 'notch' : 'turn');
  return writeIn(base, dimension, unit, places, mode);
}

function middle({ lo, hi }: Interval): Rational {
  return exactly(lo).add(exactly(hi)).div(2);
}

/** Figures that a worked size is told with where its inputs are exact. */
const FIGURES = 4;
/** More places than any size of the trade is told to. */
const MOST_PLACES = 6;

/**
 * Decimal places for a figure: no finer than the width of all that it may be, and four figures at
 * most; an inch has four places and a millimeter three where the inputs allow them.
 */
function placesFor(
  base: Rational | null,
  wide: Interval | null,
  dimension: RelationDimension,
  unit: string,
): number {
  const told = (number: Rational): Rational =>
    dimension === 'ratio' ? number : inUnit(number, dimension, unit);
  const size = base ? Math.abs(told(base).valueOf()) : 0;
  const figures = size === 0 ? 0 : FIGURES - 1 - Math.floor(Math.log10(size));
  const least = unit === 'in' ? 4 : unit === 'mm' ? 3 : figures;
  const most = Math.max(0, Math.min(least, unit === 'in' ? 4 : MOST_PLACES));
  const width = wide
    ? Math.abs(
        told(exactly(wide.hi))
          .sub(told(exactly(wide.lo)))
          .valueOf(),
      )
    : 0;
  // What doubles leave of an exact figure is no width.
  if (width > size * 1e-9) return Math.max(0, Math.min(most, Math.ceil(-Math.log10(width))));
  const needed = base && exactPlaces(told(base));
  return unit === 'in' || needed === null ? most : Math.min(most, needed);
}

/** A figure and its limits in base units as they are printed; of a lone limit the figure, with its word. */
function shownFigures(
  exact: ExactFigures,
  dimension: RelationDimension,
  unit: string,
  places: number,
): readonly [single: string | null, band: string | null] {
  const { nominal, low, high } = exact;
  const isCount = dimension === 'turns' || dimension === 'notches';
  if (isCount && [nominal, low, high].every((number) => number === null || number.d <= 64n)) {
    const count = (base: Rational) => writeBase(base, dimension, unit, places);
    if (low && high) return [nominal && count(nominal), `${count(low)} to ${count(high)}`];
    const only = low ?? high;
    return [only ? `${count(only)} ${low ? 'min' : 'max'}` : nominal && count(nominal), null];
  }
  const told = (base: Rational | null) =>
    base && dimension !== 'ratio' ? inUnit(base, dimension, unit) : base;
  const ends = { low: told(low), high: told(high) };
  const isInverse = dimension !== 'ratio' && unitById(unit).inverse;
  const turned = isInverse ? { low: ends.high, high: ends.low } : ends;
  const printed = printedFigures({ nominal: told(nominal), ...turned }, places);
  const plain = (figures: PrintedFigures) =>
    dimension === 'ratio' ? ratioText(figures) : figuresText(figures, unit);
  const limits = plain({ ...printed, nominal: null }) || null;
  if (!low || !high) return [limits ?? (plain(printed) || null), null];
  return [printed.nominal && plain({ ...printed, low: null, high: null }), limits];
}

function ratioText({ nominal, low, high, places }: PrintedFigures): string {
  if (nominal) return formatDecimal(nominal, places);
  const ends = [low, high].flatMap((end) => (end ? [formatDecimal(end, places)] : []));
  return ends.length === 2 ? ends.join(' to ') : `${ends[0] ?? ''} ${low ? 'min' : 'max'}`.trim();
}

/** Widths, in parts of the number, that doubles may have added at the end of a stretch. */
const GRAIN = 1e-12;

/** The plainest number at the lower end of a stretch, as far in as doubles are off at most. */
export function lowestIn({ lo }: Interval): Rational {
  return simplestIn({ lo, hi: lo + Math.abs(lo) * GRAIN });
}

/** The same at its upper end. */
export function highestIn({ hi }: Interval): Rational {
  return simplestIn({ lo: hi - Math.abs(hi) * GRAIN, hi });
}
