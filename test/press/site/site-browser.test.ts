import { readFileSync } from 'node:fs';
import { createServer, type Server } from 'node:http';
import { createRequire } from 'node:module';
import type { AddressInfo } from 'node:net';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { launch, type Page, type Browser as Puppeteer } from 'puppeteer-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { type SiteFile, siteFiles } from '../../../src/press/site/site.ts';
import { writePages } from '../../../src/project/page-folder.ts';
import { folderWith } from '../../project/folder.ts';
import { browserHere } from '../stand.ts';
import { demoOrder, elementsOf } from './demo-site.ts';

// The pages in a real browser, as a visitor has them: scripts are allowed there, so that axe-core can
// look, and the pages have none.
const found = await browserHere();
if (typeof found === 'string') console.warn(`Pages are not looked at: ${found}`);
const here = typeof found === 'string' ? null : found;
const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

const { order } = demoOrder();
const files: readonly SiteFile[] = here === null ? [] : await siteFiles(order);
const paths = files.flatMap(({ path }) => (path.endsWith('.html') ? [path] : []));
const byPath = new Map(files.map(({ path, content }) => [`/${encodeURI(path)}`, content]));
const types: Readonly<Record<string, string>> = {
  html: 'text/html; charset=utf-8',
  css: 'text/css',
  woff2: 'font/woff2',
};

let server: Server;
let browser: Puppeteer;
let base = '';
/** What was asked of the server and is not in the folder. */
const strays: string[] = [];

beforeAll(async () => {
  if (here === null) return;
  server = createServer((request, response) => {
    const content = byPath.get(request.url ?? '');
    if (content === undefined) {
      strays.push(request.url ?? '');
      response.statusCode = 404;
      response.end();
      return;
    }
    const type = types[(request.url ?? '').split('.').at(-1) ?? ''] ?? 'text/plain';
    response.setHeader('content-type', type);
    response.end(content);
  }).listen(0, '127.0.0.1');
  await new Promise((listening) => server.once('listening', listening));
  base = `http://127.0.0.1:${(server.address() as AddressInfo).port}/`;
  browser = await launch({
    executablePath: here.path,
    headless: 'shell',
    args: ['--disable-gpu', '--font-render-hinting=none', ...here.args],
    env: { ...here.env },
    pipe: true,
  });
});

afterAll(async () => {
  await browser?.close();
  server?.close();
});

interface Visit {
  readonly width: number;
  readonly scheme: 'light' | 'dark';
}

/** Opens a page, and tells what its console said and what it asked of anyone else. */
async function visit<T>(
  address: string,
  { width, scheme }: Visit,
  look: (page: Page) => Promise<T>,
): Promise<T> {
  const page = await browser.newPage();
  const said: string[] = [];
  page.on('console', (message) => said.push(message.text()));
  page.on('pageerror', (error) => said.push(String(error)));
  page.on('requestfailed', (request) => said.push(`failed: ${request.url().slice(0, 100)}`));
  page.on('request', (request) => {
    const own = /^(data:|file:)/.test(request.url()) || request.url().startsWith(base);
    if (!own) said.push(`asked for ${request.url().slice(0, 100)}`);
  });
  try {
    await page.setViewport({ width, height: 800 });
    await page.emulateMediaFeatures([{ name: 'prefers-color-scheme', value: scheme }]);
    await page.goto(address, { waitUntil: 'load' });
    await page.evaluate('document.fonts.ready.then(() => null)');
    const seen = await look(page);
    expect(said, address).toEqual([]);
    return seen;
  } finally {
    await page.close();
  }
}

const rules = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'];
// Of what passed only the names are wanted: to work out where each of thousands of elements stands is
// most of axe-core's time.
const wanted = { preload: false, selectors: false, resultTypes: ['violations'], runOnly: rules };
const audit = `axe.run(document, ${JSON.stringify(wanted)}).then(
  ({ violations, passes }) => ({
    passed: passes.map(({ id }) => id),
    wrong: violations.map(({ id, nodes }) => id + ': ' + nodes.slice(0, 3).map(({ html }) => html.slice(0, 160)).join(' | ')),
  }))`;

/** Rules that must have found something to look at, or the audit looked at nothing. */
const rulesThatPass = ['color-contrast', 'target-size', 'heading-order', 'region', 'html-has-lang'];

/** The elements that stick out of the window to the right. */
const sticking = `[...document.querySelectorAll('body *')]
  .filter((each) => !each.closest('.unseen, .skip, .scale, .equation, svg') && each.getBoundingClientRect().right > innerWidth + 0.5)
  .map((each) => each.tagName + ': ' + each.textContent.trim().slice(0, 60))`;

/** Things to touch that stand by themselves and are smaller than 44 px either way; links in running words may be. */
const small = `[...document.querySelectorAll('a, label, summary')].filter((each) => {
  if (each.matches('.skip') || each.closest('dd, .prose p, .prose li > p, .about, .quiet, .worked-figures, h2')) return false;
  if (each.matches('.prose a')) return false;
  const box = each.getBoundingClientRect();
  return box.width > 0 && (box.height < 43.5 || box.width < 43.5);
}).map((each) => each.outerHTML.slice(0, 100) + ' ' + each.getBoundingClientRect().height)`;

/** Opens every task, as one who works through the page has done in the end. */
const openAll = `document.querySelectorAll('details').forEach((each) => { each.open = true; })`;

/** The tasks whose steps can be seen. */
const tasksSeen = `new Promise((drawn) => requestAnimationFrame(() => requestAnimationFrame(drawn)))
  .then(() => [...document.querySelectorAll('.operation > section')]
    .filter((each) => each.checkVisibility()).map(({ id }) => id))`;

const patience = { timeout: 300_000 };

describe.skipIf(here === null)('the demo’s pages in a browser', patience, () => {
  // Each page is opened once: its width and scheme can be changed while it is open. Colors do not
  // depend on the width, nor does what can be touched on the scheme, so axe-core looks at a page once
  // in each scheme: the light one on a telephone, the dark one on a desk.
  test.each(paths)('%s is in order on a telephone and a desk, light and dark', async (path) => {
    const html = String(files.find((file) => file.path === path)?.content);
    const strict = elementsOf(html).map(({ name }) => name.toLowerCase());
    await visit(base + path, { width: 320, scheme: 'light' }, async (page) => {
      const elements = await page.evaluate(
        `[...document.querySelectorAll('*')].map(({ tagName }) => tagName.toLowerCase())`,
      );
      expect(elements, 'a browser reads what a strict reader does').toEqual(strict);
      for (const [width, open] of [
        [360, false],
        [320, true],
        [360, true],
      ] as const) {
        await page.setViewport({ width, height: 800 });
        if (open) await page.evaluate(openAll);
        expect(await page.evaluate('document.documentElement.scrollWidth')).toBe(width);
        expect(await page.evaluate(sticking), `${width} px`).toEqual([]);
        expect(await page.evaluate(small), `${width} px`).toEqual([]);
      }
      await page.evaluate(`${axe}\n;null`);
      for (const [width, scheme] of [
        [360, 'light'],
        [1200, 'dark'],
      ] as const) {
        await page.setViewport({ width, height: 800 });
        await page.emulateMediaFeatures([{ name: 'prefers-color-scheme', value: scheme }]);
        const seen = (await page.evaluate(audit)) as { wrong: string[]; passed: string[] };
        expect(seen.wrong, `${width} px, ${scheme}`).toEqual([]);
        for (const rule of rulesThatPass) expect(seen.passed, scheme).toContain(rule);
      }
    });
  });

  test('a figure at arm’s length: its capitals are 20 minutes of arc at 500 mm', async () => {
    // NUREG-0700: height = 6.283 D MA / 21600, so 2.909 mm; a px of a telephone is 25.4/160 mm.
    const least = (6.283 * 500 * 20) / 21600 / (25.4 / 160);
    const size = await visit(
      `${base}units/orlo-t71-wexcombe-six.html`,
      { width: 360, scheme: 'light' },
      (page) =>
        page.evaluate(
          `parseFloat(getComputedStyle(document.querySelector('.setting .written')).fontSize)`,
        ),
    );
    expect(Number(size) * 0.698).toBeGreaterThanOrEqual(least);
  });

  test('a box is ticked by touch and by key, with no script to help', async () => {
    await visit(
      `${base}units/orlo-t71-wexcombe-six.html`,
      { width: 360, scheme: 'light' },
      async (page) => {
        await page.evaluate(openAll);
        const ticked = () => page.evaluate(`document.querySelectorAll('.tick :checked').length`);
        expect(await ticked()).toBe(0);
        await page.click('.tick');
        expect(await ticked()).toBe(1);
        await page.focus('.steps li:nth-child(2) input');
        await page.keyboard.press('Space');
        expect(await ticked()).toBe(2);
      },
    );
  });

  test('tasks fold on a telephone without a script, and a link to one opens it', async () => {
    const address = `${base}units/orlo-t71-wexcombe-six.html`;
    await visit(address, { width: 360, scheme: 'light' }, async (page) => {
      expect(await page.evaluate(tasksSeen)).toEqual([]);
      await page.click('.tasks a[href="#work-float-level"]');
      expect(await page.evaluate(tasksSeen)).toEqual(['work-float-level']);
      await page.click('.operation summary');
      expect(await page.evaluate(tasksSeen)).toHaveLength(2);
      // A setting leads to the task that makes it.
      await page.click('.setting a[href="#work-pump-stroke"]');
      expect(await page.evaluate(tasksSeen)).toContain('work-pump-stroke');
    });
    await visit(`${address}#work-float-drop`, { width: 360, scheme: 'dark' }, async (page) => {
      expect(await page.evaluate(tasksSeen)).toEqual(['work-float-drop']);
    });
  });

  test('on a desk and on paper nothing is folded, and nothing says that it is', async () => {
    const address = `${base}units/orlo-t71-wexcombe-six.html`;
    const heads = `[...document.querySelectorAll('summary, .opened-only')]
      .filter((each) => each.checkVisibility()).map(({ className }) => className)`;
    await visit(address, { width: 1280, scheme: 'light' }, async (page) => {
      const tasks = (await page.evaluate(`document.querySelectorAll('details').length`)) as number;
      expect(await page.evaluate(tasksSeen)).toHaveLength(tasks);
      expect(await page.evaluate(heads)).toEqual(Array(tasks).fill('opened-only'));
      await page.setViewport({ width: 360, height: 800 });
      expect(await page.evaluate(tasksSeen)).toEqual([]);
      await page.emulateMediaType('print');
      expect(await page.evaluate(tasksSeen)).toHaveLength(tasks);
      expect(await page.evaluate(heads)).toEqual(Array(tasks).fill('opened-only'));
    });
  });

  test('the longest page of the demo is under 12,500 px long on a telephone', async () => {
    // It was 29,951 before tasks were folded.
    const lengths: [string, number][] = [];
    for (const path of paths) {
      if (!path.startsWith('units/')) continue;
      await visit(base + path, { width: 360, scheme: 'light' }, async (page) => {
        const length = await page.evaluate('document.documentElement.scrollHeight');
        lengths.push([path, Number(length)]);
      });
    }
    console.info(lengths.map(([path, length]) => `${path}: ${length} px`).join('\n'));
    for (const [path, length] of lengths) expect(length, path).toBeLessThan(12_500);
  });

  test('the way over the head of the page is the first thing a key comes to', async () => {
    await visit(`${base}index.html`, { width: 360, scheme: 'light' }, async (page) => {
      await page.keyboard.press('Tab');
      const first = await page.evaluate(`(() => {
        const { textContent, offsetTop, hash } = document.activeElement;
        return { textContent, hash, isSeen: offsetTop >= 0 };
      })()`);
      expect(first).toEqual({ textContent: 'Skip to the matter', hash: '#matter', isSeen: true });
    });
  });

  test('nothing was asked of the server that is not in the folder', () => {
    expect(strays).toEqual([]);
  });

  test('opened from a disk, the style holds and the fonts come', async () => {
    const folder = folderWith();
    writePages(folder, files);
    const address = pathToFileURL(join(folder, 'units/orlo-t71-wexcombe-six.html')).href;
    await visit(address, { width: 360, scheme: 'light' }, async (page) => {
      const family = await page.evaluate(
        `getComputedStyle(document.body).fontFamily + [...document.fonts].filter(({ status }) => status === 'loaded').length`,
      );
      expect(family).toMatch(/^"Gaugeleaf Sans".*[4-9]$/);
    });
  });
});
