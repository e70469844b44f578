import type { WireGauge } from './gauge-systems.ts';
import type { Gauge, GaugeBook, PressureReference, SizeProblem } from './model.ts';
import type { Numeral } from './numeral.ts';
import type { UnitOfMeasure } from './units.ts';

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

/** A term, what is wrong with it, or null where none starts. */
export type TermResult = Term | { readonly problem: SizeProblem } | null;

/** What reading needs to know besides the text. */
export interface NotationContext {
  readonly gauges: GaugeBook;
  /** Which system a bare `SWG` means; null leaves it ambiguous, and read as imperial. */
  readonly swg: WireGauge | null;
}

/** Matches a sticky pattern at an offset. */
export function stick(pattern: RegExp, text: string, at: number): RegExpExecArray | null {
  pattern.lastIndex = at;
  return pattern.exec(text);
}

/** The offset after any spaces. */
export function skipSpaces(text: string, at: number): number {
  let end = at;
  while (text.charCodeAt(end) === 32) end++;
  return end;
}

const WORD = /[\p{L}\p{N}]/u;

/** Whether a phrase stands at an offset and ends where a word ends. */
export function phraseAt(text: string, at: number, phrase: string): boolean {
  if (!text.startsWith(phrase, at)) return false;
  const last = phrase.charCodeAt(phrase.length - 1);
  const isWord = (last >= 97 && last <= 122) || (last >= 48 && last <= 57);
  return !isWord || !WORD.test(text.charAt(at + phrase.length));
}

/** A term with nothing in it yet. */
export function emptyTerm(start: number, end: number): Term {
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

/** Phrases by the code of their first character: most texts are settled by one look. */
export type PhraseList = ReadonlyMap<number, readonly string[]>;

/** Groups phrases by first character, keeping their order. */
export function byFirstLetter(phrases: readonly string[]): PhraseList {
  const groups = new Map<number, string[]>();
  for (const phrase of phrases) {
    const code = phrase.charCodeAt(0);
    const group = groups.get(code);
    if (group) group.push(phrase);
    else groups.set(code, [phrase]);
  }
  return groups;
}
