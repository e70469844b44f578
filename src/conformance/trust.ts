import { type Instrument, instrumentNamed, instrumentOf } from '../gauges/index.ts';
import {
  exactPlaces,
  greater,
  type ReadOptions,
  readStatement,
  roundTo,
  unitById,
  ZERO,
} from '../quantity/index.ts';
import type { Gauge, Rational } from '../quantity/model.ts';
import type { EndUncertainty } from './model.ts';
import type { TakenReading } from './reading.ts';
import type { RecordEntry } from './record.ts';
import { halfLastPlace, ofRounding, ofTimedFlow, together, uncertaintyOf } from './uncertainty.ts';

/** How far a reading is to be trusted, and on whose word. */
export interface Trust {
  /** Gauge and last figure together, expanded (k = 2), in the unit of the reading; null where not known. */
  readonly value: Rational | null;
  /** The same of each end of the reading: go and no-go may be gauges of two kinds. */
  readonly ends: EndUncertainty | null;
  /** The gauge's own part of it; null where it is not known. */
  readonly ofGauge: Rational | null;
  /** Half of the last place that the reading is written to; zero where nothing was rounded. */
  readonly half: Rational;
  /** `caliper`, `13/64 drill`: what it was measured with, in words; null where nobody says. */
  readonly gauge: string | null;
  /** Whose word it is: the record's own, or the table's; of an unknown one why it is not known. */
  readonly basis: 'record' | 'table' | 'not-said' | 'not-in-table' | 'unfit' | 'half-said';
  /** The source of the table's row; null for any other basis. */
  readonly source: string | null;
}

/** An uncertainty that the record states and that cannot be used: what is wrong with it. */
export interface TrustFault {
  readonly message: string;
  readonly fix: string | null;
}

type Size = Extract<TakenReading, { form: 'size' }>;

/** How far a reading is to be trusted: its gauge, by the record or by the table, and its last figure. */
export function trustIn(
  taken: Size,
  entry: RecordEntry,
  options: ReadOptions,
): Trust | { readonly fault: TrustFault } {
  const gauge = entry.gauge?.value ?? (taken.gauges.length > 0 ? taken.gauges.join(', ') : null);
  const stated = taken.ownUncertainty ?? entry.uncertainty?.value ?? null;
  if (stated !== null) {
    const read = statedTogether(stated, taken, options);
    if ('fault' in read) return read;
    return trusted(taken, read, { gauge, basis: 'record', source: null });
  }
  const unknown = (basis: Trust['basis']): Trust => ({
    value: null,
    ends: null,
    ofGauge: null,
    half: ZERO,
    gauge,
    basis,
    source: null,
  });
  if (gauge === null) return unknown('not-said');
  if (entry.gauge === null) return ofGauges(taken, gauge, options) ?? unknown('not-in-table');
  const instruments = instrumentsNamed(entry.gauge.value);
  const [first] = instruments;
  if (first === undefined) return unknown('not-in-table');
  const source = first.source;
  if (isTimed(taken)) {
    const flow = timedFlow(taken, instruments, options);
    const isPart = instruments.every(
      ({ uncertainty }) =>
        baseOf(uncertainty, 'time', options) ?? baseOf(uncertainty, 'volume', options),
    );
    if (flow === null) return unknown(isPart ? 'half-said' : 'unfit');
    return trusted(taken, { low: flow, high: flow }, { gauge, basis: 'table', source });
  }
  if (instruments.length > 1) return unknown('not-in-table');
  const read = uncertaintyOf(first.uncertainty, taken.amount, options);
  if (!read.ok) return unknown('unfit');
  return trusted(taken, { low: read.value, high: read.value }, { gauge, basis: 'table', source });
}

/** The uncertainty that a record states; of a timed flow perhaps time and volume apart: `0.3 s and 0.5 ml`. */
function statedTogether(
  stated: string,
  taken: Size,
  options: ReadOptions,
): EndUncertainty | { readonly fault: TrustFault } {
  const parts = isTimed(taken) ? partsOf(stated) : [stated];
  if (parts.length === 2) {
    const [time, volume] = ['time' as const, 'volume' as const].map((dimension) =>
      parts.map((part) => baseOf(part, dimension, options)).find((base) => base !== null),
    );
    const both = time && volume ? ofTimedFlow(taken.amount, time, volume) : null;
    if (both !== null) return { low: both, high: both };
  }
  const read = uncertaintyOf(stated, taken.amount, options);
  if (!read.ok) return { fault: { message: read.message, fix: read.fix } };
  return { low: read.value, high: read.value };
}

/** Gauges that are themselves the reading: each end by its own. Null where one is of no system. */
function ofGauges(taken: Size, gauge: string, options: ReadOptions): Trust | null {
  let source: string | null = null;
  const of = (each: Gauge | null): Rational | null => {
    const instrument = each && instrumentOf(each.system);
    if (!instrument) return null;
    const read = uncertaintyOf(instrument.uncertainty, taken.amount, options);
    source = instrument.source;
    return read.ok ? read.value : null;
  };
  const { range, ends } = taken;
  const low = range.low === null ? ZERO : of(ends.low);
  const high = range.high === null ? ZERO : of(ends.high);
  if (low === null || high === null) return null;
  return trusted(taken, { low, high }, { gauge, basis: 'table', source });
}

/**
 * With the last figure: a size written to few places is the nearest of those that the gauge may have told.
 * The size of a named gauge is no such figure, and a fraction is exact.
 */
function trusted(
  { amount, range, ends }: Size,
  gauge: EndUncertainty,
  rest: Pick<Trust, 'gauge' | 'basis' | 'source'>,
): Trust {
  const isNamed = range.open || ends.low !== null;
  const half = isNamed ? ZERO : (halfLastPlace(amount) ?? ZERO);
  const step = ofRounding(half);
  const both = { low: told(together(gauge.low, step)), high: told(together(gauge.high, step)) };
  return {
    ...rest,
    value: greater(both.low, both.high),
    ends: both,
    ofGauge: greater(gauge.low, gauge.high),
    half,
  };
}

/** Rounded up to three figures that count, where six places do not tell it: no more of it is known. */
function told(uncertainty: Rational): Rational {
  const exact = exactPlaces(uncertainty);
  if (exact !== null && exact <= 6) return uncertainty;
  const places = 2 - Math.floor(Math.log10(uncertainty.valueOf()));
  return roundTo(uncertainty, Math.max(0, places), 'up');
}

/** Whether a reading is a time for a volume, or a volume in a time. */
function isTimed({ amount }: Size): boolean {
  const { id, dimension } = unitById(amount.unit);
  return dimension === 'flow' && id.includes('/');
}

function timedFlow(
  taken: Size,
  instruments: readonly Instrument[],
  options: ReadOptions,
): Rational | null {
  const find = (dimension: 'time' | 'volume') => {
    const bases = instruments.flatMap(
      ({ uncertainty }) => baseOf(uncertainty, dimension, options) ?? [],
    );
    return bases.length === 1 ? bases[0] : undefined;
  };
  const [time, volume] = [find('time'), find('volume')];
  return time && volume ? ofTimedFlow(taken.amount, time, volume) : null;
}

/** The base value of a plain size of a dimension: seconds, mL; null for any other text. */
function baseOf(text: string, dimension: 'time' | 'volume', options: ReadOptions): Rational | null {
  const plain = text.replace(/^\s*(?:±|\+\/?-)\s*/, '').replace(/\(?\bk ?= ?2\)?\s*$/, '');
  const read = readStatement(plain, { ...options, expect: [dimension] });
  if (!read.ok || read.statement.dimension !== dimension) return null;
  return read.statement.form === 'exact' ? (read.statement.nominal?.base ?? null) : null;
}

/** The instruments that words name, each once: `stopwatch and measuring glass`. None where one is unclear. */
function instrumentsNamed(text: string): readonly Instrument[] {
  const whole = instrumentNamed(text);
  if (whole !== null) return [whole];
  const found = partsOf(text).map(instrumentNamed);
  return found.includes(null) ? [] : [...new Set(found.filter((each) => each !== null))];
}

function partsOf(text: string): readonly string[] {
  return text
    .split(/\s*(?:,|;|\+(?!\/)|&|\band\b|\bwith\b)\s*/)
    .filter((part) => part.trim() !== '');
}
