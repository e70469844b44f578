import { SIZED_GAUGE_WORDS, SYSTEM_WORDS } from './lexicon.ts';
import type { Gauge, GaugeBook, GaugeSystem, PressureReference, SizeProblem } from './model.ts';
import { isFault, type Numeral, numeralAt, settleComma } from './numeral.ts';
import {
  noSuchDrill,
  noSuchGauge,
  numeralFault,
  plainDrillNumber,
  unsettledComma,
  volumeSystem,
} from './problems.ts';
import { exactText } from './rational.ts';
import { allUnits, type UnitOfMeasure, unitAt, unitById } from './units.ts';

/** One number or gauge name of a statement, before the statement is put together. */
export interface Term {
  readonly start: number;
  readonly end: number;
  readonly numeral: Numeral | null;
  readonly unit: UnitOfMeasure | null;
  readonly gauge: Gauge | null;
  /** `No. 29` whose system is still to come: `No. 29 to No. 27 drill`. */
  readonly bareName: string | null;
  /** What the gauge's letters could mean instead. */
  readonly ambiguous: readonly Gauge[];
  readonly reference: PressureReference | null;
}

export type TermResult = Term | { readonly problem: SizeProblem } | null;

/** What reading needs to know besides the text. */
export interface NotationContext {
  readonly gauges: GaugeBook;
  /** Which system a bare `SWG` means; null leaves it ambiguous, and read as imperial. */
  readonly swg: 'imperial' | 'us-steel' | null;
}

const NUMBERED =
  /(?:(?:no\.?|nos\.?|number|size|gauge|#|№) ?)?(\d{1,6}(?:\/0)?)(?![\d.,]*[\d])(?!\/\d)/y;
const NUMBER_SIGN = /^(?:no\.?|nos\.?|number|#|№)/;
const LETTER_DRILL =
  /(?:(?:letter|size) )?([a-z])(?:-?size)? (?:twist )?drill(?: bit)?s?(?![\p{L}\d])|(?:twist )?drill(?: bit)?(?: letter| size)? ([a-z])(?![\p{L}\d'-])/uy;
const DRILL_NUMBER = /(?:twist )?drill(?: bit)? (?:no\.?|number|#) ?(\d{1,3})(?![\d./]*\d)/y;
const SYSTEM_FIRST =
  /(imperial swg|s\.w\.g\.|swg|a\.w\.g\.|awg|b&s|bwg|music wire|us steel wire)(?: gauge)? (?:no\.? ?|number |#)?(\d{1,6}(?:\/0)?)(?![\d./]*\d)/y;
const REFERENCE =
  /[ ,]*\(?(gauge pressure|gauge|gage|absolute|abs\.?|vacuum|vac\.?|depression|below ambient|below atmospheric pressure|below atmospheric|below atmosphere)\)?(?!\p{L})/uy;
const STROKES =
  / ?(?:per|\/|in|for|every) ?(?:(\d{1,4}|a|one|two|five|ten|twenty|fifty) )?(?:full )?strokes?(?!\p{L})/uy;
const PER_TIME = / ?(?:per|\/|an|a) ?(seconds?|sec\.?|s|minutes?|mins?\.?|hours?|hr|h)(?!\p{L})/uy;
const PER_VOLUME =
  / ?(?:per|\/|for) ?(?:([\d.]{1,6}) ?)?(cc|cm3|cm³|ml|milliliters?|l|liters?|litres?)(?!\p{L})/uy;
const STROKE_WORDS: Readonly<Record<string, string>> = {
  a: '1',
  one: '1',
  two: '2',
  five: '5',
  ten: '10',
  twenty: '20',
  fifty: '50',
};

function stick(pattern: RegExp, text: string, at: number): RegExpExecArray | null {
  pattern.lastIndex = at;
  return pattern.exec(text);
}

/** The offset after any spaces. */
export function skipSpaces(text: string, at: number): number {
  let end = at;
  while (text.charCodeAt(end) === 32) end++;
  return end;
}

/** Whether a phrase stands at an offset and ends where a word ends. */
export function phraseAt(text: string, at: number, phrase: string): boolean {
  if (!text.startsWith(phrase, at)) return false;
  const last = phrase.charCodeAt(phrase.length - 1);
  const isWord = (last >= 97 && last <= 122) || (last >= 48 && last <= 57);
  return !isWord || !/[\p{L}\p{N}]/u.test(text.charAt(at + phrase.length));
}

/**
 * Reads a number with its unit, or a gauge's name, at an offset of a normalized text. Null where
 * neither starts there.
 */
export function termAt(lower: string, at: number, context: NotationContext): TermResult {
  return namedGaugeAt(lower, at, context) ?? numberAt(lower, at, context);
}

function namedGaugeAt(lower: string, at: number, context: NotationContext): TermResult {
  const letter = stick(LETTER_DRILL, lower, at);
  if (letter) {
    const end = LETTER_DRILL.lastIndex;
    return gaugeTerm(
      context,
      'letter-drill',
      (letter[1] ?? letter[2] ?? '').toUpperCase(),
      at,
      end,
    );
  }
  const drill = stick(DRILL_NUMBER, lower, at);
  if (drill) return gaugeTerm(context, 'number-drill', drill[1] ?? '', at, DRILL_NUMBER.lastIndex);
  const first = stick(SYSTEM_FIRST, lower, at);
  if (first) {
    const end = SYSTEM_FIRST.lastIndex;
    const word = SYSTEM_WORDS.find(([spelling]) => spelling === first[1]);
    if (word) return systemTerm(context, word[1], first[2] ?? '', at, end, true);
  }
  const numbered = stick(NUMBERED, lower, at);
  if (!numbered) return null;
  const afterName = NUMBERED.lastIndex;
  const named = NUMBER_SIGN.test(numbered[0]);
  const system = systemAt(lower, skipSpaces(lower, afterName));
  if (system) return systemTerm(context, system.system, numbered[1] ?? '', at, system.end, named);
  if (!named) return null;
  return { ...emptyTerm(at, afterName), bareName: numbered[1] ?? '' };
}

/** The system that a word at an offset names, and the offset after it (and after `wire`, `gauge`). */
export function systemAt(
  lower: string,
  at: number,
): { system: GaugeSystem | 'drill' | 'bare-swg'; end: number } | null {
  for (const [spelling, system] of SYSTEM_WORDS) {
    const plural = phraseAt(lower, at, `${spelling}s`);
    if (!plural && !phraseAt(lower, at, spelling)) continue;
    let end = at + spelling.length + (plural ? 1 : 0);
    for (const extra of [' wire gauge', ' wire feeler', ' wire', ' gauge', ' feeler']) {
      if (system !== 'drill' && phraseAt(lower, end, extra)) {
        end += extra.length;
        break;
      }
    }
    return { system, end };
  }
  return null;
}

function systemTerm(
  context: NotationContext,
  system: GaugeSystem | 'drill' | 'bare-swg',
  name: string,
  start: number,
  end: number,
  named: boolean,
): TermResult {
  if (system === 'drill') {
    // `29 drill` could be a number, but so could a slip for `29/64 drill`: it has to be said.
    if (!named) return { problem: plainDrillNumber(name, start, end, context.gauges) };
    return gaugeTerm(context, 'number-drill', name, start, end);
  }
  if (system !== 'bare-swg') return gaugeTerm(context, system, name, start, end);
  const chosen = context.swg === 'us-steel' ? 'us-steel-wire' : 'swg';
  const term = gaugeTerm(context, chosen, name, start, end);
  if (!term || 'problem' in term || context.swg !== null) return term;
  const other = context.gauges.find('us-steel-wire', name);
  return other && term.gauge && !other.mm.equals(term.gauge.mm)
    ? { ...term, ambiguous: [other] }
    : term;
}

function gaugeTerm(
  context: NotationContext,
  system: GaugeSystem,
  name: string,
  start: number,
  end: number,
): TermResult {
  const gauge = context.gauges.find(system, name);
  if (!gauge) return { problem: noSuchGauge(system, name, start, end, context.gauges) };
  return { ...emptyTerm(start, end), gauge };
}

function emptyTerm(start: number, end: number): Term {
  return {
    start,
    end,
    numeral: null,
    unit: null,
    gauge: null,
    bareName: null,
    ambiguous: [],
    reference: null,
  };
}

function numberAt(lower: string, at: number, context: NotationContext): TermResult {
  const read = numeralAt(lower, at);
  if (!read) return null;
  if (isFault(read)) return { problem: numeralFault(read, lower) };
  const beforeUnit = skipSpaces(
    lower,
    lower.charAt(read.end) === '-' ? hyphenUnit(lower, read.end) : read.end,
  );
  const found = wholeUnitAt(lower, beforeUnit);
  if (!found) return gaugeOrPlain(lower, at, read, context);
  const { unit, reference, end } = found;
  const numeral = settleComma(read, unit);
  if (!numeral) return { problem: unsettledComma(read, unit) };
  const term: Term = { ...emptyTerm(at, end), numeral, unit, reference };
  return unit.dimension === 'length' ? (sizedGauge(lower, term, context) ?? term) : term;
}

/** A unit with all that belongs to it: `per 10 strokes`, `per 100 ml`, `abs`, `vacuum`. */
export interface WholeUnit {
  readonly unit: UnitOfMeasure;
  readonly reference: PressureReference | null;
  readonly end: number;
}

/** The whole unit at an offset; null where none stands there. */
export function wholeUnitAt(lower: string, at: number): WholeUnit | null {
  const found = unitAt(lower, at);
  if (!found) return null;
  const { unit, end } = compoundAt(lower, found.end, found.unit) ?? found;
  const said = unit.reference === null ? null : stick(REFERENCE, lower, end);
  if (!said) return { unit, reference: unit.reference, end };
  return { unit, reference: referenceOf(said[1] ?? ''), end: REFERENCE.lastIndex };
}

/** In `0.026-in wire` a hyphen ties number and unit. */
function hyphenUnit(lower: string, hyphen: number): number {
  return unitAt(lower, hyphen + 1) ? hyphen + 1 : hyphen;
}

function referenceOf(word: string): PressureReference {
  if (word.startsWith('abs')) return 'absolute';
  return word.startsWith('gauge') || word.startsWith('gage') ? 'gauge' : 'depression';
}

function compoundAt(
  lower: string,
  at: number,
  unit: UnitOfMeasure,
): { unit: UnitOfMeasure; end: number } | null {
  if (unit.dimension === 'volume') {
    const strokes = stick(STROKES, lower, at);
    if (strokes) {
      const count = strokes[1] ? (STROKE_WORDS[strokes[1]] ?? strokes[1]) : '1';
      return /[1-9]/.test(count)
        ? { unit: unitById(`${unit.id}/${Number(count)} strokes`), end: STROKES.lastIndex }
        : null;
    }
    const time = stick(PER_TIME, lower, at);
    if (time) {
      const word = time[1] ?? '';
      const id = word.startsWith('m') ? 'minute' : word.startsWith('h') ? 'h' : 's';
      return { unit: unitById(`${unit.id}/${id}`), end: PER_TIME.lastIndex };
    }
  }
  if (unit.dimension === 'time') {
    const volume = stick(PER_VOLUME, lower, at);
    const measure = volume
      ? allUnits().find((u) => u.spellings.includes(volume[2] ?? ''))
      : undefined;
    const count = volume?.[1] ?? '1';
    if (measure && /^(?:\d+\.?\d*|\.\d+)$/.test(count) && /[1-9]/.test(count)) {
      return { unit: unitById(`${unit.id}/${count} ${measure.id}`), end: PER_VOLUME.lastIndex };
    }
  }
  return null;
}

/** `3.5 mm drill`, `13/64 in drill`, `0.026 in wire`, `0.38 mm leaf`. */
function sizedGauge(lower: string, term: Term, context: NotationContext): TermResult {
  const { numeral, unit } = term;
  if (!numeral || !unit) return null;
  const at = skipSpaces(lower, lower.charAt(term.end) === '-' ? term.end + 1 : term.end);
  for (const [word, system] of SIZED_GAUGE_WORDS) {
    if (!phraseAt(lower, at, word)) continue;
    const gauge = context.gauges.find(system, `${lower.slice(term.start, numeral.end)} ${unit.id}`);
    return gauge ? { ...term, gauge, end: at + word.length } : null;
  }
  const drill = systemAt(lower, at);
  if (drill?.system !== 'drill') return null;
  const gauge = drillOfSize(numeral, unit, context.gauges);
  if (gauge) return { ...term, gauge, end: drill.end };
  return {
    problem: noSuchDrill(
      lower.slice(term.start, term.end),
      numeral,
      unit,
      term.start,
      drill.end,
      context.gauges,
    ),
  };
}

/** The drill whose size is the one written: by its name, or the nearest that the figure rounds. */
function drillOfSize(numeral: Numeral, unit: UnitOfMeasure, gauges: GaugeBook): Gauge | null {
  if (numeral.ratio) return unit.id === 'in' ? fractionDrill(numeral, gauges) : null;
  if (unit.id === 'mm') return gauges.find('metric-drill', exactText(numeral.value));
  const half = unit.factor.div(10 ** (numeral.places ?? 0)).div(2);
  const mm = numeral.value.mul(unit.factor);
  let best: Gauge | null = null;
  let least = half;
  for (const system of ['number-drill', 'letter-drill', 'fraction-drill'] as const) {
    for (const gauge of gauges.all(system)) {
      const off = gauge.mm.sub(mm).abs();
      const nearer = best ? off.compare(least) < 0 : off.compare(least) <= 0;
      if (nearer) [best, least] = [gauge, off];
    }
  }
  return best;
}

function fractionDrill(numeral: Numeral, gauges: GaugeBook): Gauge | null {
  if (!numeral.ratio) return null;
  const [n, d] = numeral.ratio;
  const whole = numeral.style === 'mixed' ? `${numeral.value.floor().toString()}-` : '';
  return gauges.find('fraction-drill', `${whole}${n}/${d}`);
}

/** A number with no unit after it: `9/64 drill`, the first of `13/64 ± 1/64 in`, or a bare one. */
function gaugeOrPlain(
  lower: string,
  at: number,
  numeral: Numeral,
  context: NotationContext,
): TermResult {
  const ounces = volumeSystem(lower, numeral.end, at);
  if (ounces) return { problem: ounces };
  const plain: Term = { ...emptyTerm(at, numeral.end), numeral };
  if (!numeral.ratio) return plain;
  const drill = systemAt(
    lower,
    skipSpaces(lower, lower.charAt(numeral.end) === '-' ? numeral.end + 1 : numeral.end),
  );
  if (drill?.system !== 'drill') return plain;
  const gauge = fractionDrill(numeral, context.gauges);
  const unit = unitById('in');
  if (gauge) return { ...plain, gauge, unit, end: drill.end };
  return {
    problem: noSuchDrill(
      lower.slice(at, numeral.end),
      numeral,
      unit,
      at,
      drill.end,
      context.gauges,
    ),
  };
}

/** A `No. 29` that got its system from a later term of the same statement. */
export function withSystem(term: Term, gauge: Gauge, context: NotationContext): TermResult {
  if (term.bareName === null) return term;
  return gaugeTerm(context, gauge.system, term.bareName, term.start, term.end);
}
