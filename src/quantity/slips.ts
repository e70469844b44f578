import { spelledUnit } from './amount-text.ts';
import { gaugeLabel, isNumbered, systemsWhere } from './gauge-systems.ts';
import { LETTERS_PATTERN } from './gauge-words.ts';
import type { Amount, Gauge, GaugeBook, Misprint } from './model.ts';
import { unitById } from './units.ts';

/** A way in which a figure may have come out wrong. */
export type Kind = Misprint['kind'];

/** What the figure would have been, had that slip been made. */
export interface Candidate {
  readonly kind: Kind;
  readonly text: string;
}

/**
 * Every text that is one slip away from the one printed, in any one of its figures. `text` is a whole
 * size with its unit or system, readable or not; `wrong` is its amount where it is readable as one.
 */
export function* candidates(
  text: string,
  wrong: Amount | null,
  gauges: GaugeBook,
): Generator<Candidate> {
  const gauge = wrong?.gauge ?? null;
  if (gauge) yield* neighbors(gauge, gauges);
  for (const figure of text.matchAll(FIGURES)) {
    // The 3 of `cm3` and the 10 of `per 10 strokes` belong to the unit.
    if (/(?:\p{L}|\bper |\/ ?)$/iu.test(text.slice(0, figure.index))) continue;
    if (figure[1] !== undefined) yield* ratioCandidates(text, figure);
    else if (isName(text, figure, gauge)) yield* nameCandidates(text, figure[0], figure.index);
    else yield* figureCandidates(text, figure[0], figure.index);
  }
  if (wrong) yield* unitCandidates(text, wrong);
  else
    for (const [unit, other] of [
      ['in', 'mm'],
      ['mm', 'in'],
    ] as const)
      yield {
        kind: 'wrong-unit',
        text: text.replace(new RegExp(`(?<=[\\d ])${unit}(?!\\p{L})`, 'gu'), other),
      };
}

const FIGURES = /(\d+)([/⁄])(\d+)|[\d.,·]*\d(?!\d*[/⁄]\d)/g;

/** Whether a figure is the name of a gauge and no size: the 29 of `No. 29 drill`. */
function isName(text: string, { 0: figure, index }: RegExpExecArray, gauge: Gauge | null): boolean {
  if (gauge && isNumbered(gauge.system)) return true;
  const after = text.slice(index + figure.length);
  return /(?:\bnos?\.? ?|#|№ ?)$/i.test(text.slice(0, index)) || LETTERS_BEHIND.test(after);
}

const LETTERS_BEHIND = new RegExp(`^ ?(?:${LETTERS_PATTERN})\\b`, 'i');

/** The gauges before and after in the same system: a finger slipped one line in the table. */
function* neighbors(gauge: Gauge, gauges: GaugeBook): Generator<Candidate> {
  const all = gauges.all(gauge.system);
  const at = all.findIndex((each) => each.name === gauge.name);
  if (at < 0) return;
  for (const beside of [all[at - 1], all[at + 1]]) {
    if (beside) yield { kind: 'neighboring-gauge', text: beside.label };
  }
}

function* nameCandidates(text: string, figure: string, at: number): Generator<Candidate> {
  const put = (changed: string): string =>
    text.slice(0, at) + changed + text.slice(at + figure.length);
  yield* swaps(figure, put);
  for (const beside of [Number(figure) + 1, Number(figure) - 1])
    if (beside > 0) yield { kind: 'neighboring-gauge', text: put(String(beside)) };
  yield* replacements(figure, put);
  yield* deletions(figure, put);
  yield* otherSystems(text, figure);
}

function* figureCandidates(text: string, written: string, at: number): Generator<Candidate> {
  // A comma between thousands goes where the digits go: the slips are made without it.
  const grouped = /^[1-9]\d{0,2}(?:,\d{3})+(?:\.\d+)?$/.test(written) && !/\bmm\b/i.test(text);
  const figure = grouped ? written.replaceAll(',', '') : written;
  const put = (changed: string): string =>
    text.slice(0, at) + (grouped ? withCommas(changed) : changed) + text.slice(at + written.length);
  yield* swaps(figure, put);
  yield* slips(figure, put);
  yield* insertions(figure, put);
  yield* replacements(figure, put);
  yield* deletions(figure, put);
}

function withCommas(figure: string): string {
  const [whole = '', decimals] = figure.split('.');
  const parted = whole.replace(/\B(?=(?:\d{3})+$)/g, ',');
  return decimals === undefined ? parted : `${parted}.${decimals}`;
}

/** One digit left out. */
function* deletions(figure: string, put: (changed: string) => string): Generator<Candidate> {
  if (significant(figure) < 2) return;
  for (let i = 0; i < figure.length; i++) {
    if (!isDigit(figure, i)) continue;
    yield { kind: 'extra-digit', text: put(figure.slice(0, i) + figure.slice(i + 1)) };
  }
}

/** How many digits a figure has after its leading zeros. */
function significant(figure: string): number {
  return figure.replace(/[^\d]/g, '').replace(/^0+/, '').length;
}

function isDigit(text: string, at: number): boolean {
  const code = text.charCodeAt(at);
  return code >= 48 && code <= 57;
}

function* swaps(figure: string, put: (changed: string) => string): Generator<Candidate> {
  let last = -1;
  for (let i = 0; i < figure.length; i++) {
    if (!isDigit(figure, i)) continue;
    if (last >= 0 && figure.charAt(last) !== figure.charAt(i)) {
      const changed =
        figure.slice(0, last) +
        figure.charAt(i) +
        figure.slice(last + 1, i) +
        figure.charAt(last) +
        figure.slice(i + 1);
      yield { kind: 'swapped-digits', text: put(changed) };
    }
    last = i;
  }
}

/** One digit another; of a single figure nothing would be left, so that explains nothing. */
function* replacements(figure: string, put: (changed: string) => string): Generator<Candidate> {
  if (significant(figure) < 2) return;
  for (let i = 0; i < figure.length; i++) {
    if (!isDigit(figure, i)) continue;
    for (let digit = 0; digit < 10; digit++) {
      if (String(digit) === figure.charAt(i)) continue;
      if (digit === 0 && i === 0 && isDigit(figure, 1)) continue;
      yield {
        kind: 'wrong-digit',
        text: put(`${figure.slice(0, i)}${digit}${figure.slice(i + 1)}`),
      };
    }
  }
}

function* insertions(figure: string, put: (changed: string) => string): Generator<Candidate> {
  for (let i = 0; i <= figure.length; i++) {
    for (let digit = 0; digit < 10; digit++) {
      // A zero before the whole part, or one put after the last decimal, changes nothing.
      if (digit === 0 && (i === 0 || (i === figure.length && figure.includes('.')))) continue;
      yield { kind: 'missing-digit', text: put(`${figure.slice(0, i)}${digit}${figure.slice(i)}`) };
    }
  }
}

/** The point one to three places to either side; zeros are filled in as a typist would. */
function* slips(figure: string, put: (changed: string) => string): Generator<Candidate> {
  const mark = /[.,·]/.exec(figure)?.[0] ?? '.';
  const [whole = '', decimals = ''] = figure.split(/[.,·]/);
  for (const shift of [1, -1, 2, -2, 3, -3]) {
    const point = whole.length + shift;
    const all = whole + decimals;
    const padded = point < 0 ? '0'.repeat(-point) + all : all.padEnd(Math.max(point, 0), '0');
    const at = Math.max(point, 0);
    const left = padded.slice(0, at).replace(/^0+(?=\d)/, '');
    // A whole number slips to a whole number where it can: 4750 to 475, not to 475.0.
    const right = decimals === '' ? padded.slice(at).replace(/0+$/, '') : padded.slice(at);
    const bare = figure.startsWith(mark) && /^0*$/.test(left);
    const lead = bare ? '' : left === '' ? '0' : left;
    yield {
      kind: 'slipped-point',
      text: put(right === '' ? left || '0' : `${lead}${mark}${right}`),
    };
  }
}

function* ratioCandidates(text: string, ratio: RegExpExecArray): Generator<Candidate> {
  const [whole, numerator = '', slash = '/', denominator = ''] = ratio;
  const put = (n: string, d: string): string =>
    text.slice(0, ratio.index) + n + slash + d + text.slice(ratio.index + whole.length);
  if (isNumerator(denominator)) {
    yield { kind: 'reversed-fraction', text: put(denominator, numerator) };
  }
  for (const { text: d } of swaps(denominator, (t) => t)) {
    if (DENOMINATORS.includes(d)) yield { kind: 'swapped-digits', text: put(numerator, d) };
  }
  for (const { text: n } of swaps(numerator, (t) => t)) {
    if (isNumerator(n)) yield { kind: 'swapped-digits', text: put(n, denominator) };
  }
  for (let i = 0; i < numerator.length; i++) {
    for (let digit = 0; digit < 10; digit++) {
      const n = `${numerator.slice(0, i)}${digit}${numerator.slice(i + 1)}`;
      if (isNumerator(n)) yield { kind: 'wrong-numerator', text: put(n, denominator) };
    }
  }
  // A digit dropped from or put before a numerator: 3/64 for 13/64.
  for (let digit = 1; digit < 10; digit++) {
    yield { kind: 'wrong-numerator', text: put(`${digit}${numerator}`, denominator) };
    yield { kind: 'wrong-numerator', text: put(`${numerator}${digit}`, denominator) };
  }
  if (numerator.length > 1) {
    yield { kind: 'wrong-numerator', text: put(numerator.slice(1), denominator) };
    yield { kind: 'wrong-numerator', text: put(numerator.slice(0, -1), denominator) };
  }
  for (const d of DENOMINATORS) {
    if (d !== denominator) yield { kind: 'wrong-denominator', text: put(numerator, d) };
  }
  const before = /(\d+)([- ])$/.exec(text.slice(0, ratio.index));
  if (before) {
    for (let n = 0; n < 10; n++) {
      if (String(n) === before[1]) continue;
      const lead = n === 0 ? '' : `${n}${before[2]}`;
      yield {
        kind: 'wrong-digit',
        text: text.slice(0, before.index) + lead + text.slice(ratio.index),
      };
    }
  }
}

/** What a rule, a drill or a screw's turn is divided by. */
const DENOMINATORS: readonly string[] = ['2', '3', '4', '6', '8', '16', '32', '64'];

/** Whether a fraction of an inch can have it: odd, and not led by a zero. */
function isNumerator(text: string): boolean {
  return /^[1-9]?\d*[13579]$/.test(text) && !text.startsWith('0');
}

/** Units that are mistaken for one another, by id. */
const CONFUSED: Readonly<Record<string, readonly string[]>> = {
  in: ['mm', 'thou'],
  mm: ['in', 'thou', 'cm'],
  thou: ['mm', 'in'],
  cm: ['mm', 'in'],
  turn: ['flats'],
  flat: ['turns'],
  psi: ['bar', 'kPa'],
  bar: ['psi', 'kPa', 'mbar'],
  mbar: ['kPa', 'bar', 'inHg'],
  kPa: ['psi', 'mbar', 'inHg'],
  inHg: ['kPa', 'mmHg', 'cmHg', 'mbar'],
  mmHg: ['inHg', 'cmHg', 'mbar'],
  'ft-lb': ['in-lb', 'N·m'],
  'in-lb': ['ft-lb', 'N·m'],
  N·m: ['ft-lb', 'in-lb', 'kgf·m'],
};

function* unitCandidates(text: string, wrong: Amount): Generator<Candidate> {
  if (wrong.style === 'gauge') return;
  const spelled = spelledUnit(text, unitById(wrong.unit).id, '').replace(/^[ -]/, '');
  const figure = /^[\d.,·/⁄ -]*[\d½¼¾⅛⅜⅝⅞]/.exec(text)?.[0].trim();
  for (const unit of CONFUSED[unitById(wrong.unit).id] ?? []) {
    if (figure && !/[±+–]|\d to \d|min|max/.test(text)) {
      yield { kind: 'wrong-unit', text: `${figure} ${unit}` };
    } else if (spelled) {
      const pattern = new RegExp(
        `[ -]?${spelled.replace(/[\\^$.*+?()[\]{}|/]/g, '\\$&')}(?!\\p{L})`,
        'gu',
      );
      yield { kind: 'wrong-unit', text: text.replace(pattern, ` ${unit}`) };
    }
  }
}

function* otherSystems(text: string, figure: string): Generator<Candidate> {
  for (const system of systemsWhere(({ confused }) => confused.includes('slip'))) {
    const other = gaugeLabel(system, figure);
    if (other !== text) yield { kind: 'wrong-system', text: other };
  }
}
