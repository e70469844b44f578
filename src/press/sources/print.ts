import { faultsOf, withBrowser } from '../browser/index.ts';
import { render, saidTitle } from '../html/index.ts';
import { sheetFace, sourceLines } from '../matter/index.ts';
import { cardMargins, contentWidthMm, papers } from '../orders/index.ts';
import type {
  Browser,
  EditionFacts,
  Paper,
  Printed,
  SheetToPrint,
  Templates,
} from '../orders/model.ts';
import { settlePdf } from '../pdf/index.ts';
import { type ConcordanceModel, concordanceTables, sourcesAcross } from './model.ts';

export interface ConcordanceOrder extends Pick<SheetToPrint, 'sheet'> {
  readonly edition: EditionFacts | null;
  readonly paper: Paper;
  readonly templates: Templates;
  readonly browser: Browser;
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
    const settled = await settlePdf(new Uint8Array(await run.pdf({ tagged: true })), {
      title: saidTitle(templates, 'concordance-title', face.title),
      author: edition?.club ?? null,
      language,
    });
    return { pdf: settled.pdf, pages: settled.pages, problems, remarks: [] };
  });
}
