import type { Run } from '../browser/index.ts';
import { capHeightMm, labelAngles, textAngles } from '../lettering/index.ts';

/** The smallest type of a family on a page that is laid out. */
interface Smallest {
  readonly family: string;
  readonly px: number;
  /** Whether it is running text, which has to be larger than a label. */
  readonly running: boolean;
  /** The words that are so small. */
  readonly words: string;
}

/**
 * What on a laid-out card is smaller than can be read, as problems; a club's own style may do so.
 * `capHeights`: heights of capitals of the fonts in ems, by family; a family that says none is passed
 * over.
 */
export async function tooSmall(
  run: Run,
  distanceMm: number,
  capHeights: ReadonlyMap<string, number>,
): Promise<string[]> {
  const problems: string[] = [];
  for (const { family, px, running, words } of (await run.ask(smallestType)) as Smallest[]) {
    const capEm = capHeights.get(family);
    if (capEm === undefined) continue;
    const least = capHeightMm(distanceMm, running ? textAngles.least : labelAngles.least);
    const mm = ((px * 25.4) / 96) * capEm;
    // A thousandth is the browser's own rounding.
    if (mm >= least - 0.001) continue;
    problems.push(
      `"${words}" is set with capitals of ${mm.toFixed(2)} mm; the least that can be read ` +
        `${distanceMm} mm away is ${least.toFixed(2)} mm: enlarge it in templates/card.css.`,
    );
  }
  return problems;
}

/** By family and kind of text, what is smallest of it. Marks of fractions and signal words are labels. */
const smallestType = `(() => {
  const found = new Map();
  const walker = document.createTreeWalker(document.querySelector('main'), NodeFilter.SHOW_TEXT);
  for (let node = walker.nextNode(); node !== null; node = walker.nextNode()) {
    const words = node.data.trim();
    const holder = node.parentElement;
    // A drawing is printed at its own size, and held to what can be read where it is made.
    if (words === '' || holder.getClientRects().length === 0 || holder.closest('svg') !== null) continue;
    const style = getComputedStyle(holder);
    const family = style.fontFamily.split(',')[0].replaceAll('"', '').trim();
    const running = holder.closest('.running') !== null
      && holder.closest('.signal, .fraction, .page, .foot, .side-head, .drawings') === null;
    const key = family + running;
    const px = parseFloat(style.fontSize);
    if ((found.get(key)?.px ?? Infinity) > px) {
      found.set(key, { family, px, running, words: words.replace(/\\s+/g, ' ').slice(0, 40) });
    }
  }
  return [...found.values()];
})()`;
