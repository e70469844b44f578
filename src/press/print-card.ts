import { type CardModel, cardModel, densities } from './card-model.ts';
import { faultsOf } from './guard.ts';
import { type CardOrder, PressStopped, type Printed } from './orders.ts';
import { cardMargins, contentWidthMm, papers } from './paper.ts';
import { render } from './render.ts';
import { type Run, withBrowser } from './run.ts';
import { readPlaces, settlePdf } from './settle-pdf.ts';
import { hasError } from './sheet-face.ts';

/**
 * Prints one sheet as a bench card on one leaf: at the roomiest density that needs one side, or
 * else the roomiest that needs two. Where no density has room for the steps they are left to the
 * booklet, and a remark says so. A card that is longer even at the closest is returned with a
 * problem that says by how much. Fails with `PressStopped` where the sheet has an error and no
 * draft was asked for, or the browser, a template or a font does not work.
 */
export async function printCard(order: CardOrder): Promise<Printed> {
  if (hasError(order.findings) && !order.draft) {
    throw new PressStopped(
      `${order.sheet.file} has errors: it is printed only as a draft until they are mended.`,
    );
  }
  const { paper, draft, picture } = order;
  const model = cardModel(order.sheet, order.kind, order.findings, order.edition, {
    paper,
    draft,
    picture,
  });
  const html = await render('card.hbs', model, order.templates);
  order.onProgress?.(`Starting ${order.browser.label}`);
  return withBrowser(order.browser, async (run) => {
    await run.load(html);
    order.onProgress?.(`Printing the card of ${model.face.title}`);
    const fitted = await fitOnLeaf(run);
    // What is printed is what is measured: the page still has the density that was settled on.
    await run.ask(`document.body.dataset.density = '${fitted.density}'`);
    const size = papers[paper];
    const problems = await faultsOf(run, contentWidthMm(size, cardMargins(size)), order.templates);
    if (fitted.pages > 2) problems.push(await tooLong(run, model, fitted.pages));
    const settled = await settlePdf(fitted.pdf, {
      title: `${model.face.title}: bench card`,
      author: model.club,
      language: model.language,
    });
    if (settled.shrunk.length > 0) {
      problems.push(
        'Something on the card is too wide, and the browser shrank the whole to fit it.',
      );
    }
    const remarks = fitted.density === 'short' ? [leftOut(model)] : [];
    return { pdf: settled.pdf, pages: settled.pages, problems, remarks };
  });
}

interface Fitted {
  readonly pdf: Uint8Array;
  readonly pages: number;
  readonly density: string;
}

/** The first density of `densities` with the fewest sides, the two roomiest alone tried for one. */
async function fitOnLeaf(run: Run): Promise<Fitted> {
  const roomy = await printAt(run, densities[0]);
  if (roomy.pages === 1) return roomy;
  const regular = await printAt(run, densities[1]);
  if (regular.pages === 1) return regular;
  let last = roomy.pages === 2 ? roomy : regular;
  for (const density of densities.slice(2)) {
    if (last.pages <= 2) break;
    last = await printAt(run, density);
  }
  return last.pages === 2 ? turnedBetween(run, last) : last;
}

/** The same with settings on the front and the work on the back, where both have room so. */
async function turnedBetween(run: Run, card: Fitted): Promise<Fitted> {
  await run.ask("document.body.dataset.turn = 'between'");
  const turned = await printAt(run, card.density);
  return turned.pages === 2 ? turned : card;
}

async function printAt(run: Run, density: string): Promise<Fitted> {
  await run.ask(`document.body.dataset.density = '${density}'`);
  const pdf = await run.pdf({ tagged: true });
  return { pdf, density, pages: (await readPlaces(pdf)).pages };
}

function leftOut(model: CardModel): string {
  return (
    `${model.face.title}: the steps don't fit on a leaf of ${model.paper.label} beside the settings; ` +
    'the card lists the operations in order and leaves the steps to the booklet. A larger paper has room.'
  );
}

async function tooLong(run: Run, model: CardModel, pages: number): Promise<string> {
  const { paper, margins } = model;
  const sideMm = paper.heightMm - margins.topMm - margins.bottomMm;
  const measured = await run.ask(`(() => {
    const style = getComputedStyle(document.querySelector('main'));
    return { height: document.querySelector('main').getBoundingClientRect().height,
      line: parseFloat(style.lineHeight) };
  })()`);
  const { height, line } = measured as { height: number; line: number };
  const overPx = height - (2 * sideMm * 96) / 25.4;
  const lines = Math.max(1, Math.ceil(overPx / line));
  return (
    `The card needs ${pages} sides of ${paper.label} at its closest setting and a leaf has 2: ` +
    `about ${lines} ${lines === 1 ? 'line' : 'lines'} too many. Shorten steps, or take a larger paper.`
  );
}
