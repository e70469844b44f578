import { spelledUnit } from './amount-text.ts';
import {
  deletions,
  flips,
  insertions,
  replacements,
  SHIFTS,
  slips,
  swaps,
  upsideDown,
} from './digit-slips.ts';
import { ratioCandidates } from './fraction-slips.ts';
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
  yield* slipsOfAll(text);
  yield* changedAbout(text);
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

/** Both ends of a range, or a figure and its tolerance, with their points slipped alike. */
function* slipsOfAll(text: string): Generator<Candidate> {
  const [, first, joint, second, rest] = TWO_FIGURES.exec(text) ?? [];
  if (first === undefined || second === undefined) return;
  for (const shift of SHIFTS) {
    const [ones, twos] = [first, second].map((each) => [...slips(each, (t) => t, [shift])]);
    // Each with as many places as it had, and before that with none of its zeros lost.
    for (const at of [-1, 0]) {
      const [one, two] = [ones?.at(at)?.text, twos?.at(at)?.text];
      if (one && two) yield { kind: 'slipped-points', text: `${one}${joint}${two}${rest}` };
    }
  }
}

const TWO_FIGURES = /^(\d*[.,]?\d+)( ?[–±] ?| to )(\d*[.,]?\d+)((?![/⁄]).*)$/;

/** `1/16 ± 1 in`: a tolerance in the place of its figure. */
function* changedAbout(text: string): Generator<Candidate> {
  const [, first, joint, second, rest] = FIGURE_AND_TOLERANCE.exec(text) ?? [];
  if (first !== undefined && second !== undefined)
    yield { kind: 'exchanged-tolerance', text: `${second}${joint}${first}${rest}` };
}

const FIGURE_AND_TOLERANCE =
  /^((?:\d+[- ])?\d+[/⁄]\d+|\d*[.,]?\d+)( ?(?:±|\+\/-|\+-) ?)((?:\d+[- ])?\d+[/⁄]\d+|\d*[.,]?\d+)(?![\d/⁄])(.*)$/;

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
  yield* flips(figure, put);
  const turned = upsideDown(figure);
  if (turned) yield { kind: 'upside-down', text: put(turned) };
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
  yield* flips(figure, put);
  yield* insertions(figure, put);
  yield* replacements(figure, put);
  yield* deletions(figure, put);
}

function withCommas(figure: string): string {
  const [whole = '', decimals] = figure.split('.');
  const parted = whole.replace(/\B(?=(?:\d{3})+$)/g, ',');
  return decimals === undefined ? parted : `${parted}.${decimals}`;
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
  'in-lb': ['ft-lb', 'in-oz', 'N·m'],
  'in-oz': ['in-lb', 'N·m'],
  N·m: ['ft-lb', 'in-lb', 'kgf·m'],
};

function* unitCandidates(text: string, wrong: Amount): Generator<Candidate> {
  if (wrong.style === 'gauge') return;
  const { id, counted } = unitById(wrong.unit);
  const spelled = spelledUnit(text, id, '').replace(/^[ -]/, '');
  const named = counted ? `${id}s?` : spelled.replace(/[\\^$.*+?()[\]{}|/]/g, '\\$&');
  const pattern = named && new RegExp(`[ -]?(?<!\\p{L})${named}(?!\\p{L})`, 'gu');
  const figure = /^[\d.,·/⁄ -]*[\d½¼¾⅛⅜⅝⅞]/.exec(text)?.[0].trim();
  for (const unit of CONFUSED[id] ?? []) {
    if (pattern && text.search(pattern) >= 0)
      yield { kind: 'wrong-unit', text: text.replace(pattern, ` ${unit}`) };
    else if (figure && !/[±+–]|\d to \d|min|max/.test(text))
      yield { kind: 'wrong-unit', text: `${figure} ${unit}` };
  }
}

function* otherSystems(text: string, figure: string): Generator<Candidate> {
  for (const system of systemsWhere(({ confused }) => confused.includes('slip'))) {
    const other = gaugeLabel(system, figure);
    if (other !== text) yield { kind: 'wrong-system', text: other };
  }
}
