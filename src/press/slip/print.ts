import type { EditionChanges } from '../../compare/model.ts';
import { faultsOf, withBrowser } from '../browser/index.ts';
import { capHeightsByFamily, render, saidTitle } from '../html/index.ts';
import { densityNames } from '../lettering/index.ts';
import { contentWidthMm } from '../orders/index.ts';
import type { Browser, EditionFacts, Flate, Printed, Templates } from '../orders/model.ts';
import { finishPdf, headingsAsked, pageCount } from '../pdf/index.ts';
import { type SlipOptions, slipModel } from './model.ts';

export interface SlipOrder extends Omit<SlipOptions, 'capHeights'> {
  readonly changes: EditionChanges;
  readonly edition: EditionFacts | null;
  readonly templates: Templates;
  readonly browser: Browser;
  readonly flate: Flate;
}

/** The sides of the one leaf. */
const leaf = 2;

/**
 * Prints an errata slip on one leaf, in the roomiest type that has room. One that is longer in the
 * smallest type that can be read comes back with a problem. Fails with `PressStopped`.
 */
export async function printSlip(order: SlipOrder): Promise<Printed> {
  const { changes, edition, templates, browser } = order;
  const capHeights = capHeightsByFamily(templates);
  const model = slipModel(changes, edition, { ...order, capHeights });
  const html = await render('slip.hbs', model, templates);
  return withBrowser(browser, async (run) => {
    await run.load(html);
    const width = contentWidthMm(model.paper, model.margins);
    await faultsOf(run, width, templates);
    let bytes = new Uint8Array();
    let pages = Number.POSITIVE_INFINITY;
    for (const density of densityNames) {
      await run.ask(`Object.assign(document.body.dataset, { density: '${density}' })`);
      bytes = new Uint8Array(await run.pdf({ tagged: true }));
      pages = await pageCount(bytes);
      if (pages <= leaf) break;
    }
    const problems = await faultsOf(run, width, templates);
    if (pages > leaf) {
      const most = model.units.reduce((a, b) => (b.lines.length > a.lines.length ? b : a));
      problems.push(
        `The slip takes ${pages} sides of ${model.paper.label}, and a leaf has two: print it on larger paper, ` +
          `or print new sheets for the units that changed most, such as ${most.title} (${most.lines.length} changes).`,
      );
    }
    const title = saidTitle(templates, 'slip-title', model.title);
    const { club: author, language } = model;
    const { pdf } = await finishPdf(
      bytes,
      { title, author, language, headings: await run.ask(headingsAsked) },
      order.flate,
    );
    return { pdf, pages, problems, remarks: [] };
  });
}
