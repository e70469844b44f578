import type { SheetText, Stretch } from './family.ts';
import type { Piece } from './merge-body.ts';

/** The text of a variant while it is put together, and where each part of it came from. */
export class FamilyText {
  text = '';
  readonly stretches: Stretch[] = [];
  readonly #members: readonly SheetText[];

  constructor(members: readonly SheetText[]) {
    this.#members = members;
  }

  get length(): number {
    return this.text.length;
  }

  /** A member's front matter, and a line end, whether it has one or not. */
  head(member: number, end: number): void {
    this.#take(member, 0, end);
    this.#fill('\n');
  }

  /** A piece of a member's work, with an empty line behind it. */
  part({ member, span }: Piece): void {
    this.#take(member, span.start, span.end);
    this.#fill('\n\n');
  }

  /** Where a place of a member's file stands in this text; the start where it does not. */
  found(member: number, { start, end }: { start: number; end: number }) {
    const stretch = this.stretches.find(
      (each) =>
        each.member === member && each.at <= start && end <= each.at + each.end - each.start,
    );
    const by = stretch ? stretch.start - stretch.at : -start;
    return { start: start + by, end: Math.max(start, end) + by };
  }

  #take(member: number, from: number, to: number): void {
    const part = this.#members[member]?.text.slice(from, to) ?? '';
    if (part === '') return;
    const start = this.text.length;
    this.text += part;
    this.stretches.push({ start, end: this.text.length, member, at: from });
  }

  /** What no file has belongs to the stretch before it, which ends where its file does. */
  #fill(filler: string): void {
    this.text += filler;
  }
}
