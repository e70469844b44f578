import type { Kit } from '../../gauges/index.ts';
import { faultsOf, type Run, withBrowser } from '../browser/index.ts';
import { capHeightsByFamily, render, saidTitle } from '../html/index.ts';
import { gaugesToGather, hasError } from '../matter/index.ts';
import { cardMargins, contentWidthMm, papers } from '../orders/index.ts';
import { type CardOrder, PressStopped, type Printed } from '../orders/model.ts';
import { finishPdf } from '../pdf/index.ts';
import { leftOut, tooLong } from './excess.ts';
import { fitOnLeaf } from './fit.ts';
import { overLeaf } from './leaf-marks.ts';
import { cardModel } from './model.ts';
import { tooSmall } from './type-sizes.ts';

/**
 * Prints sheets as bench cards, each on one leaf, all in the browser of the first order: in full and
 * in the roomiest type that needs one side, or else two; with less of the work where no type that can
 * be read has room for all of it, and a remark says so. A card that is longer even as a list of its
 * operations is returned with a problem that says by how much. Fails with `PressStopped` where a
 * sheet has an error and no draft was asked for, or the browser, a template or a font does not work.
 */
export async function printCards(orders: readonly CardOrder[]): Promise<Printed[]> {
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
    const printed: Printed[] = [];
    for (const order of orders) printed.push(await printOne(run, order));
    return printed;
  });
}

async function printOne(run: Run, order: CardOrder): Promise<Printed> {
  const { paper, draft, picture } = order;
  const capHeights = capHeightsByFamily(order.templates);
  const model = cardModel(order.sheet, order.findings, order.edition, {
    paper,
    draft,
    picture,
    capHeights,
    readings: order.readings ?? null,
    gathered: gathered(order),
  });
  await run.load(await render('card.hbs', model, order.templates));
  order.onProgress?.(`Printing the card of ${model.face.title}`);
  const size = papers[paper];
  // Measures the page at the width of its paper, which the fitting goes on with.
  await faultsOf(run, contentWidthMm(size, cardMargins(size)), order.templates);
  const fitted = await fitOnLeaf(run, model);
  // The page still is as it was printed.
  const problems = await faultsOf(run, contentWidthMm(size, cardMargins(size)), order.templates);
  problems.push(...(await tooSmall(run, model.readingDistanceMm, capHeights)));
  const remarks: string[] = [];
  if (fitted.pages > 2) problems.push(await tooLong(run, model, fitted));
  else if (fitted.content !== 'full') remarks.push(await leftOut(run, model, fitted));
  const { pdf, pages, shrunk } = await finishPdf(
    fitted.pdf,
    {
      title: saidTitle(order.templates, 'card-title', model.face.title),
      author: model.club,
      language: model.language,
      over: overLeaf(size, order.marks ?? { punch: null, trim: false }),
    },
    order.flate,
  );
  if (shrunk) {
    problems.push('Something on the card is too wide, and the browser shrank the whole to fit it.');
  }
  return { pdf, pages, problems, remarks };
}

/** The gauges of the edition that a card belongs to, so that it names those that the booklet lists. */
function gathered({ sheet, sheets = [], edition }: CardOrder): Kit | null {
  const all = sheets.length === 0 ? [{ sheet }] : sheets;
  return gaugesToGather(all, edition?.kit ?? undefined).kit;
}
