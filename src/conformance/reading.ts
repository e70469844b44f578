import {
  incomparable,
  inUnit,
  NOT_STATED,
  opposites,
  type ReadOptions,
  readStatement,
} from '../quantity/index.ts';
import type { Amount, Gauge, Rational, Statement } from '../quantity/model.ts';
import type { Setting } from '../sheet/model.ts';
import type { Placed, Span } from '../text/index.ts';
import type { ReadingRange } from './model.ts';
import type { RecordFault, WrittenGauge, WrittenReading } from './record.ts';

/** A reading that can be held against what a sheet wants. */
export type TakenReading =
  | {
      readonly form: 'size';
      /** As written. */
      readonly text: string;
      /** The figure read, or one of the two between which it moved. */
      readonly amount: Amount;
      /** In the unit of `amount`, counted the way the sheet counts. */
      readonly range: ReadingRange;
      /** The uncertainty that stands in the reading itself, `0.205 ± 0.001 in`; null for none. */
      readonly ownUncertainty: string | null;
      /** The gauges that the reading is named by, as written; empty for figures. */
      readonly gauges: readonly string[];
      /** The gauge that each end of the range is the size of; null where it is of none. */
      readonly ends: { readonly low: Gauge | null; readonly high: Gauge | null };
    }
  | { readonly form: 'condition'; readonly text: string; readonly condition: string };

export type Taken = TakenReading | { readonly fault: RecordFault };

/** Makes sense of a reading of a setting that the sheet states as `wanted`. */
export function takeReading(
  written: Exclude<WrittenReading, { form: 'as-found' }>,
  wanted: Statement,
  setting: Setting,
  options: ReadOptions,
): Taken {
  // Of what no source states any reading may be taken down, and none is judged.
  const isUnstated = wanted.condition === NOT_STATED;
  const dimensions = isUnstated ? setting.known?.dimensions : [wanted.dimension];
  const expecting = { ...options, expect: dimensions, jets: setting.jets };
  if (written.form === 'go-no-go') return takeGauges(written, wanted, setting, expecting);
  const { text } = written;
  const read = readStatement(text.value, expecting);
  if (!read.ok) {
    const { message, fix, candidates, start, end } = read.problem;
    const perhaps = candidates.length > 0 ? `perhaps ${candidates.join(', or ')}` : null;
    return refuse(within(text, start, end), message, fix ?? perhaps);
  }
  const { statement } = read;
  const obstacle = isUnstated ? null : incomparable(statement, wanted);
  if (obstacle !== null) {
    return refuse(text.span, obstacle, `write the reading as the sheet has it: ${wanted.text}`);
  }
  if (statement.condition !== null) {
    return { form: 'condition', text: text.value, condition: statement.condition };
  }
  if (statement.datum !== null && wanted.datum !== null && statement.datum !== wanted.datum) {
    const message = `${text.value} and the sheet's ${wanted.text} are counted from different places`;
    return refuse(text.span, message, 'count it as the sheet does');
  }
  return sizeTaken(text, statement, wanted);
}

function sizeTaken(text: Placed<string>, statement: Statement, wanted: Statement): Taken {
  const { nominal, low, high, form } = statement;
  const turned =
    statement.dimension !== 'notches' &&
    statement.sense !== null &&
    wanted.sense !== null &&
    opposites[statement.sense] === wanted.sense;
  if (statement.about || form === 'min' || form === 'max') {
    const message = `${text.value} is no reading: it says ${statement.about ? 'about' : 'one side only'}`;
    return refuse(text.span, message, 'write what was read, and how far to trust it');
  }
  const end = larger(low?.amount ?? null, high?.amount ?? null);
  if (form === 'range' && low !== null && high !== null && end !== null) {
    const ends = [low, high].map(({ base }) => {
      const number = inUnit(base, statement.dimension, end.unit);
      return turned ? number.neg() : number;
    });
    const [least = null, most = null] = ends.sort((one, other) => one.compare(other));
    return {
      form: 'size',
      text: text.value,
      amount: end,
      range: { low: least, high: most, open: false },
      ownUncertainty: null,
      gauges: [],
      ends: { low: null, high: null },
    };
  }
  if (nominal === null) return refuse(text.span, `${text.value} is no reading`, null);
  const own = form === 'tolerance' ? /(?:±|\+\/-|\+-)(.+)$/.exec(text.value)?.[1]?.trim() : null;
  if (own === undefined) {
    const message = `${text.value} has limits of its own, and a reading has only an uncertainty`;
    return refuse(text.span, message, 'write the figure that was read, with ± and its uncertainty');
  }
  // The number as written has no sign: a notch lean lies below the index, by what it comes to.
  const written = inUnit(nominal.base, statement.dimension, nominal.unit);
  const counted = statement.dimension === 'notches' ? written : nominal.number;
  const number = turned ? counted.neg() : counted;
  return {
    form: 'size',
    text: text.value,
    amount: nominal,
    range: { low: number, high: number, open: false },
    ownUncertainty: own,
    gauges: nominal.gauge === null ? [] : [nominal.gauge.label],
    ends: { low: nominal.gauge, high: nominal.gauge },
  };
}

/** Of the two ends of a range the greater figure: an uncertainty in percent is greatest there. */
function larger(one: Amount | null, other: Amount | null): Amount | null {
  if (one === null || other === null) return one ?? other;
  return one.unit !== other.unit || one.number.compare(other.number) >= 0 ? one : other;
}

function takeGauges(
  written: Extract<WrittenReading, { form: 'go-no-go' }>,
  wanted: Statement,
  setting: Setting,
  options: ReadOptions,
): Taken {
  if (wanted.dimension !== 'length') {
    const message = `go and no-go tell a length, and the sheet wants ${wanted.text}`;
    return refuse(written.span, message, 'write what was read');
  }
  const go = gaugeUsed(written.go, 'go', setting, options);
  if (go !== null && 'fault' in go) return go;
  const noGo = gaugeUsed(written.noGo, 'no-go', setting, options);
  if (noGo !== null && 'fault' in noGo) return noGo;
  const used = [go, noGo].filter((gauge) => gauge !== null);
  const [first] = used;
  if (first === undefined) return refuse(written.span, 'neither go nor no-go says anything', null);
  const unit = first.amount.unit;
  const numberOf = (gauge: GaugeUsed) =>
    gauge.amount.unit === unit
      ? gauge.amount.number
      : gauge.amount.base.div(first.amount.base).mul(first.amount.number);
  const outermost = (wentIn: boolean): GaugeUsed | null =>
    used
      .filter((gauge) => gauge.wentIn === wentIn)
      .sort((a, b) => numberOf(a).compare(numberOf(b)))
      .at(wentIn ? -1 : 0) ?? null;
  const [entered, stopped] = [outermost(true), outermost(false)];
  const low: Rational | null = entered && numberOf(entered);
  const high: Rational | null = stopped && numberOf(stopped);
  if (low !== null && high !== null && low.compare(high) >= 0) {
    const [larger, smaller] = [true, false].map(
      (wentIn) => used.find((gauge) => gauge.wentIn === wentIn)?.label,
    );
    const message = `${larger} went in, but ${smaller}, which is no larger, did not`;
    return refuse(written.span, message, 'try both again: one of the two has been mistaken');
  }
  const words = used.map(({ label, wentIn }) => `${label} ${wentIn ? 'goes in' : 'does not'}`);
  return {
    form: 'size',
    text: words.join(', '),
    amount: first.amount,
    range: { low, high, open: true },
    ownUncertainty: null,
    gauges: used.map(({ label }) => label),
    ends: { low: entered?.amount.gauge ?? null, high: stopped?.amount.gauge ?? null },
  };
}

interface GaugeUsed {
  readonly label: string;
  readonly amount: Amount;
  readonly wentIn: boolean;
}

function gaugeUsed(
  written: WrittenGauge | null,
  which: 'go' | 'no-go',
  setting: Setting,
  options: ReadOptions,
): GaugeUsed | { readonly fault: RecordFault } | null {
  if (written === null) return null;
  if ('wentIn' in written) {
    const own = which === 'go' ? setting.go : setting.noGo;
    const amount = own?.reading.ok ? own.reading.statement.nominal : null;
    if (own === null || amount === null) {
      const message = `the sheet names no ${which} gauge for ${setting.name.value}`;
      const example = which === 'go' ? 'went in' : 'did not go in';
      return refuse(written.span, message, `write which gauge ${example}: ${which}: 13/64 drill`);
    }
    return { label: own.text, amount, wentIn: written.wentIn };
  }
  const { text } = written;
  const read = readStatement(text.value, options);
  if (!read.ok) return refuse(text.span, read.problem.message, read.problem.fix);
  const amount = read.statement.nominal;
  if (amount === null || read.statement.form !== 'exact' || read.statement.dimension !== 'length') {
    return refuse(text.span, `${text.value} is no gauge`, `such as ${which}: 13/64 drill`);
  }
  return { label: text.value, amount, wentIn: which === 'go' };
}

function refuse(span: Span, message: string, fix: string | null): { fault: RecordFault } {
  return { fault: { kind: 'invalid', span, message, fix } };
}

/** A part of a scalar as a place in the file; all of it where escapes have moved characters. */
function within(text: Placed<string>, start: number, end: number): Span {
  if (text.source !== text.value || end <= start) return text.span;
  return { start: text.span.start + start, end: text.span.start + end };
}
