import type { Run } from '../browser/index.ts';
import { type DensityName, densityNames } from '../lettering/index.ts';
import { pageCount } from '../pdf/index.ts';
import { type CardContent, type CardModel, contents } from './model.ts';

/** A way of setting the card: how closely, and how much of the work it has. */
export interface Setting {
  readonly density: DensityName;
  readonly content: CardContent;
}

/** What was printed of a card, on as many sides as it took. */
export interface Fitted extends Setting {
  readonly pdf: Uint8Array;
  readonly pages: number;
}

/** All settings, the one that is liked best first: less of the work only where no density has room. */
const settings: readonly Setting[] = contents.flatMap((content) =>
  densityNames.map((density) => ({ density, content })),
);

/** The sides a leaf has. */
const leaf = 2;

/**
 * Columns break differently on paper than in one long strip, so a strip is only a guess: one that is
 * this much too long is printed all the same, to see. What is printed decides.
 */
const slack = 1.06;

/**
 * Prints the card in the first setting that needs one side at one of the two roomiest densities, else in
 * the first that needs two; if none does, in the last.
 */
export async function fitOnLeaf(run: Run, model: CardModel): Promise<Fitted> {
  const heights: { setting: Setting; sides: number }[] = [];
  for (const setting of settings)
    heights.push({ setting, sides: await sidesOf(run, setting, model) });
  const single = heights.filter(({ setting }) => setting.content === 'full').slice(0, 2);
  for (const { setting, sides } of single) {
    if (sides > slack) continue;
    const printed = await printAs(run, setting);
    if (printed.pages === 1) return printed;
  }
  let last: Fitted | null = null;
  for (const { setting, sides } of heights) {
    const isLast = setting === settings.at(-1);
    if (sides > leaf * slack && !isLast) continue;
    last = await printAs(run, setting);
    if (last.pages <= leaf) return turnedBetween(run, last);
  }
  return last ?? printAs(run, { density: densityNames[0], content: contents[0] });
}

/** The height of the card, set as a strip, in sides of its paper. */
async function sidesOf(run: Run, setting: Setting, model: CardModel): Promise<number> {
  await dress(run, setting);
  const { paper, margins } = model;
  const sidePx = ((paper.heightMm - margins.topMm - margins.bottomMm) * 96) / 25.4;
  const px = Number(await run.ask("document.querySelector('main').getBoundingClientRect().height"));
  return px / sidePx;
}

/** The same with settings on the front and the work on the back, where both have room so. */
async function turnedBetween(run: Run, card: Fitted): Promise<Fitted> {
  if (card.pages < leaf) return card;
  await run.ask("document.body.dataset.turn = 'between'");
  const turned = await printAs(run, card);
  if (turned.pages === leaf) return turned;
  await run.ask('delete document.body.dataset.turn');
  return card;
}

async function dress(run: Run, { density, content }: Setting): Promise<void> {
  await run.ask(
    `Object.assign(document.body.dataset, { density: '${density}', content: '${content}' })`,
  );
}

async function printAs(run: Run, setting: Setting): Promise<Fitted> {
  await dress(run, setting);
  const pdf = await run.pdf({ tagged: true });
  const { density, content } = setting;
  return { pdf, density, content, pages: await pageCount(pdf) };
}
