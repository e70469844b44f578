import type { PrintedPart } from './part-press.ts';

/** How a part takes its place among the others; what it says of itself in its first tag. */
interface Placing {
  /** `data-begins="left"`: it begins on a left page, so that its first two pages face one another. */
  readonly beginsLeft: boolean;
  /** `data-fills`: it is printed only where a page would else be blank before one that begins left. */
  readonly fills: boolean;
}

/** How a part takes its place, from its HTML. */
export function placingOf(html: string): Placing {
  const [tag = ''] = /^<[^>]*>/.exec(html.trimStart()) ?? [];
  return {
    beginsLeft: /\sdata-begins="left"/.test(tag),
    fills: /\sdata-fills(?=[\s>="])/.test(tag),
  };
}

/**
 * The places, in the list, of the parts that are printed. `pagesOf` gives how many pages one has; it is asked
 * only of those that are taken. Where a part that begins left would come to stand on a right page, the
 * first of the parts right before it that fill is taken; without one it stands where it comes.
 */
export async function sequence(
  parts: readonly string[],
  pagesOf: (at: number) => Promise<number>,
): Promise<number[]> {
  const taken: number[] = [];
  let page = 1;
  let fillers: number[] = [];
  for (const [at, html] of parts.entries()) {
    const { beginsLeft, fills } = placingOf(html);
    if (fills) {
      fillers.push(at);
      continue;
    }
    const [filler] = fillers;
    if (beginsLeft && page % 2 === 1 && filler !== undefined) {
      taken.push(filler);
      page += await pagesOf(filler);
    }
    fillers = [];
    taken.push(at);
    page += await pagesOf(at);
  }
  return taken;
}

/** What stands in the margins of a page. */
export interface PageHead {
  /** The CSS name of the page. */
  readonly frame: string;
  /** The numbers of the tasks that begin on it: `5`, `5–7`; empty for none. */
  readonly tasks: string;
}

/** The margins of a part's pages: tasks are the headings with `data-task`. */
export function pageHeads({ part, frame }: PrintedPart, html: string): readonly PageHead[] {
  const numbers = part.pages.map((): string[] => []);
  for (const [, anchor = '', number = ''] of html.matchAll(/ id="([^"]+)" data-task="([^"]+)"/g)) {
    const spot = part.places[anchor];
    if (spot !== undefined) numbers[spot.page]?.push(number);
  }
  return numbers.map((list) => {
    const [first = '', ...rest] = list;
    const last = rest.at(-1);
    return { frame, tasks: last === undefined ? first : `${first}\u2013${last}` };
  });
}
