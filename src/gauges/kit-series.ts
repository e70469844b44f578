import Fraction from 'fraction.js';
import { exactPlaces, exactText, formatDecimal } from '../quantity/index.ts';
import type { Gauge, GaugeSystem, Rational } from '../quantity/model.ts';
import { gaugeBook } from './book.ts';
import { rows } from './tables.ts';

/** A run of gauges of one system, as a set is marked with it; ends inclusive. */
export interface Series {
  readonly system: GaugeSystem;
  /** As written, without a unit: `1`, `A`, `1/16`, `0.0015`. */
  readonly first: string;
  readonly last: string;
  /** Null where the names carry none: numbers and letters. */
  readonly unit: 'in' | 'mm' | null;
  /** From one gauge to the next, in the unit; null for every gauge that the tables have between. */
  readonly step: Rational | null;
  /** Decimal places that names of a feeler of the series have. */
  readonly places: number;
}

/** The gauges of a series, ascending, or what is wrong with it in a restorer's words. */
export type Members =
  | { readonly gauges: readonly Gauge[] }
  | { readonly message: string; readonly fix: string };

/** More gauges than a set can hold; it bounds what a stranger's edition can cost. */
const MOST_MEMBERS = 400;

/** Finds the gauges of a series. A drill is only in it where its table has it; any feeler size is one. */
export function membersOf(series: Series): Members {
  const { system, unit, step } = series;
  if (unit === null) return named(series);
  const low = size(series.first);
  const high = size(series.last);
  if (low.compare(high) > 0) return reversed(series);
  const scale = unit === 'in' ? new Fraction(254n, 10n) : new Fraction(1n);
  if (step !== null) return stepped(series, low, high, step);
  const [lowMm, highMm] = [low.mul(scale), high.mul(scale)];
  const gauges = rows(system)
    .map((row) => row.gauge())
    .filter((gauge) => gauge.unit === unit)
    .filter((gauge) => gauge.mm.compare(lowMm) >= 0 && gauge.mm.compare(highMm) <= 0);
  if (gauges.length > 0) return { gauges };
  return {
    message: `no gauge of an ordinary set lies from ${series.first} to ${series.last} ${unit}`,
    fix: `say the step, for example \`by 0.001 ${unit}\``,
  };
}

/** A decimal or a fraction, whose form the grammar of entries has made sure of. */
export function size(written: string): Rational {
  const mixed = /^(?:(\d+)-)?(\d+)\/(\d+)$/.exec(written);
  if (mixed) {
    const below = BigInt(mixed[3] ?? '1');
    return new Fraction(BigInt(mixed[1] ?? '0') * below + BigInt(mixed[2] ?? '0'), below);
  }
  const [whole = '', decimals = ''] = written.split(/[.,]/);
  return new Fraction(BigInt(`${whole}${decimals}` || '0'), 10n ** BigInt(decimals.length));
}

function named({ system, first, last }: Series): Members {
  const ends = [first, last].map((name) => gaugeBook().find(system, name));
  const missing = ends.indexOf(null);
  if (missing !== -1) {
    return {
      message: `there is no drill ${missing === 0 ? first : last}`,
      fix: 'number drills run from 1 to 97, letters from A to Z',
    };
  }
  const sizes = ends.flatMap((gauge) => (gauge === null ? [] : [gauge.mm]));
  const [one, other] = sizes;
  if (!one || !other) return { gauges: [] };
  const [low, high] = one.compare(other) <= 0 ? [one, other] : [other, one];
  const gauges = gaugeBook()
    .all(system)
    .filter((gauge) => gauge.mm.compare(low) >= 0 && gauge.mm.compare(high) <= 0);
  return { gauges };
}

function stepped(series: Series, low: Rational, high: Rational, step: Rational): Members {
  const { system } = series;
  if (step.n === 0n) return { message: 'a step of nothing leads nowhere', fix: 'give the step' };
  const count = high.sub(low).div(step);
  const span = `${series.first} to ${series.last} ${series.unit}`;
  if (count.d !== 1n) {
    return {
      message: `${span} is no whole number of steps of ${exactText(step)} ${series.unit}`,
      fix: 'correct the step, or give the set as two',
    };
  }
  if (count.n >= BigInt(MOST_MEMBERS)) {
    return {
      message: `${span} in those steps would be ${count.n + 1n} gauges, more than a set has`,
      fix: 'correct the step',
    };
  }
  const gauges: Gauge[] = [];
  for (let i = 0n; i <= count.n; i++) {
    const number = nameOf(series, low.add(step.mul(i)));
    const name = system === 'fraction-drill' ? number : `${number} ${series.unit}`;
    const gauge = gaugeBook().find(system, name);
    if (gauge === null) {
      return {
        message: `there is no ${name} drill, which the set would have`,
        fix: 'correct the ends or the step, or give the set as two',
      };
    }
    gauges.push(gauge);
  }
  return { gauges };
}

function nameOf({ system, places }: Series, number: Rational): string {
  if (system === 'fraction-drill') return number.toFraction(true).replace(' ', '-');
  const needed = exactPlaces(number);
  const isStated = needed !== null && needed <= places;
  return isStated ? formatDecimal(number, places) : exactText(number);
}

function reversed({ first, last, unit }: Series): Members {
  return {
    message: `${first} to ${last} ${unit} runs backward`,
    fix: `write ${last}-${first} ${unit}, if that is meant`,
  };
}
