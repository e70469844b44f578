import { type FileRegion, LineIndex, oncePer, regionOf, type Span } from '../text/index.ts';
import type { Sheet } from './model.ts';

/** A sheet's file as text. The same object stands for the same text, so that it is read once. */
export interface SheetText {
  /** As reports show it. */
  readonly file: string;
  readonly text: string;
}

/** The sheets that another may be based on. */
export interface FamilyBook {
  /** The sheet of that id; null where there is none. */
  readonly find: (id: string) => SheetText | null;
  /** The ids of all there are, for the nearest to a misspelt one. */
  readonly names: () => readonly string[];
}

/** A stretch of a variant's text, and where in which of its files it was taken from. */
export interface Stretch {
  readonly start: number;
  readonly end: number;
  /** Index into the family's members. */
  readonly member: number;
  /** Offset in the member's file. */
  readonly at: number;
}

/** What a variant was put together from. */
export interface Family {
  /** Its own file, its base, the base's base ... */
  readonly members: readonly SheetText[];
  /** Ascending, without gaps, over the whole text. */
  readonly stretches: readonly Stretch[];
}

/** Where a stretch of a sheet's text stands. */
export interface Origin {
  readonly file: string;
  readonly span: Span;
  /** 0 for the sheet's own file, 1 for its base, 2 for the base's base ... */
  readonly depth: number;
}

/** Where a span of a sheet's text stands; of one that runs on into another file, the first part. */
export function originOf(sheet: Pick<Sheet, 'file' | 'family'>, span: Span): Origin {
  const { file, family } = sheet;
  if (family === null) return { file, span, depth: 0 };
  const { stretches, members } = family;
  let low = 0;
  let high = stretches.length - 1;
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if ((stretches[middle]?.start ?? 0) <= span.start) low = middle;
    else high = middle - 1;
  }
  const stretch = stretches[low];
  const member = members[stretch?.member ?? 0];
  if (!stretch || !member) return { file, span, depth: 0 };
  const length = member.text.length;
  const start = Math.min(span.start - stretch.start + stretch.at, length);
  const end = Math.min(span.end, Math.max(stretch.end, span.start)) - stretch.start + stretch.at;
  return {
    file: member.file,
    span: { start, end: Math.max(start, Math.min(end, length)) },
    depth: stretch.member,
  };
}

/** The text of a sheet's own file, without what it takes from its base. */
export function ownText({ text, family }: Pick<Sheet, 'text' | 'family'>): string {
  return family?.members[0]?.text ?? text;
}

/** The lines of a sheet's files, by their names; those of its own file for any other name. */
export function linesOf(sheet: Sheet): (file: string) => LineIndex {
  const { family } = sheet;
  if (family === null) return () => sheet.lines;
  return (file) => {
    const member = family.members.find((each) => each.file === file) ?? family.members[0];
    if (member === undefined) return sheet.lines;
    return linesIn(member);
  };
}

const linesIn = oncePer(({ text }: SheetText) => new LineIndex(text));

/** File, line and column of a span of a sheet's text. */
export function regionIn(sheet: Sheet, span: Span): FileRegion {
  const origin = originOf(sheet, span);
  return { file: origin.file, ...regionOf(origin.span, linesOf(sheet)(origin.file)) };
}
