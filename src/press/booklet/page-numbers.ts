import { PressStopped } from '../orders/model.ts';
import type { PrintedPart } from './part-press.ts';

/** What the helper `pageOf` of `html/render.ts` leaves for a number that is not known yet. */
const slot = /(<span class="page-number" data-page-of="([^"]*)">)[^<]*(<\/span>)/g;

/** Whether a part states the page of anything. */
export function hasPageNumbers(html: string): boolean {
  return html.includes(' data-page-of="');
}

/** The page, from 1, of every place of the booklet. The first of two places of one name counts. */
export function pageNumbers(parts: readonly PrintedPart[]): ReadonlyMap<string, number> {
  const numbers = new Map<string, number>();
  let first = 1;
  for (const { part } of parts) {
    for (const [id, { page }] of Object.entries(part.places)) {
      if (!numbers.has(id)) numbers.set(id, first + page);
    }
    first += part.pages.length;
  }
  return numbers;
}

/** A part with its numbers filled in. Fails with `PressStopped` where one leads to no element. */
export function fillPageNumbers(html: string, numbers: ReadonlyMap<string, number>): string {
  return html.replace(slot, (_, start: string, id: string, end: string) => {
    const number = numbers.get(id);
    if (number === undefined) {
      throw new PressStopped(
        `The booklet's template asks for the page of "${id}", but no element has that id.`,
      );
    }
    return `${start}${number}${end}`;
  });
}
