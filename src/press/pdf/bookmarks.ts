import type { OutlineEntry } from './part.ts';

/**
 * What the headings of a page in a browser are called, in their order, to be asked of it: Chromium's own
 * bookmarks run words together that stand on two lines or in two boxes. `data-bookmark` goes before the words.
 */
export const headingsAsked = `[...document.querySelectorAll('h1, h2, h3, h4, h5, h6')]
  .filter((each) => each.getClientRects().length > 0)
  .map((each) => (each.dataset.bookmark ?? each.innerText).replace(/\\s+/g, ' ').trim())
  .filter((words) => words !== '')`;

/** An outline with its entries called as the headings are; as it was where the two are not as many. */
export function calledAs(
  outline: readonly OutlineEntry[],
  headings: unknown,
): readonly OutlineEntry[] {
  if (!Array.isArray(headings) || headings.length !== countOf(outline)) return outline;
  const words = headings.map(String).values();
  const renamed = (entries: readonly OutlineEntry[]): OutlineEntry[] =>
    entries.map((entry) => {
      const title = words.next().value ?? entry.title;
      return { ...entry, title, entries: renamed(entry.entries) };
    });
  return renamed(outline);
}

function countOf(outline: readonly OutlineEntry[]): number {
  return outline.reduce((sum, { entries }) => sum + 1 + countOf(entries), 0);
}
