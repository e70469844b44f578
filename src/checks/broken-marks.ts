import { settingNamed } from '../sheet/index.ts';
import type { Sheet } from '../sheet/model.ts';
import { oncePer, type Span } from '../text/index.ts';
import { nearest } from './vocabulary.ts';

/** What was meant for a mark and is none, because of how it is written or where it stands. */
export interface BrokenMark {
  readonly span: Span;
  readonly written: string;
  /** The mark that was meant, `:value[float-level]`. */
  readonly meant: string;
  /** Where marks are never read: `code`, or the `front` matter; null where only its writing is wrong. */
  readonly place: 'code' | 'front' | null;
}

/** `value[x]`, `: value[x]`, `:value [x]`, `::value[x]`, `;value(x)`, `:values{x}`, `:value:[x]`. */
const NAME_FIRST =
  /(?<![\p{L}\p{N}:;\\])(?<sign>[:;]{0,3})(?<gap>[ \t]?)(?<word>[vVsS]\p{L}{3,7})(?<tie>[ \t]?[:;=]?[ \t]?)[[({<](?<name>[^[\](){}<>\r\n]{1,80})[\])}>]/gu;
/** `[value:x]`, `[value x]`, `{state: cover off}`. */
const NAME_WITHIN =
  /(?<sign>)(?<gap>)[[{<(][ \t]*:?(?<word>values?|states?)(?<tie>[ \t]*[:=][ \t]*|[ \t]+)(?<name>[^[\](){}<>\r\n]{1,80})[\]})>]/giu;
/** `:value[x`, closed nowhere, and `:value x]`, opened nowhere. */
const HALF =
  /(?<![\p{L}\p{N}:\\])(?<sign>:)(?<gap>)(?<word>value|state)(?:\[(?<name>[\p{L}\p{N}][\p{L}\p{N} -]{0,60}[\p{L}\p{N}])(?![\p{L}\p{N} -]*\])|(?<tie>[ \t]?)(?<late>[\p{L}\p{N}][\p{L}\p{N} -]{0,60})\])/giu;

/**
 * Marks that no reader of sheets would read, wherever they stand: in headings, tables, cautions,
 * quotes, code and in the front matter. Only what names a setting of the sheet, or a condition of the
 * kind, is taken for one: `the value (see below)` is none.
 */
export const brokenMarks = oncePer((sheet: Sheet): readonly BrokenMark[] =>
  mayHoldSome(sheet) ? find(sheet) : [],
);

const WHOLE = /:(?:value|state)\[[^\][\r\n]+\]/gi;
const PART =
  /\b[vs][a-z]{3,6}[ \t]?[:;=]?[ \t]?[[({<]|[[({<][ \t]*:?(?:value|state)|:(?:value|state)(?:[ \t]|\[)/i;

/** One quick look settles most sheets: every whole mark was read, and nothing else looks like one. */
function mayHoldSome({ text, values, states }: Sheet): boolean {
  let whole = 0;
  const rest = text.replace(WHOLE, () => {
    whole += 1;
    return ' ';
  });
  return whole > values.length + states.length || PART.test(rest);
}

/** Whether a place is one that `brokenMarks` speaks of: other checks then keep silent. */
export function isBrokenMark(span: Span, sheet: Sheet): boolean {
  return brokenMarks(sheet).some(
    (mark) => mark.span.start < span.end && span.start < mark.span.end,
  );
}

function find(sheet: Sheet): readonly BrokenMark[] {
  const marks = new Map<number, BrokenMark>();
  const read = [
    ...sheet.values.map((use) => [use.name, use.span] as const),
    ...sheet.states.map((mark) => [mark.text, mark.span] as const),
  ]
    .filter(([name]) => name !== '')
    .map(([, span]) => span);
  const known = sheet.directives.filter(({ kind }) => kind === 'text').map(({ span }) => span);
  const taken = [...read, ...known];
  for (const pattern of [NAME_FIRST, NAME_WITHIN, HALF]) {
    for (const match of sheet.text.matchAll(pattern)) {
      const place = { start: match.index, end: match.index + match[0].length };
      if (taken.some((span) => overlaps(span, place))) continue;
      const mark = markOf(match, sheet);
      if (mark === null || [...marks.values()].some(({ span }) => overlaps(span, mark.span)))
        continue;
      marks.set(mark.span.start, mark);
    }
  }
  return [...marks.values()].sort((a, b) => a.span.start - b.span.start);
}

function markOf(match: RegExpExecArray, sheet: Sheet): BrokenMark | null {
  const { sign = '', gap = '', word = '', tie = '', name, late } = match.groups ?? {};
  const mark = wordMeant(word);
  if (mark === null) return null;
  const isBracketed = match[0].includes('[');
  // `the valve (needle)`: a word that only looks like one needs the signs of a mark.
  const exact = /^(?:values?|states?)$/i.test(word);
  if (!exact && (!isBracketed || (sign === '' && tie !== ''))) return null;
  // `set the state (cover off)` is a sentence; `:state (cover off)` and `state[cover off]` are none.
  if (sign === '' && /\s/.test(tie) && !isBracketed && !/^[[{<(]/.test(match[0])) return null;
  const inner = (name ?? late ?? '').trim();
  const meant = mark === 'value' ? settingMeant(inner, sheet) : stateMeant(inner, sheet);
  if (meant === null) return null;
  // A sign that is only the colon of the sentence before it belongs to the sentence.
  const taken = gap !== '' && sign === '' ? gap.length : 0;
  const start = match.index + taken;
  const end = start + match[0].length - taken;
  const written = sheet.text.slice(start, end);
  const place = placeOf({ start, end }, sheet);
  if (place === null && written.toLowerCase() === `:${mark}[${inner}]`.toLowerCase()) return null;
  return { span: { start, end }, written, meant: `:${mark}[${meant}]`, place };
}

function wordMeant(word: string): 'value' | 'state' | null {
  const lower = word.toLowerCase();
  if (lower === 'value' || lower === 'values') return 'value';
  if (lower === 'state' || lower === 'states') return 'state';
  const near = nearest(lower, ['value', 'state']);
  return near === 'value' || near === 'state' ? near : null;
}

function settingMeant(name: string, sheet: Sheet): string | null {
  const setting = settingNamed(name, sheet);
  return setting === null ? null : setting.name.value;
}

function stateMeant(name: string, sheet: Sheet): string | null {
  const { kind } = sheet;
  return kind?.stateNamed(name) ? name : null;
}

function placeOf(span: Span, sheet: Sheet): BrokenMark['place'] {
  if (span.start < sheet.bodyStart) return 'front';
  return isUnread(span, sheet) ? 'code' : null;
}

/** Whether no stretch of prose, mark or safety message of the sheet takes in a place. */
function isUnread({ start, end }: Span, sheet: Sheet): boolean {
  const read = readStretches(sheet);
  let from = 0;
  let to = read.length;
  while (from < to) {
    const middle = (from + to) >> 1;
    if ((read[middle]?.end ?? 0) > start) to = middle;
    else from = middle + 1;
  }
  return (read[from]?.start ?? end) >= end;
}

/** All that is read of a sheet as stretches in file order, none in another: a mark is looked up, not searched for. */
const readStretches = oncePer((sheet: Sheet): readonly Span[] => {
  const stretches: { start: number; end: number }[] = [];
  const parts = [...sheet.prose, ...sheet.values, ...sheet.states, ...sheet.directives];
  for (const { start, end } of parts.map(({ span }) => span).sort((a, b) => a.start - b.start)) {
    const last = stretches.at(-1);
    if (last && start <= last.end) last.end = Math.max(last.end, end);
    else stretches.push({ start, end });
  }
  return stretches;
});

function overlaps(one: Span, two: Span): boolean {
  return one.start < two.end && two.start < one.end;
}
