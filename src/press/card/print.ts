import type { Kit } from '../../gauges/index.ts';
import { faultsOf, type Run, withBrowser } from '../browser/index.ts';
import { capHeightsByFamily, render, saidTitle } from '../html/index.ts';
import { gaugesToGather, hasError } from '../matter/index.ts';
import { cardMargins, contentWidthMm, papers } from '../orders/index.ts';
import { type CardOrder, PressStopped, type Printed } from '../orders/model.ts';
import { finishPdf, headingsAsked } from '../pdf/index.ts';
import { type Fitted, layOut } from './fit.ts';
import { overLeaf } from './leaf-marks.ts';
import { type CardMeasures, measured } from './measures.ts';
import { type CardModel, cardModel } from './model.ts';
import { tooSmall } from './type-sizes.ts';

/** A card as it came off the press, with what was measured of it. */
export interface PrintedCard extends Printed {
  readonly measures: CardMeasures;
}

/**
 * Prints sheets as bench cards, all in the browser of the first order: hazards, settings and drawings on the
 * front, the work behind it, whatever has no room there on a further leaf. A remark says where a card
 * has more than one. Fails with `PressStopped` where a sheet has an error and no draft was asked for, or
 * the browser, a template or a font does not work.
 */
export async function printCards(orders: readonly CardOrder[]): Promise<PrintedCard[]> {
  const [first] = orders;
  if (first === undefined) return [];
  for (const order of orders) {
    if (hasError(order.findings) && !order.draft) {
      throw new PressStopped(
        `${order.sheet.file} has errors: it is printed only as a draft until they are mended.`,
      );
    }
  }
  first.onProgress?.(`Starting ${first.browser.label}`);
  return withBrowser(first.browser, async (run) => {
    const printed: PrintedCard[] = [];
    for (const order of orders) printed.push(await printOne(run, order));
    return printed;
  });
}

async function printOne(run: Run, order: CardOrder): Promise<PrintedCard> {
  const { paper, draft, picture } = order;
  const capHeights = capHeightsByFamily(order.templates);
  const model = cardModel(order.sheet, order.findings, order.edition, {
    paper,
    draft,
    picture,
    capHeights,
    readings: order.readings ?? null,
    proofs: order.proofs ?? null,
    gathered: gathered(order),
    ...(order.pages === undefined ? {} : { pages: order.pages }),
  });
  await run.load(await render('card.hbs', model, order.templates));
  order.onProgress?.(`Printing the card of ${model.face.title}`);
  const size = papers[paper];
  // Measures the page at the width of its paper, which the fitting goes on with.
  await faultsOf(run, contentWidthMm(size, cardMargins(size)), order.templates);
  const fitted = await layOut(run, model);
  // The page still is as it is printed.
  const problems = await faultsOf(run, contentWidthMm(size, cardMargins(size)), order.templates);
  problems.push(...(await tooSmall(run, model.readingDistanceMm, capHeights)));
  const measures = await measured(run, model);
  const printed = await run.pdf({ tagged: true });
  const { pdf, pages, shrunk } = await finishPdf(
    printed,
    {
      title: saidTitle(order.templates, 'card-title', model.face.title),
      author: model.club,
      language: model.language,
      headings: await run.ask(headingsAsked),
      over: overLeaf(size, order.marks ?? { punch: null, trim: false }),
    },
    order.flate,
  );
  if (shrunk) {
    problems.push('Something on the card is too wide, and the browser shrank the whole to fit it.');
  }
  return { pdf, pages, problems, remarks: remarksOf(model, fitted), measures };
}

/** The gauges of the edition that a card belongs to, so that it names those that the booklet lists. */
function gathered({ sheet, sheets = [], edition }: CardOrder): Kit | null {
  const all = sheets.length === 0 ? [{ sheet }] : sheets;
  return gaugesToGather(all, edition?.kit ?? undefined).kit;
}

/** What a printer of the card should know: that its leaves belong together, and what the front has not. */
function remarksOf(model: CardModel, { front, sides, broken }: Fitted): string[] {
  const { title } = model.face;
  const leaves = Math.ceil(sides / 2);
  const remarks: string[] = [];
  if (leaves > 1) remarks.push(`${title}: the card has ${leaves} leaves of ${model.paper.label}.`);
  if (front.sides > 1) {
    remarks.push(`${title}: the settings go on behind the front of ${model.paper.label}.`);
  }
  if (broken > 0) {
    remarks.push(
      `${title}: ${broken === 1 ? 'a task is' : `${broken} tasks are`} longer than a column.`,
    );
  }
  return remarks;
}
