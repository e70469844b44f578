import { faultsOf, withBrowser } from '../browser/index.ts';
import { render, saidTitle } from '../html/index.ts';
import { hasError } from '../matter/index.ts';
import { contentWidthMm } from '../orders/index.ts';
import {
  type Browser,
  type EditionFacts,
  type Flate,
  type Paper,
  PressStopped,
  type Printed,
  type SheetToPrint,
  type Templates,
} from '../orders/model.ts';
import { finishPdf, headingsAsked } from '../pdf/index.ts';
import { type PaperGaugesModel, paperGaugesModel } from './model.ts';

/** A sheet's gauges of paper to print. */
export interface PaperGaugesOrder extends SheetToPrint {
  readonly edition: EditionFacts | null;
  readonly paper: Paper;
  readonly templates: Templates;
  readonly browser: Browser;
  readonly flate: Flate;
  /** Prints DRAFT across every page; without it a sheet with an error is refused. */
  readonly draft: boolean;
}

/** What came off the press, with what is on it. */
export interface PrintedGauges extends Printed, Pick<PaperGaugesModel, 'refused'> {
  /** How many gauges there are. */
  readonly count: number;
}

/**
 * Prints the settings of a sheet that paper is fine enough for as gauges to cut out, at true scale.
 * Fails with `PressStopped` where there is none, and says why; where the sheet has an error and no
 * draft was asked for; and where the browser, a template or a font does not work.
 */
export async function printPaperGauges(order: PaperGaugesOrder): Promise<PrintedGauges> {
  const { sheet, edition, paper, draft, templates, browser } = order;
  if (hasError(order.findings) && !draft) {
    throw new PressStopped(
      `${sheet.file} has errors: it is printed only as a draft until they are mended.`,
    );
  }
  const model = paperGaugesModel(sheet, edition, { paper, draft });
  if (model.gauges.length === 0) throw new PressStopped(noneWords(sheet.file, model));
  const html = await render('paper-gauges.hbs', model, templates);
  return withBrowser(browser, async (run) => {
    await run.load(html);
    const problems = await faultsOf(run, contentWidthMm(model.paper, model.margins), templates);
    if ((await run.ask(scaled)) === true) {
      problems.push(
        'A style makes the gauges or the bars larger or smaller than they are: leave their width and height alone.',
      );
    }
    const { pdf, pages, shrunk } = await finishPdf(
      await run.pdf({ tagged: true }),
      {
        title: saidTitle(templates, 'paper-gauges-title', model.face.title),
        author: model.club,
        headings: await run.ask(headingsAsked),
        language: model.language,
        trueSize: true,
      },
      order.flate,
    );
    if (shrunk) {
      problems.push('Something is too wide, and the browser shrank the gauges with it.');
    }
    const { refused } = model;
    return { pdf, pages, problems, remarks: [], refused, count: model.gauges.length };
  });
}

/** Whether anything that is drawn at its true size is laid out at another. */
const scaled = `[...document.querySelectorAll('svg[data-true-size]')].some((svg) => {
  const { width, height } = svg.getBoundingClientRect();
  const off = (laid, name) => Math.abs(laid - Number(svg.getAttribute(name))) > 0.01;
  return off(width, 'width') || off(height, 'height');
})`;

function noneWords(file: string, { refused }: PaperGaugesModel): string {
  if (refused.length === 0) return `${file} states no length that a gauge could be cut for.`;
  const reasons = refused.map(({ why, settings }) => `${settings}: ${why}`).join('; ');
  return `Paper is fine enough for no setting of ${file}. ${reasons}.`;
}
