import { render } from '../html/index.ts';
import { hasError } from '../matter/index.ts';
import { drawOrder } from '../order-picture/index.ts';
import { type OrderGraph, orderGraph } from '../order-picture/model.ts';
import { barsMm, bookletMargins, contentWidthMm, papers } from '../orders/index.ts';
import {
  type BookletOrder,
  type PartStore,
  PressStopped,
  type PrintedBooklet,
} from '../orders/model.ts';
import { joinParts, type Part } from '../pdf/index.ts';
import type { BodyStore } from './kept-body.ts';
import { KeptParts } from './kept-parts.ts';
import { bookletModel } from './model.ts';
import { fillPageNumbers, hasPageNumbers, pageNumbers } from './page-numbers.ts';
import { PartPress, type PrintedPart } from './part-press.ts';
import { pageHeads, placingOf, sequence } from './sequence.ts';
import { type SplitBooklet, splitBooklet } from './split-parts.ts';

/**
 * Prints an edition as a booklet, part by part, and joins them. Fails with `PressStopped` where a
 * sheet has an error and no draft was asked for, where there is no sheet, or where the browser, a
 * template or a font does not work.
 */
export async function printBooklet(order: BookletOrder): Promise<PrintedBooklet> {
  if (order.sheets.length === 0) throw new PressStopped('The edition has no sheet to print.');
  const wrong = order.sheets.filter(({ findings }) => hasError(findings));
  if (wrong.length > 0 && !order.draft) {
    const names = wrong.map(({ sheet }) => sheet.file).join(', ');
    throw new PressStopped(
      `The booklet is printed only as a draft while there are errors in ${names}.`,
    );
  }
  order.onProgress?.(`Starting ${order.browser.label}`);
  const press = new PartPress(order.browser);
  try {
    return await inParts(order, press);
  } finally {
    await press.close();
  }
}

async function inParts(order: BookletOrder, press: PartPress): Promise<PrintedBooklet> {
  const { paper, draft, picture, templates, flate } = order;
  const pictures = new OrderPictures(order);
  const model = bookletModel(order.sheets, order.edition, {
    paper,
    draft,
    picture,
    orders: pictures.places,
    orderGraphs: order.orderGraphs === true,
    bodies: bodiesOf(order),
    texts: order.templates.texts,
    wording: order.templates.wording,
    last: order.last ?? null,
  });
  const split = splitBooklet(await render('booklet.hbs', model, templates));
  const margins = bookletMargins(papers[paper]);
  const widthMm = contentWidthMm(papers[paper], margins) + 2 * barsMm;
  const heightMm = papers[paper].heightMm - margins.topMm - margins.bottomMm;
  press.load({
    shell: split.shell,
    contentWidthMm: widthMm,
    contentHeightMm: heightMm,
    templates,
    flate,
  });
  const kept = new KeptParts(press, order.store, split.shell, order.browser.make);
  order.onProgress?.(`Laying out ${order.sheets.length} sheets`);
  const laidOut = await layOut(split, kept, pictures);
  const { printed, html, frames } = await numbered(laidOut, kept, order);
  const closed = press.close();
  const parts = printed.map(({ part }) => part);
  const joined = (tagged: boolean) =>
    joinParts(
      parts,
      {
        title: model.title,
        author: model.club,
        language: model.language,
        furniture: frames,
        leftShift: ((margins.outerMm - margins.innerMm) * 72) / 25.4,
        // From the text toward the fold: as far as bars reach, and no letter.
        foldStrip:
          model.changes === null
            ? null
            : (([margins.innerMm - barsMm, margins.innerMm - 2] as const).map(
                (mm) => (mm * 72) / 25.4,
              ) as [number, number]),
        tagged,
      },
      flate,
    );
  const pdf = joined(true);
  await closed;
  return {
    pdf,
    plain: () => joined(false),
    html: () => split.shell.replace(/<\/main>/, () => `${html.join('\n')}</main>`),
    pages: frames.pages.length,
    problems: problemsOf(printed),
    remarks: [],
    parts: kept.counts,
  };
}

/** What a sheet's body is made with beside the sheet: paper and templates. */
function bodiesOf({ store, paper, templates }: BookletOrder): BodyStore | null {
  if (store === null) return null;
  return { store, around: store.nameOf(JSON.stringify([paper, ...templates.texts])) };
}

interface LaidOut {
  /** Each part's HTML, with its page numbers still to be filled in. */
  readonly html: readonly string[];
  /** In their final form but for those that state page numbers. */
  readonly parts: readonly PrintedPart[];
}

/** Prints what states no page number, and finds out how long the rest is and which parts are taken. */
async function layOut(
  { parts }: SplitBooklet,
  kept: KeptParts,
  pictures: OrderPictures,
): Promise<LaidOut> {
  const filled = new Map<number, string>();
  const printing = new Map<number, Promise<PrintedPart>>();
  const begin = async (at: number) => {
    const html = await pictures.putIn(parts[at] ?? '');
    const printed = kept.fill(html).then((full) => {
      filled.set(at, full);
      return hasPageNumbers(full) ? kept.measure(full) : kept.print(full);
    });
    // A failure is told where all are waited for.
    printed.catch(() => undefined);
    printing.set(at, printed);
  };
  for (const [at, html] of parts.entries()) {
    if (!placingOf(html).fills) await begin(at);
    // The browser is heard between two parts: it prints while the next picture is drawn.
    await new Promise((resolve) => setTimeout(resolve, 0));
  }
  const taken = await sequence(parts, async (at) => {
    if (!printing.has(at)) await begin(at);
    return (await printing.get(at))?.part.pages.length ?? 0;
  });
  const printed = await Promise.all(taken.flatMap((at) => printing.get(at) ?? []));
  return { html: taken.map((at) => filled.get(at) ?? ''), parts: printed };
}

interface Numbered {
  readonly printed: readonly PrintedPart[];
  readonly html: readonly string[];
  readonly frames: Part;
}

/**
 * Fills the page numbers in and prints the parts that state them. A number that moved by being
 * filled in is put right once more.
 */
async function numbered(laidOut: LaidOut, kept: KeptParts, order: BookletOrder): Promise<Numbered> {
  let layout = laidOut.parts;
  for (let round = 0; round < 3; round++) {
    const numbers = pageNumbers(layout);
    const heads = layout.flatMap((part, at) => pageHeads(part, laidOut.html[at] ?? ''));
    order.onProgress?.(`Printing ${heads.length} pages`);
    const html = laidOut.html.map((part) => fillPageNumbers(part, numbers));
    const framing = kept.frames(heads);
    framing.catch(() => undefined);
    const printed = await Promise.all(
      html.map((part, at) => {
        const before = laidOut.parts[at];
        return hasPageNumbers(part) || before === undefined ? kept.print(part) : before;
      }),
    );
    const frames = await framing;
    const counts = printed.map(({ part }) => part.pages.length);
    const isAsLong = counts.every((count, at) => count === layout[at]?.part.pages.length);
    if (isAsLong && isSame(numbers, pageNumbers(printed))) return { printed, html, frames };
    layout = printed;
  }
  throw new PressStopped(
    'The page numbers of the contents would not settle: give the number fields a fixed width.',
  );
}

function isSame(first: ReadonlyMap<string, number>, second: ReadonlyMap<string, number>): boolean {
  if (first.size !== second.size) return false;
  for (const [name, page] of first) if (second.get(name) !== page) return false;
  return true;
}

function problemsOf(printed: readonly PrintedPart[]): string[] {
  const problems = new Set(printed.flatMap((each) => each.problems));
  const shrunk: number[] = [];
  let first = 1;
  for (const { part } of printed) {
    shrunk.push(...part.shrunk.map((page) => first + page));
    first += part.pages.length;
  }
  if (shrunk.length > 0) {
    problems.add(
      `Something is too wide on page ${shrunk.join(', ')}, and the browser shrank the page to fit it.`,
    );
  }
  return [...problems];
}

/**
 * The pictures of the orders of work. The template is filled with a place for each; they are drawn
 * one by one while the browser prints, and kept, for they take long.
 */
class OrderPictures {
  /** By the sheet's place; null where it has none. */
  readonly places: readonly (string | null)[];
  private readonly graphs: readonly (OrderGraph | null)[];
  private readonly store: PartStore | null;

  constructor(order: BookletOrder) {
    this.store = order.store;
    this.graphs = order.sheets.map(({ sheet }) =>
      sheet.kind !== null ? orderGraph(sheet, sheet.kind) : null,
    );
    this.places = this.graphs.map((graph, index) =>
      graph !== null && graph.boxes.length > 0 ? `<!--order of work ${index}-->` : null,
    );
  }

  async putIn(html: string): Promise<string> {
    const found = /<!--order of work (\d+)-->/.exec(html);
    if (found === null) return html;
    const index = Number(found[1]);
    const svg = await this.draw(index);
    const filled = html.replace(found[0], () => svg);
    return this.putIn(filled);
  }

  private async draw(index: number): Promise<string> {
    const { store } = this;
    const graph = this.graphs[index] ?? null;
    if (graph === null) return '';
    const options = { prefix: `order-${index + 1}`, alone: false };
    const name = store?.nameOf(`order of work ${JSON.stringify([graph, options])}`) ?? '';
    const kept = store?.read(name);
    if (kept) return Buffer.from(kept).toString('utf8');
    const svg = (await drawOrder(graph, options))?.svg ?? '';
    store?.keep(name, Buffer.from(svg, 'utf8'));
    return svg;
  }
}
