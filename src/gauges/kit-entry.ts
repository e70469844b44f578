import { isFlat, NUMBERED_PATTERN, readStatement, type WireGauge } from '../quantity/index.ts';
import type { Gauge, GaugeSystem, Rational } from '../quantity/model.ts';
import { gaugeBook } from './book.ts';
import { membersOf, type Series, size } from './kit-series.ts';
import { sizedGauge } from './sized-gauge.ts';

/** What a line of a kit comes to, or why it cannot be read, in a restorer's words. */
export type KitEntry =
  | {
      readonly ok: true;
      /** Ascending by size. */
      readonly gauges: readonly Gauge[];
      /** How wide its leaves are; null where nothing is said. */
      readonly widthMm: Rational | null;
    }
  | { readonly ok: false; readonly message: string; readonly fix: string | null };

/** Longer than any set is told in; it bounds what a stranger's edition can cost. */
const MAX_LENGTH = 100;

const WIDE = /[ ,]+(\d{1,2}\/\d{1,2}|\d{0,3}(?:[.,]\d{1,4})?) ?(in|mm) wide$/;

/** A fraction over nothing, which is none where it is the number of a wire: `4/0 AWG`. */
const BY_ZERO = new RegExp(`\\d+/0+(?!\\d)(?! ?(?:gauge|${NUMBERED_PATTERN}))`);

const SET =
  /^(?:(number|letter|fraction|fractional|metric|inch) )?(?:twist )?(drills?|leaf|leaves|feeler|wires?|pins?)(?: feelers?| gauges?)?(?: (?:index|set|blades))?(?: (?:of|from))? (.+)$/;

const END = String.raw`(?:\d{1,3}-)?\d{1,3}\/\d{1,3}|\d{0,4}[.,]\d{1,6}|\d{1,4}|[a-z]`;
const RANGE = new RegExp(
  String.raw`^(?:nos?\.? ?|#)?(${END})(?: ?(?:in|mm))?(?: ?- ?| to )(?:no\.? ?|#)?(${END}) ?(in|mm)?(?: by (${END}|64ths|32nds|16ths) ?(in|mm)?)?$`,
);

/**
 * Reads a line of a kit: one gauge as a setting writes it (`0.026 in wire`, `No. 29 drill`), or a
 * set with its ends (`drill index 1-60`, `drill index 1/16-1/2 by 64ths`, `leaf set 0.0015-0.025 in`,
 * `pin set 0.061-0.250 in by 0.001 in`). Without a step, a set has every gauge of the ordinary
 * tables between its ends. Behind leaves, `1/4 in wide` says how wide they are.
 */
export function readKitEntry(written: string, swg: WireGauge | null = null): KitEntry {
  const text = written.trim();
  if (text.length > MAX_LENGTH) {
    return no(
      `a gauge or a set is told in fewer than ${MAX_LENGTH} letters`,
      'give it in several lines',
    );
  }
  const plain = text
    .toLowerCase()
    .replace(/[–—]/g, '-')
    .replace(/"|″|\binch(?:es)?\b/g, ' in')
    .replace(/\s+/g, ' ')
    .trim();
  const zero = BY_ZERO.exec(plain);
  if (zero) return no(`${zero[0]} divides by zero`, 'look at the gauge or its set again');
  const wide = WIDE.exec(plain);
  const rest = wide ? plain.slice(0, wide.index) : plain;
  const widthMm = wide ? inMm(wide[1] ?? '', wide[2] === 'mm' ? 'mm' : 'in') : null;
  if (widthMm !== null && widthMm.n === 0n) return no('a leaf has some width', 'correct the width');
  const set = SET.exec(rest);
  const range = set ? RANGE.exec(set[3] ?? '') : null;
  const found = set && range ? readSet(set, range, text) : readOne(wide ? rest : text, swg);
  if (!found.ok || wide === null) return found;
  if (found.gauges.every(({ system }) => isFlat(system))) return { ...found, widthMm };
  return no(`${text} says how wide it is, and only leaves have a width`, 'leave the width out');
}

function readSet(words: RegExpExecArray, range: RegExpExecArray, text: string): KitEntry {
  const [, sort = '', family = ''] = words;
  const [, first = '', last = '', unitWritten, stepWritten, stepUnit] = range;
  const system = systemOf(family, sort, first, last, unitWritten ?? stepUnit);
  if (system === null) {
    return no(
      `the ends of ${text} are not of one sort, or lack their unit`,
      'for example `drill index 1-60`, `drill index A-Z`, `leaf set 0.0015-0.025 in`',
    );
  }
  const unit = unitOf(system, unitWritten ?? stepUnit);
  if (unit === 'none') return no(`the ends of ${text} lack their unit`, 'add `in` or `mm`');
  if (unitWritten && stepUnit && unitWritten !== stepUnit) {
    return no(`${text} has its ends and its step in two units`, 'give all in one unit');
  }
  const step = stepOf(stepWritten);
  const series: Series = {
    system,
    first: unit === null ? first.toUpperCase() : first,
    last: unit === null ? last.toUpperCase() : last,
    unit,
    step,
    places: Math.max(placesOf(first), placesOf(stepWritten ?? '')),
  };
  if (unit === null && step !== null) {
    return no(`${text} has a step, and drills by number or letter have none`, 'leave `by` out');
  }
  const members = membersOf(series);
  if ('message' in members) return no(members.message, members.fix);
  return { ok: true, gauges: members.gauges, widthMm: null };
}

/** The system that a set's words and the form of its ends mean; null where they do not go together. */
function systemOf(
  family: string,
  sort: string,
  first: string,
  last: string,
  unit: string | undefined,
): GaugeSystem | null {
  if (/^(?:leaf|leaves|feeler)/.test(family)) return 'leaf';
  if (/^wire/.test(family)) return 'wire';
  if (/^pin/.test(family)) return 'pin';
  const forms = [first, last].map(formOf);
  const letters = forms.every((form) => form === 'letter');
  const wholes = forms.every((form) => form === 'whole');
  const fractions = forms.includes('fraction') && forms.every((form) => form !== 'letter');
  const numbers = forms.every((form) => form === 'whole' || form === 'decimal');
  if (letters) return sort === '' || sort === 'letter' ? 'letter-drill' : null;
  if (fractions) return /^(?:|fraction(?:al)?|inch)$/.test(sort) ? 'fraction-drill' : null;
  if (numbers && (unit === 'mm' || sort === 'metric')) return 'metric-drill';
  if (wholes && unit === undefined && /^(?:|number)$/.test(sort)) return 'number-drill';
  return null;
}

function formOf(end: string): 'letter' | 'fraction' | 'decimal' | 'whole' {
  if (/[a-z]/.test(end)) return 'letter';
  if (end.includes('/')) return 'fraction';
  return /[.,]/.test(end) ? 'decimal' : 'whole';
}

function unitOf(system: GaugeSystem, written: string | undefined): 'in' | 'mm' | null | 'none' {
  if (system === 'number-drill' || system === 'letter-drill') return null;
  if (system === 'fraction-drill') return 'in';
  if (system === 'metric-drill') return 'mm';
  return written === 'in' || written === 'mm' ? written : 'none';
}

function stepOf(written: string | undefined): Rational | null {
  if (written === undefined) return null;
  const parts = /^(\d+)(?:ths|nds)$/.exec(written);
  return size(parts ? `1/${parts[1]}` : written);
}

function placesOf(written: string): number {
  return /[.,](\d+)$/.exec(written)?.[1]?.length ?? 0;
}

function readOne(text: string, swg: WireGauge | null): KitEntry {
  const reading = readStatement(text, { gauges: gaugeBook(), swg });
  if (!reading.ok) {
    const { message, fix, candidates } = reading.problem;
    return no(
      message,
      fix ?? (candidates.length > 0 ? `perhaps ${candidates.join(', or ')}` : null),
    );
  }
  const { nominal, form, ambiguous } = reading.statement;
  if (ambiguous.length > 0) {
    return no(
      `${text} could be ${[nominal?.gauge, ...ambiguous].map((each) => each?.label).join(' or ')}`,
      'say which, or set `wire-gauge:` in the edition',
    );
  }
  const gauge = form === 'exact' ? (nominal?.gauge ?? null) : null;
  if (gauge) return { ok: true, gauges: [gauge], widthMm: null };
  if (nominal && sizedGauge('wire', text)) {
    return no(
      `${text} is a size and names no gauge`,
      `write ${text} wire, ${text} leaf or ${text} drill`,
    );
  }
  return no(
    `${text} names no gauge and no set of gauges`,
    'for example `0.026 in wire`, `No. 29 drill`, `drill index 1-60`, `leaf set 0.0015-0.025 in`',
  );
}

function inMm(written: string, unit: 'in' | 'mm'): Rational {
  const number = size(written);
  return unit === 'mm' ? number : number.mul(254).div(10);
}

function no(message: string, fix: string | null): KitEntry {
  return { ok: false, message, fix };
}
