import {
  faultsOf,
  loadFonts,
  type Run,
  type Running,
  startBrowser,
  stopped,
} from '../browser/index.ts';
import type { Browser, Flate, Templates } from '../orders/model.ts';
import { calledAs, elsewhere, headingsAsked, type Part, readPart } from '../pdf/index.ts';
import {
  givenCount,
  hasRooms,
  type MeasuredRooms,
  roomsAsked,
  roomsPlan,
  withRooms,
  withTaken,
} from './room-left.ts';
import type { PageHead } from './sequence.ts';

/** Pages that print side by side: on one core they take turns, on more they gain nothing beyond. */
const tabs = 2;

/** What a part's pages are like, beside the part itself. */
export interface PrintedPart {
  readonly part: Part;
  /** The CSS name of its pages, for its running heads. */
  readonly frame: string;
  /** What keeps it from being used. */
  readonly problems: readonly string[];
}

/** What the press needs for all parts of a booklet. */
export interface PartPressOrder {
  /** The document that parts are put in. */
  readonly shell: string;
  readonly contentWidthMm: number;
  /** What a page has room for, between the margins. */
  readonly contentHeightMm: number;
  readonly templates: Templates;
  readonly flate: Flate;
}

/**
 * Prints parts one after the other in pages that are opened once: the style and its fonts are read
 * once, and not for every part. The browser is started at once, so that it is there when wanted.
 */
export class PartPress {
  private readonly starting: Promise<Running>;
  private readonly browser: Browser;
  private readonly free: Tab[] = [];
  private readonly waiting: ((tab: Tab) => void)[] = [];
  private order: PartPressOrder | null = null;
  private isOpen = false;

  constructor(browser: Browser) {
    this.browser = browser;
    this.starting = startBrowser(browser);
    // Told when a part is printed; nobody may ever want one.
    this.starting.catch(() => undefined);
  }

  /** Says what is printed. To be called once, before anything is; pages are opened when wanted. */
  load(order: PartPressOrder): void {
    this.order = order;
  }

  private openTabs(shell: string): void {
    for (let tab = 0; tab < tabs; tab++) {
      const opened = this.open(shell);
      opened.catch(() => undefined);
      this.free.push({ run: opened });
    }
    this.isOpen = true;
  }

  /** Prints a part with all that is in it. */
  print(html: string): Promise<PrintedPart> {
    return this.withPage(async (run, order) => {
      const frame = await put(run, html);
      const problems = await faultsOf(run, order.contentWidthMm, order.templates);
      const headings = await run.ask(headingsAsked);
      const part = await readPart(await run.pdf({ tagged: true }), order.flate);
      const outline = calledAs(part.outline, headings);
      return { part: { ...part, outline }, problems, frame };
    });
  }

  /** A part with as much on its first page as has room there, and the rest before its tasks; see `room-left.ts`. */
  fill(html: string): Promise<string> {
    return this.withPage(async (run, order) => {
      await run.measureAt((order.contentWidthMm / 25.4) * 96);
      const page = ((order.contentHeightMm - slackMm) / 25.4) * 96;
      const rooms = async (count: number) => {
        if (!hasRooms(html)) return withTaken(html, count);
        const planned = async () => {
          const measured = (await run.ask(roomsAsked)) as MeasuredRooms;
          const plan = roomsPlan(html, count, page, measured);
          const end = plan.end + measured.tail;
          const pages = plan.pages + Math.ceil(end / page);
          return { measured, plan, pages, over: (end % page) / page };
        };
        const loose = await planned();
        if (loose.over < littleOver) {
          await run.ask(`document.querySelector('main').firstElementChild.classList.add('tight')`);
          const tight = await planned();
          if (tight.pages < loose.pages) {
            const filled = withRooms(html, count, tight.measured, tight.plan);
            return filled.replace(' class="', ' class="tight ');
          }
        }
        return withRooms(html, count, loose.measured, loose.plan);
      };
      for (let count = givenCount(html); count > 0; count--) {
        const filled = withTaken(html, count);
        await put(run, filled);
        const bottom = await run.ask(
          `document.querySelector('main').firstElementChild.firstElementChild.getBoundingClientRect().bottom - document.querySelector('main').getBoundingClientRect().top`,
        );
        if (Number(bottom) <= page) return rooms(count);
      }
      await put(run, withTaken(html, 0));
      return rooms(0);
    });
  }

  /** Only finds how many pages a part has and where its places are, which is quicker. */
  measure(html: string): Promise<PrintedPart> {
    return this.withPage(async (run, order) => {
      const frame = await put(run, html);
      const part = await readPart(await run.pdf({ tagged: false }), order.flate);
      return { part, problems: [], frame };
    });
  }

  /** Running heads and folios alone, a page to each of `heads`. */
  printFrames(heads: readonly PageHead[]): Promise<Part> {
    return this.withPage(async (run, order) => {
      const named = heads.map((head) => ({ ...head, name: nameOf(head) }));
      const pages = named.map(({ name }) => `<div style="page: ${name}"></div>`);
      const withTasks = new Map(
        named.flatMap((head) => (head.tasks === '' ? [] : [[head.name, head] as const])),
      );
      await run.ask(`(() => {
        ${switchFrames('all')}
        for (const { name, frame, tasks } of ${JSON.stringify([...withTasks.values()])}) {
          for (const style of document.querySelectorAll('style.task-frames')) {
            if (style.dataset.page !== frame) continue;
            const own = document.createElement('style');
            own.className = 'of-tasks';
            own.textContent = style.textContent
              .replaceAll('@page ' + frame + ':', '@page ' + name + ':')
              .replaceAll('var(--tasks)', JSON.stringify(tasks));
            document.head.append(own);
          }
        }
        for (const child of document.body.children) {
          if (child.tagName !== 'MAIN') child.style.display = 'none';
        }
        const main = document.querySelector('main');
        main.innerHTML = ${JSON.stringify(pages.join(''))};
        for (const page of main.children) {
          page.style.height = '1px';
          page.style.breakBefore = 'page';
        }
      })()`);
      const part = await readPart(await run.pdf({ tagged: false }), order.flate);
      await run.ask(`(() => {
        ${switchFrames('not all')}
        for (const style of document.querySelectorAll('style.of-tasks')) style.remove();
        for (const child of document.body.children) child.style.display = '';
      })()`);
      return part;
    });
  }

  /** Ends the browser, if it ever came up. */
  async close(): Promise<void> {
    const running = await this.starting.catch(() => null);
    await running?.close();
  }

  private async open(shell: string): Promise<Run> {
    const run = await (await this.starting).open();
    await run.load(shell);
    await run.ask(`(() => { ${switchFrames('not all')} })()`);
    await loadFonts(run);
    return run;
  }

  private async withPage<T>(work: (run: Run, order: PartPressOrder) => Promise<T>): Promise<T> {
    const { order } = this;
    if (order === null) throw new Error('nothing was loaded');
    if (!this.isOpen) this.openTabs(order.shell);
    const tab = await new Promise<Tab>((resolve) => {
      const idle = this.free.shift();
      if (idle === undefined) this.waiting.push(resolve);
      else resolve(idle);
    });
    try {
      return await work(await tab.run, order);
    } catch (error) {
      throw stopped(this.browser, error);
    } finally {
      const next = this.waiting.shift();
      if (next === undefined) this.free.push(tab);
      else next(tab);
    }
  }
}

/** How much of a page is left free where it is filled: what is printed may round otherwise than what is shown. */
const slackMm = 1;

/** So much of a page over the last full one is taken in by setting a part tighter. */
const littleOver = 0.15;

/** A page of the browser, open or about to be. */
interface Tab {
  readonly run: Promise<Run>;
}

/** The CSS name of a page with such margins. */
function nameOf({ frame, tasks }: PageHead): string {
  return tasks === '' ? frame : `${frame}-at-${tasks.replace(/\W+/g, '-')}`;
}

function switchFrames(media: 'all' | 'not all'): string {
  return `for (const style of document.querySelectorAll('style.frames')) style.media = '${media}';`;
}

/**
 * Puts a part in the page. Chromium drops links to ids that are not there and forgets ids that
 * nothing links to: links that leave the part are led to a host that is none, to be led back when
 * the parts are joined, and every id gets a link that is not drawn. Gives the CSS name of its pages.
 */
async function put(run: Run, html: string): Promise<string> {
  const frame = await run.ask(`(() => {
    const main = document.querySelector('main');
    main.innerHTML = ${JSON.stringify(html)};
    const ids = new Set();
    for (const element of main.querySelectorAll('[id]')) {
      if (!(element instanceof SVGElement)) ids.add(element.id);
    }
    for (const link of main.querySelectorAll('a[href^="#"]')) {
      const href = link.getAttribute('href');
      if (!ids.has(href.slice(1))) link.setAttribute('href', ${JSON.stringify(elsewhere)} + href);
    }
    const places = document.createElement('div');
    places.style.display = 'none';
    for (const id of ids) {
      const link = document.createElement('a');
      link.setAttribute('href', '#' + id);
      places.append(link);
    }
    main.append(places);
    return getComputedStyle(main.firstElementChild).page;
  })()`);
  return typeof frame === 'string' ? frame : 'auto';
}
