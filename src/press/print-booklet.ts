import { bookletModel } from './booklet-model.ts';
import { faultsOf } from './guard.ts';
import { orderGraph } from './order-graph.ts';
import { drawOrder } from './order-graph-svg.ts';
import { type BookletOrder, PressStopped, type Printed } from './orders.ts';
import { bookletMargins, contentWidthMm, papers } from './paper.ts';
import { render } from './render.ts';
import { type Run, withBrowser } from './run.ts';
import { readPlaces, settlePdf } from './settle-pdf.ts';
import { hasError } from './sheet-face.ts';

/**
 * Prints an edition as a booklet. Fails with `PressStopped` where a sheet has an error and no
 * draft was asked for, where there is no sheet, or where the browser, a template or a font does
 * not work.
 */
export async function printBooklet(order: BookletOrder): Promise<Printed> {
  if (order.sheets.length === 0) throw new PressStopped('The edition has no sheet to print.');
  const wrong = order.sheets.filter(({ findings }) => hasError(findings));
  if (wrong.length > 0 && !order.draft) {
    const names = wrong.map(({ sheet }) => sheet.file).join(', ');
    throw new PressStopped(
      `The booklet is printed only as a draft while there are errors in ${names}.`,
    );
  }
  const { paper, draft, picture } = order;
  const orders = order.orderGraphs ? await ordersOf(order) : [];
  const model = bookletModel(order.sheets, order.edition, { paper, draft, picture, orders });
  const html = await render('booklet.hbs', model, order.templates);
  order.onProgress?.(`Starting ${order.browser.label}`);
  return withBrowser(order.browser, async (run) => {
    await run.load(html);
    const size = papers[paper];
    const problems = await faultsOf(
      run,
      contentWidthMm(size, bookletMargins(size)),
      order.templates,
    );
    order.onProgress?.(`Laying out ${order.sheets.length} sheets`);
    const bytes = await numbered(run, order);
    const settled = await settlePdf(bytes, {
      title: model.title,
      author: model.club,
      language: model.language,
    });
    if (settled.shrunk.length > 0) {
      problems.push(
        `Something is too wide on page ${settled.shrunk.join(', ')}, and the browser shrank the page to fit it.`,
      );
    }
    return { pdf: settled.pdf, pages: settled.pages, problems, remarks: [] };
  });
}

/** The picture of each sheet's order of work, by the sheet's place; null where it has none. */
async function ordersOf({ sheets }: BookletOrder): Promise<readonly (string | null)[]> {
  const pictures: (string | null)[] = [];
  for (const [index, { sheet, kind }] of sheets.entries()) {
    const options = { prefix: `order-${index + 1}`, alone: false };
    const picture = kind === null ? null : await drawOrder(orderGraph(sheet, kind), options);
    pictures.push(picture?.svg ?? null);
  }
  return pictures;
}

/**
 * Chromium can't put a page number in the contents: it is printed once to learn on which page each
 * place falls, the numbers are filled in, and it is printed again. A number that moved by being
 * filled in is put right once more.
 */
async function numbered(run: Run, order: BookletOrder): Promise<Uint8Array> {
  let bytes = await run.pdf({ tagged: true });
  let before = await readPlaces(bytes);
  for (let round = 0; round < 3; round++) {
    order.onProgress?.(`Printing ${before.pages} pages`);
    const places = JSON.stringify(Object.fromEntries(before.places));
    const unknown = await run.ask(`((places) => {
      const unknown = [];
      for (const number of document.querySelectorAll('[data-page-of]')) {
        const page = places[number.dataset.pageOf];
        if (page === undefined) unknown.push(number.dataset.pageOf);
        else number.textContent = String(page);
      }
      return unknown;
    })(${places})`);
    if (Array.isArray(unknown) && unknown.length > 0) {
      throw new PressStopped(
        `The booklet's template asks for the page of "${unknown.join('", "')}", but no link leads there ` +
          'or no element has that id: only places that something links to have a page.',
      );
    }
    bytes = await run.pdf({ tagged: true });
    const after = await readPlaces(bytes);
    if (same(before.places, after.places)) return bytes;
    before = after;
  }
  throw new PressStopped(
    'The page numbers of the contents would not settle: give the number fields a fixed width.',
  );
}

function same(first: ReadonlyMap<string, number>, second: ReadonlyMap<string, number>): boolean {
  if (first.size !== second.size) return false;
  for (const [name, page] of first) if (second.get(name) !== page) return false;
  return true;
}
