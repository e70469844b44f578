import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Page, Browser as Puppeteer } from 'puppeteer-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { atDesk } from '../desk-server/at-desk.ts';
import { browserHere } from '../press/stand.ts';
import { cleanSheet, folderWith } from '../project/folder.ts';
import {
  barriers,
  builtPage,
  cursorBehind,
  openPage,
  personsBrowser,
  textOf,
} from './in-browser.ts';

// The page in a real browser, as a person has it.
const found = await browserHere();
if (typeof found === 'string') console.warn(`The desk's page is not looked at: ${found}`);
const here = typeof found === 'string' ? null : found;

const id = 'orlo-f27-wexcombe-four';
const files = {
  [`sheets/${id}.md`]: cleanSheet(id),
  'sheets/orlo-f28-wexcombe-four.md': cleanSheet('orlo-f28-wexcombe-four'),
  'edition.yaml': 'gaugeleaf-edition: 1\ntitle: A club\ncard-paper: letter\n',
};

let browser: Puppeteer;
let built: { folder: string; remove: () => void };

beforeAll(async () => {
  if (here === null) return;
  [browser, built] = await Promise.all([personsBrowser(here), builtPage()]);
});

afterAll(async () => {
  await browser?.close();
  built?.remove();
});

/** Presses a button by its words, wherever it stands. */
async function press(page: Page, words: string): Promise<void> {
  const done = await page.evaluate(
    `(() => { const b = [...document.querySelectorAll('button')].reverse().find((b) => b.offsetParent && b.textContent.includes(${JSON.stringify(words)})); b?.click(); return b !== undefined; })()`,
  );
  if (done !== true) {
    const there = await page.$$eval('dialog button', (all) => all.map((each) => each.textContent));
    throw new Error(`there is no button ${words}, but ${there.join(' | ')}`);
  }
}

/** Asks what can be done at the cursor. */
async function cures(page: Page): Promise<void> {
  await page.keyboard.down('Alt');
  await page.keyboard.press('Enter');
  await page.keyboard.up('Alt');
  await page.waitForSelector('dialog.cures[open]');
}

const has = (page: Page, selector: string, words: string) =>
  page.waitForFunction(
    `[...document.querySelectorAll(${JSON.stringify(selector)})].some((e) => e.textContent.includes(${JSON.stringify(words)}))`,
    { timeout: 10_000 },
  );

const fileText = (folder: string) => readFileSync(join(folder, 'sheets', `${id}.md`), 'utf8');

describe.skipIf(here === null)('the page', () => {
  test('a sheet is written, completed, mended, entered in the form, saved and printed', async () => {
    const folder = folderWith(files);
    const orders: (readonly string[])[] = [];
    const desk = await atDesk(folder, {
      page: built.folder,
      run: async (argv, _, onTalk) => {
        orders.push(argv);
        onTalk('Printing the card');
        return { status: 0, out: `print/${id}-card.pdf\n`, talk: '1 page\n' };
      },
    });
    const { page, complaints, strays } = await openPage(browser, desk.running.address(), id);
    await has(page, '.tally', '0 errors');

    // Type: what is wrong is found under the words and in the margin.
    await cursorBehind(page, 'value: 13/64 in');
    await page.keyboard.type('ch, also');
    await has(page, '.tally', '1 error');
    expect(await page.$$eval('.found-error', (all) => all.length)).toBeGreaterThan(0);
    expect(await page.$eval('.margin-signs .sign-error', (sign) => sign.textContent)).toBe('×');
    for (let letter = 0; letter < 8; letter += 1) await page.keyboard.press('Backspace');
    await has(page, '.tally', '0 errors');

    // Complete: a source from the list.
    await cursorBehind(page, 'gasket: removed');
    await page.keyboard.press('Enter');
    await page.keyboard.type('no');
    await page.keyboard.press('Backspace');
    await page.keyboard.press('Backspace');
    await page.keyboard.down('Control');
    await page.keyboard.press('Space');
    await page.keyboard.up('Control');
    await page.waitForSelector('.cm-tooltip-autocomplete li', { timeout: 5000 });
    await page.keyboard.press('Escape');
    await page.keyboard.down('Control');
    for (const _ of 'xxxx') await page.keyboard.press('z');
    await page.keyboard.up('Control');
    await page.waitForFunction(
      "document.querySelector('.tally').textContent.startsWith('0 errors')",
    );

    // Mend: what can be done at a finding, by keys alone; then a doubt is kept with a reason.
    await cursorBehind(page, '# as the manual prints it');
    await page.keyboard.press('Enter');
    await page.keyboard.type('also: [0.230 in]');
    await has(page, '.tally', '1 error');
    await page.keyboard.press('F8');
    await cures(page);
    expect(await barriers(page)).toEqual([]);
    expect(await textOf(page)).toContain('prints it\n    also: [0.230 in]\n');
    await press(page, '0.203 in');
    await has(page, '.tally', '0 errors');
    expect(await textOf(page)).toContain('also: [0.203 in]');
    await cursorBehind(page, 'kind: manual, year: 1948 }');
    await page.keyboard.press('Enter');
    await page.keyboard.type('zz: { title: Never cited }');
    await has(page, '.tally', '1 warning');
    await page.keyboard.press('Home');
    await page.keyboard.press('ArrowRight');
    await page.keyboard.press('F8');
    await cures(page);
    await press(page, 'with a reason');
    await page.keyboard.type('it is kept for the next edition');
    await has(page, '.tally', '0 warnings');
    expect(await textOf(page)).toContain('finding: source-unused');
    await page.keyboard.down('Control');
    for (let back = 0; back < 40 && (await textOf(page)) !== cleanSheet(id); back += 1) {
      await page.keyboard.press('z');
    }
    await page.keyboard.up('Control');
    expect(await textOf(page)).toBe(cleanSheet(id));

    // Move a step, and back.
    const before = await textOf(page);
    await cursorBehind(page, 'Pass the gauge');
    await page.keyboard.down('Alt');
    await page.keyboard.press('ArrowDown');
    expect(await textOf(page)).toContain('2. Refit gasket');
    await page.keyboard.press('ArrowUp');
    await page.keyboard.up('Alt');
    expect(await textOf(page)).toBe(before);

    // The form is another view of the same text.
    await press(page, 'Form');
    await page.waitForSelector('.form-view input[data-path=\'["title"]\']');
    const title = await page.$('.form-view input[data-path=\'["title"]\']');
    await title?.click({ count: 3 });
    await page.keyboard.type('Orlo F27: a new title');
    await page.waitForFunction(
      "document.querySelector('.sheet-title').textContent === 'Orlo F27: a new title'",
    );
    expect(await textOf(page)).toBe(
      before.replace('Orlo F27 single-barrel, Wexcombe Four', () => "'Orlo F27: a new title'"),
    );
    expect(await barriers(page)).toEqual([]);
    await press(page, 'Text');

    // Save, by keys.
    expect(fileText(folder)).toBe(cleanSheet(id));
    await page.keyboard.down('Control');
    await page.keyboard.press('s');
    await page.keyboard.up('Control');
    await has(page, '.sheet-head .standing', 'saved');
    await page.waitForFunction(
      "document.querySelector('.sheet-head .standing').textContent === 'saved'",
    );
    expect(fileText(folder)).toContain("title: 'Orlo F27: a new title'");

    // Print.
    await press(page, 'Print the card');
    expect(await barriers(page)).toEqual([]);
    await press(page, 'Print');
    await has(page, 'dialog.order', '1 page');
    expect(orders).toEqual([['card', join(folder, 'sheets', `${id}.md`)]]);
    expect(await page.$eval('dialog.order a', (link) => link.textContent)).toBe(`${id}-card.pdf`);
    await press(page, 'Close');

    expect(complaints).toEqual([]);
    expect(strays).toEqual([]);
    await page.close();
  });

  test('two windows show one text, and a file that changed is not written over', async () => {
    const folder = folderWith(files);
    const cache = folderWith();
    const desk = await atDesk(folder, { page: built.folder, cache });
    const first = await openPage(browser, desk.running.address(), id);
    const second = await openPage(browser, desk.running.address(), id);
    await first.page.bringToFront();
    await cursorBehind(first.page, 'Refit gasket');
    await first.page.keyboard.type(' now');
    await second.page.waitForFunction(
      "(document.querySelector('.cm-content').cmTile ?? document.querySelector('.cm-content').cmView).view.state.doc.toString().includes('Refit gasket now')",
    );
    // The file changes under what is typed: it is shown, and not written over.
    const theirs = cleanSheet(id).replace('revision: 1', 'revision: 7');
    writeFileSync(join(folder, 'sheets', `${id}.md`), theirs);
    await press(first.page, 'Save');
    await first.page.waitForSelector(
      'dialog.difference[open] .cm-changedLine, dialog.difference[open] .cm-changedText',
    );
    expect(await barriers(first.page)).toEqual([]);
    expect(fileText(folder)).toBe(theirs);
    await press(first.page, 'Keep my text');
    await press(first.page, 'Save');
    await first.page.waitForFunction(
      "document.querySelector('.sheet-head .standing').textContent === 'saved'",
    );
    expect(fileText(folder)).toContain('Refit gasket now');
    for (const { page, complaints, strays } of [first, second]) {
      expect(complaints).toEqual([]);
      expect(strays).toEqual([]);
      await page.close();
    }
  });

  test('a lost server is found again, and what was typed meanwhile goes to it', async () => {
    const folder = folderWith(files);
    const cache = folderWith();
    const desk = await atDesk(folder, { page: built.folder, cache });
    const { page } = await openPage(browser, desk.running.address(), id);
    await cursorBehind(page, 'Refit gasket');
    await page.keyboard.type(' one');
    await expect
      .poll(async () => (await desk.get(`sheet/${id}`)).text)
      .toContain('Refit gasket one');
    // As one that was killed leaves it: the journal and the seat are there.
    const [seat = ''] = readdirSync(join(cache, 'desk'));
    const kept = readFileSync(join(cache, 'desk', seat));
    await desk.running.close();
    writeFileSync(join(cache, 'desk', seat), kept, { mode: 0o600 });
    await has(page, '.word', 'The desk does not answer');
    await page.keyboard.type(' two');
    const again = await atDesk(folder, { page: built.folder, cache });
    expect(again.port).toBe(desk.port);
    await has(page, '.word', 'The desk is back');
    await page.keyboard.type(' three');
    await expect
      .poll(async () => (await again.get(`sheet/${id}`)).text, { timeout: 8000 })
      .toContain('Refit gasket one two three');
    await page.close();
  });

  test('every state of it is without barriers, in light and dark, wide and narrow', async () => {
    const desk = await atDesk(folderWith(files), { page: built.folder });
    const { page, complaints } = await openPage(browser, desk.running.address(), id);
    for (const scheme of ['light', 'dark']) {
      await page.emulateMediaFeatures([{ name: 'prefers-color-scheme', value: scheme }]);
      for (const leaf of ['card', 'chapter', 'work', 'sources', 'open']) {
        await page.evaluate(`document.querySelector('#tab-${leaf}').click()`);
        await page.waitForFunction(
          `document.querySelector('#leaf-${leaf}').textContent.length > 3 || document.querySelector('#leaf-${leaf} iframe:not(.waiting)')`,
        );
        expect([scheme, leaf, await barriers(page)]).toEqual([scheme, leaf, []]);
      }
    }
    await page.setViewport({ width: 360, height: 740 });
    for (const side of ['contents', 'sheet', 'leaf']) {
      await page.evaluate(`document.querySelector('[data-for="${side}"]').click()`);
      expect([side, await barriers(page)]).toEqual([side, []]);
      expect(await page.evaluate('document.documentElement.scrollWidth')).toBeLessThanOrEqual(360);
    }
    expect(complaints).toEqual([]);
    await page.close();
  });
});
