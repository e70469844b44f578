import { faultsOf, withBrowser } from '../browser/index.ts';
import { render, saidTitle } from '../html/index.ts';
import { sheetFace, sourceLines } from '../matter/index.ts';
import { cardMargins, contentWidthMm, papers } from '../orders/index.ts';
import type {
  Browser,
  EditionFacts,
  Flate,
  Paper,
  Printed,
  SheetToPrint,
  Templates,
} from '../orders/model.ts';
import { finishPdf, headingsAsked } from '../pdf/index.ts';
import { type ConcordanceModel, concordanceTables, sourcesAcross } from './model.ts';

export interface ConcordanceOrder extends Pick<SheetToPrint, 'sheet'> {
  readonly edition: EditionFacts | null;
  readonly paper: Paper;
  readonly templates: Templates;
  readonly browser: Browser;
  readonly flate: Flate;
}

/**
 * Prints what the sources of a sheet say, setting by source, with the rulings below. Fails with
 * `PressStopped` where the browser, a template or a font does not work.
 */
export async function printConcordance(order: ConcordanceOrder): Promise<Printed> {
  const { sheet, edition, templates, browser } = order;
  const paper = papers[order.paper];
  const margins = cardMargins(paper);
  const sources = sourceLines(sheet);
  const face = sheetFace(sheet);
  const language = edition?.language ?? 'en';
  const model: ConcordanceModel = {
    language,
    face,
    paper,
    margins,
    sources,
    tables: concordanceTables(sheet, sources, sourcesAcross(paper)),
  };
  const html = await render('concordance.hbs', model, templates);
  return withBrowser(browser, async (run) => {
    await run.load(html);
    const problems = await faultsOf(run, contentWidthMm(paper, margins), templates);
    const title = saidTitle(templates, 'concordance-title', face.title);
    const author = edition?.club ?? null;
    const printed = await run.pdf({ tagged: true });
    const { pdf, pages } = await finishPdf(
      printed,
      { title, author, language, headings: await run.ask(headingsAsked) },
      order.flate,
    );
    return { pdf, pages, problems, remarks: [] };
  });
}
