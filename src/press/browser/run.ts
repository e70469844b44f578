import type { Page, Browser as Puppeteer } from 'puppeteer-core';
import { type Browser, PressStopped } from '../orders/model.ts';
import { isolatingSwitches, shutIn } from './isolation.ts';

/** One page in a running browser, shut in from network and files. */
export interface Run {
  /** Puts a whole document in the page and waits until pictures and fonts are there. */
  load(html: string): Promise<void>;
  /** The value of an expression in the page; the page's own scripts stay off. */
  ask(expression: string): Promise<unknown>;
  /** Lays the page out in a window of that width, as print, so that it can be measured. */
  measureAt(widthPx: number): Promise<void>;
  /** Prints, with size and margins as the document's style says. */
  pdf(options: { readonly tagged: boolean }): Promise<Uint8Array>;
  /** Gives the page up. */
  close(): Promise<void>;
}

/** How long one step of the browser may take before the press gives up: 200 pages take 10 s. */
const patienceMs = 120_000;

/** A browser that runs. */
export interface Running {
  /** A page of its own, beside those that are open. */
  open(): Promise<Run>;
  /** Whether it still runs. */
  isUp(): boolean;
  close(): Promise<void>;
}

/**
 * Starts a browser, in a lodging of its own where it has one. Fails with `PressStopped` where it does not
 * start.
 */
export async function startBrowser(browser: Browser): Promise<Running> {
  const { launch } = await import('puppeteer-core');
  const lodging = browser.lodge?.() ?? null;
  let running: Puppeteer;
  try {
    running = await launch({
      executablePath: browser.path,
      headless: 'shell',
      args: [...isolatingSwitches, ...browser.args],
      env: { ...browser.env, ...lodging?.env },
      ...(lodging && { userDataDir: lodging.profile }),
      // A browser at the other end of a pipe ends when this program does, however that ends.
      pipe: true,
      // Whoever listens to a signal is not ended by it while something is worked out.
      handleSIGINT: false,
      handleSIGTERM: false,
      handleSIGHUP: false,
      timeout: 60_000,
      protocolTimeout: patienceMs,
      waitForInitialPage: false,
    });
  } catch (error) {
    lodging?.leave();
    throw new PressStopped(notStarted(browser, error));
  }
  return {
    open: () => openPage(running),
    isUp: () => running.connected !== false,
    async close() {
      await closeSoon(running);
      lodging?.leave();
    },
  };
}

/** A browser that is asked to end, and ended where it does not within three seconds. */
async function closeSoon(running: Puppeteer): Promise<void> {
  let timer: NodeJS.Timeout | undefined;
  const late = new Promise<never>((_, reject) => {
    timer = setTimeout(() => reject(new Error('late')), 3000);
  });
  try {
    await Promise.race([running.close(), late]);
  } catch {
    running.process()?.kill('SIGKILL');
  } finally {
    clearTimeout(timer);
  }
}

/** Browsers that are kept from print to print; null for one that has not been started yet. */
const kept = new WeakMap<Browser, Running | null>();

/**
 * Keeps a browser running from its first print on, until what comes back is called. Each print has a page of
 * its own; one that has died is started anew.
 */
export function keepBrowser(browser: Browser): () => Promise<void> {
  kept.set(browser, null);
  return async () => {
    const running = kept.get(browser);
    kept.delete(browser);
    await running?.close();
  };
}

/**
 * Starts the browser, hands its one page to `work` and closes it again, whatever happens; of one that is
 * kept, the page alone. Fails with `PressStopped` where it does not start, dies or takes longer than two
 * minutes over a step.
 */
export async function withBrowser<T>(browser: Browser, work: (run: Run) => Promise<T>): Promise<T> {
  const isKept = kept.has(browser);
  const known = kept.get(browser) ?? null;
  const running = known?.isUp() === true ? known : await startBrowser(browser);
  if (isKept) kept.set(browser, running);
  let run: Run | null = null;
  try {
    run = await running.open();
    return await work(run);
  } catch (error) {
    throw stopped(browser, error);
  } finally {
    if (!isKept) await running.close();
    // A page of a browser that has died is gone.
    else await run?.close().catch(() => undefined);
  }
}

/** What went wrong in a browser, in the press's own words. */
export function stopped(browser: Browser, error: unknown): PressStopped {
  if (error instanceof PressStopped) return error;
  return new PressStopped(
    `The browser (${browser.label}) failed while printing: ${reasonInWords(error)}. ` +
      'Give the command again; if it fails again, choose another browser with --browser.',
  );
}

async function openPage(running: Puppeteer): Promise<Run> {
  const page: Page = await running.newPage();
  page.setDefaultTimeout(patienceMs);
  await shutIn(page);
  await page.emulateMediaType('print');
  return {
    async load(html) {
      await page.setContent(html, { waitUntil: 'load', timeout: patienceMs });
    },
    ask: (expression) => page.evaluate(expression),
    measureAt: (widthPx) =>
      page.setViewport({ width: Math.floor(widthPx), height: 1000, deviceScaleFactor: 1 }),
    pdf: ({ tagged }) =>
      page.pdf({
        preferCSSPageSize: true,
        printBackground: true,
        tagged,
        outline: tagged,
        timeout: patienceMs,
      }),
    close: () => page.close(),
  };
}

function notStarted(browser: Browser, error: unknown): string {
  const text = error instanceof Error ? error.message : String(error);
  if (/sandbox/i.test(text)) {
    return (
      `The browser (${browser.label}) can't set up its sandbox on this machine. ` +
      'Install Chromium or Google Chrome from the system, which is allowed to, and it will be used; ' +
      'or set GAUGELEAF_NO_SANDBOX=1 to print without the sandbox.'
    );
  }
  const library = /error while loading shared libraries: (\S+?):/.exec(text)?.[1];
  const reason = library ? `the system lacks ${library}` : startReason(text);
  return (
    `The browser (${browser.label}) does not start: ${reason}. ` +
    'Choose another with --browser or GAUGELEAF_BROWSER.'
  );
}

/** What a browser's driver says, in words that a restorer can do something with. */
function reasonInWords(error: unknown): string {
  const said = error instanceof Error ? `${error.name}: ${error.message}` : String(error);
  if (/timed? ?out/i.test(said)) return 'it was not done within two minutes';
  if (/closed|detached|disconnected|crash|not attached|hang up|EPIPE|ECONN/i.test(said)) {
    return 'it ended in the midst of its work; perhaps the memory is full, or somebody ended it';
  }
  if (/printing failed|printToPDF/i.test(said)) return 'it could not make pages of this';
  return 'it gives no reason that can be said in words';
}

/** Why it did not start. */
function startReason(said: string): string {
  if (/ENOENT/.test(said)) return 'there is no such file';
  if (/EACCES|EPERM/.test(said)) return 'this computer does not allow it (permissions)';
  if (/ENOEXEC|Exec format/i.test(said)) return 'it is no program of this system';
  if (/timed? ?out/i.test(said)) return 'it did not answer within a minute';
  return 'it ended before it answered, as what is no browser does';
}
