import { mkdirSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { launch, type Page, type Browser as Puppeteer } from 'puppeteer-core';
import type { Browser } from '../../src/press/index.ts';

const root = fileURLToPath(new URL('../../', import.meta.url));
const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

/** The page as the build makes it, in a folder of its own: what `npm run build` left may be older. */
export async function builtPage(): Promise<{ folder: string; remove: () => void }> {
  const { bundleDesk } = (await import('../../src/build/desk-bundle.mjs')) as {
    bundleDesk: (root: string, out: string) => Promise<unknown>;
  };
  const cache = join(root, 'node_modules', '.cache');
  mkdirSync(cache, { recursive: true });
  const folder = mkdtempSync(join(cache, 'gaugeleaf-page-'));
  await bundleDesk(root, folder);
  return { folder, remove: () => rmSync(folder, { recursive: true, force: true }) };
}

/** A browser as a person has one, with its own address reachable. */
export function personsBrowser(found: Browser): Promise<Puppeteer> {
  return launch({
    executablePath: found.path,
    headless: 'shell',
    args: ['--disable-gpu', '--font-render-hinting=none', ...found.args],
    env: { ...found.env },
    pipe: true,
  });
}

/** A page of the desk, with what its console said and what it asked of others. */
export interface Watched {
  readonly page: Page;
  readonly complaints: string[];
  readonly strays: string[];
}

/** Opens an address of a desk and waits until the sheet was checked. */
export async function openPage(browser: Puppeteer, address: string, hash = ''): Promise<Watched> {
  const page = await browser.newPage();
  await page.setViewport({ width: 1440, height: 900 });
  const complaints: string[] = [];
  const strays: string[] = [];
  const { origin } = new URL(address);
  page.on('console', (message) => {
    if (['error', 'warn'].includes(message.type())) complaints.push(message.text());
  });
  page.on('pageerror', (error) => complaints.push(String(error)));
  page.on('request', (request) => {
    const url = request.url();
    if (!url.startsWith(`${origin}/`) && !url.startsWith('data:')) strays.push(url);
  });
  await page.goto(address);
  // The token is exchanged, and the page itself comes after that.
  await page.waitForSelector('.contents');
  if (hash !== '') await page.evaluate(`location.hash = ${JSON.stringify(hash)}`);
  await page.waitForFunction('document.body?.dataset.checked');
  return { page, complaints, strays };
}

/** What axe-core finds on the page as it stands, one line each. */
export async function barriers(page: Page): Promise<string[]> {
  // The page's policy lets in no script of a stranger's; the driver puts this one in beside it.
  await page.evaluate(axe);
  const result = (await page.evaluate(
    "axe.run(document, { iframes: false, resultTypes: ['violations'] })",
  )) as { violations: { id: string; nodes: { html: string; failureSummary: string }[] }[] };
  return result.violations.flatMap(({ id, nodes }) =>
    nodes.map(
      ({ html, failureSummary }) => `${id}: ${html.slice(0, 160)} ${failureSummary.slice(0, 200)}`,
    ),
  );
}

/** The text of the sheet in the editor, whole. */
export function textOf(page: Page): Promise<string> {
  return page.evaluate(
    "document.querySelector('.cm-content').cmTile?.view?.state.doc.toString() ?? document.querySelector('.cm-content').cmView.view.state.doc.toString()",
  ) as Promise<string>;
}

/** Puts the cursor behind the first place of some words. */
export async function cursorBehind(page: Page, words: string): Promise<void> {
  const done = await page.evaluate(
    `(() => { const c = document.querySelector('.cm-content'); const view = (c.cmTile ?? c.cmView).view;
      const at = view.state.doc.toString().indexOf(${JSON.stringify(words)});
      if (at < 0) return false;
      view.dispatch({ selection: { anchor: at + ${words.length} }, scrollIntoView: true }); view.focus(); return true; })()`,
  );
  if (done !== true) throw new Error(`${words} is not in the text`);
}
