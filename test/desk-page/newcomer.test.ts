import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Page, Browser as Puppeteer } from 'puppeteer-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { RunCommand } from '../../src/desk-server/index.ts';
import { gaugeleaf } from '../cli/console.ts';
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

// What somebody found who sat down at the desk for the first time.
const found = await browserHere();
if (typeof found === 'string') console.warn(`The desk's page is not looked at: ${found}`);
const here = typeof found === 'string' ? null : found;

const id = 'orlo-f27-wexcombe-four';
const files = {
  [`sheets/${id}.md`]: cleanSheet(id),
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

const has = (page: Page, selector: string, words: string) =>
  page.waitForFunction(
    `[...document.querySelectorAll(${JSON.stringify(selector)})].some((e) => e.textContent.includes(${JSON.stringify(words)}))`,
    { timeout: 12_000 },
  );

const wordsOf = (page: Page, selector: string) =>
  page.$eval(selector, (element) => element.textContent);

async function keys(
  page: Page,
  held: 'Alt' | 'Control' | 'Shift',
  key: 'Enter' | 'Space' | 'k' | 's',
): Promise<void> {
  await page.keyboard.down(held);
  await page.keyboard.press(key);
  await page.keyboard.up(held);
}

/** Presses a button by its words, the last there is. */
async function press(page: Page, words: string): Promise<void> {
  const done = await page.evaluate(
    `(() => { const b = [...document.querySelectorAll('button')].reverse().find((b) => b.offsetParent && b.textContent.includes(${JSON.stringify(words)})); b?.click(); return b !== undefined; })()`,
  );
  if (done !== true) throw new Error(`there is no button ${words}`);
}

const realCommands: RunCommand = async (argv, cwd) => {
  const { status, out, err } = await gaugeleaf([...argv], { cwd });
  return { status, out, talk: err };
};

describe.skipIf(here === null)('at the desk for the first time', () => {
  test('what is open counts the text as it stands, and a whole line is asked about', async () => {
    const desk = await atDesk(folderWith(files), { page: built.folder });
    const { page, complaints } = await openPage(browser, desk.running.address(), id);
    await page.evaluate("document.querySelector('#tab-open').click()");
    await has(page, '.edition-view', 'Nothing is open');
    await cursorBehind(page, 'value: 13/64 in');
    await page.keyboard.type('ch, also');
    await has(page, '.edition-view [aria-label="In the edition"]', ': 1 error');
    expect(await wordsOf(page, '.edition-view')).not.toMatch(/0 warnings|1 errors/);

    // Behind the last sign of a line that is marked, what can be done there is offered.
    await page.keyboard.press('End');
    await keys(page, 'Alt', 'Enter');
    await page.waitForSelector('dialog.cures[open] .finding-error');
    expect(await wordsOf(page, 'dialog.cures')).not.toContain('Nothing is found');
    await page.keyboard.press('Escape');
    for (let letter = 0; letter < 8; letter += 1) {
      await cursorBehind(page, 'value: 13/64 inch, also'.slice(0, 23 - letter));
      await page.keyboard.press('Backspace');
    }
    await has(page, '.edition-view [aria-label="In the edition"]', 'Nothing is open');

    // A meaning that was shown is not followed by word that there is none.
    await cursorBehind(page, '  float-le');
    await keys(page, 'Alt', 'Enter');
    await page.waitForSelector('dialog.cures[open] .meaning');
    expect(await wordsOf(page, 'dialog.cures')).not.toContain('Nothing is found');
    await page.keyboard.press('Escape');

    // From part to part one comes to the text; and from what was sought to where it stands.
    await page.evaluate("document.querySelector('.contents .here').focus()");
    await page.keyboard.press('F6');
    expect(await page.evaluate("document.activeElement.classList.contains('cm-content')")).toBe(
      true,
    );
    await keys(page, 'Control', 'k');
    await page.keyboard.type('13/64');
    await has(page, '.found-lines', 'Float level');
    await page.keyboard.press('ArrowDown');
    await page.keyboard.press('Enter');
    await page.waitForFunction("document.activeElement.classList.contains('cm-content')");
    expect(await wordsOf(page, '.cm-activeLine')).toContain('13/64');
    expect(complaints).toEqual([]);
    await page.close();
  });

  test('an empty folder is begun in the page, and a kind in it is written there', async () => {
    const folder = folderWith();
    const desk = await atDesk(folder, { page: built.folder, run: realCommands });
    const page = await browser.newPage();
    await page.setViewport({ width: 1440, height: 900 });
    await page.goto(desk.running.address());
    await page.waitForSelector('dialog[open] #begin-title');
    expect(await barriers(page)).toEqual([]);
    await page.type('#begin-title', 'Register: sheets');
    await page.keyboard.press('Enter');
    await has(page, '.contents', 'Example of a sheet');
    expect(readFileSync(join(folder, 'edition.yaml'), 'utf8')).toContain(
      'title: "Register: sheets"',
    );
    expect(readdirSync(folder).sort()).toEqual(['.gaugeleaf', 'edition.yaml', 'sheets']);

    // A kind: begun, opened, found wrong under its words, completed, saved, and known to new sheets.
    await press(page, 'New sheet');
    await page.select('#new-what', 'new-kind');
    await page.type('#new-name', 'wiper-motor');
    await page.type('#new-title', 'Wiper motor');
    await press(page, 'Begin it');
    await has(page, '.word', 'kinds/wiper-motor.yaml is begun');
    await has(page, '.tally', '0 errors');
    await cursorBehind(page, '    - [first-setting');
    await page.keyboard.type('x');
    await has(page, '.tally', '1 error');
    expect(await page.$$eval('.found-error', (all) => all.length)).toBeGreaterThan(0);
    await has(page, '.edition-view', 'this kind has no setting');
    await page.keyboard.press('Backspace');
    await has(page, '.tally', '0 errors');
    await cursorBehind(page, 'dimensions: [length]');
    await page.keyboard.press('Enter');
    await keys(page, 'Control', 'Space');
    await page.waitForSelector('.cm-tooltip-autocomplete li');
    expect(await wordsOf(page, '.cm-tooltip-autocomplete')).toContain('symptoms');
    await page.keyboard.press('Escape');
    expect(await barriers(page)).toEqual([]);
    await page.keyboard.type('usual: { length: [0.02 in, 0.5 in] }');
    await has(page, '.tally', '0 errors');
    await keys(page, 'Control', 's');
    await page.waitForFunction(
      "document.querySelector('.sheet-head .standing').textContent === 'saved'",
    );
    expect(readFileSync(join(folder, 'kinds/wiper-motor.yaml'), 'utf8')).toContain('0.5 in');
    await press(page, 'New sheet');
    await page.waitForFunction(
      "[...document.querySelectorAll('#new-kind option')].some((o) => o.value === 'wiper-motor')",
    );
    await page.keyboard.press('Escape');

    // A fault of the edition leads to its place; a kind of the program's own is shown.
    await press(page, 'The edition');
    await has(page, '.sheet-title', 'edition.yaml');
    await has(page, '.tally', '0 errors');
    await cursorBehind(page, 'paper: half-letter');
    await page.keyboard.type('x');
    await has(page, '.tally', '1 error');
    await press(page, 'Ignition distributor');
    await has(page, 'dialog[open] dt', 'points-gap');
    expect(await barriers(page)).toEqual([]);
    await page.keyboard.press('Escape');
    await page.close();
  });

  test('a name is followed to its place, listed and changed by keys, here and elsewhere', async () => {
    const folder = folderWith({
      ...files,
      'sheets/orlo-f28-wexcombe-four.md': cleanSheet(id).replace(
        `sheet: ${id}`,
        'sheet: orlo-f28-wexcombe-four',
      ),
    });
    const desk = await atDesk(folder, { page: built.folder });
    const { page, complaints } = await openPage(browser, desk.running.address(), id);
    await cursorBehind(page, 'from: m4');
    await page.keyboard.press('F12');
    await page.waitForFunction(
      "document.querySelector('.cm-activeLine').textContent.includes('m48: {')",
    );
    await page.keyboard.down('Shift');
    await page.keyboard.press('F12');
    await page.keyboard.up('Shift');
    await has(page, 'dialog[open]', '6 places');
    expect(await barriers(page)).toEqual([]);
    await page.keyboard.press('Escape');
    await page.keyboard.press('F2');
    await page.waitForSelector('dialog[open] #another-name');
    expect(await barriers(page)).toEqual([]);
    await page.keyboard.type('wm48');
    await page.keyboard.press('Enter');
    await has(page, '.word', 'It is wm48 now, here, and in 1 other sheet.');
    expect(await textOf(page)).toContain('from: wm48 p. 31');
    const other = readFileSync(join(folder, 'sheets/orlo-f28-wexcombe-four.md'), 'utf8');
    expect(other).toContain('from: wm48 p. 40');
    expect(other).not.toContain('m48 p. 31, from');
    await has(page, '.tally', '0 errors, 0 warnings');

    // A name of the kind is the kind's.
    await cursorBehind(page, '  float-le');
    await page.keyboard.press('F2');
    await has(page, '.word', 'comes from the kind');
    expect(complaints).toEqual([]);
    await page.close();
  });

  test('the form takes a source, a setting and another paper, each in sight as it is asked for', async () => {
    const desk = await atDesk(folderWith(files), { page: built.folder });
    const { page, complaints } = await openPage(browser, desk.running.address(), id);
    await page.evaluate("document.querySelector('#tab-form').click()");
    await page.waitForSelector('[data-path="another-source"]');
    await press(page, 'Another source');
    expect(
      await page.evaluate('document.documentElement.scrollHeight - innerHeight'),
    ).toBeLessThanOrEqual(0);
    await page.waitForFunction(
      `document.activeElement.dataset.path === '["sources","s1","title"]'`,
    );
    await page.keyboard.type('Owner book');
    await expect.poll(() => textOf(page)).toContain('s1:\n    title: Owner book\n');
    await page.select(
      '[data-path="["settings","float-level","from"]"]'.replace(/"(\[.*\])"/, "'$1'"),
      's1',
    );
    await expect.poll(() => textOf(page)).toContain('from: s1 p. 31');
    await page.select('[data-path="more"]', 'float-drop');
    await page.waitForFunction(
      `document.activeElement.dataset.path === '["settings","float-drop","value"]'`,
    );
    expect(
      await page.evaluate(
        '(() => { const r = document.activeElement.getBoundingClientRect(); return r.top > 0 && r.bottom < innerHeight; })()',
      ),
    ).toBe(true);
    await page.keyboard.type('1-1/4 in');
    await expect
      .poll(() => textOf(page))
      .toContain('float-drop:\n    value: 1-1/4 in\n    from: s1\n');
    await page.select('[data-path="offers-setting-float-drop"]', 'what another paper says');
    await page.waitForFunction(
      `document.activeElement.dataset.path === '["settings","float-drop","but",0,"value"]'`,
    );
    await page.keyboard.type('1-3/8 in');
    await expect.poll(() => textOf(page)).toContain('but:\n      - { value: 1-3/8 in }');
    expect(await barriers(page)).toEqual([]);
    expect(complaints).toEqual([]);
    await page.close();
  });

  test('the form keeps what is selected at any speed, and quotes only what needs it', async () => {
    const sheet = cleanSheet(id).replace('at: free end of the float', 'at: "fill: in"');
    const folder = folderWith({ ...files, [`sheets/${id}.md`]: sheet });
    const desk = await atDesk(folder, { page: built.folder });
    const { page, complaints } = await openPage(browser, desk.running.address(), id);
    await page.evaluate("document.querySelector('#tab-form').click()");
    for (const [path, words] of [
      ['["settings","float-level","at"]', 'free end'],
      ['["settings","float-level","value"]', '450'],
      ['["settings","idle-mixture","value"]', '1 turn out'],
      ['["unit","model"]', 'F30'],
    ] as const) {
      const input = await page.waitForSelector(`[data-path='${path}']`);
      await input?.click({ count: 3 });
      await page.keyboard.type(words, { delay: 8 });
    }
    const level = await page.$(`[data-path='["settings","float-level","value"]']`);
    await level?.click();
    await page.keyboard.press('End');
    await page.keyboard.type(' rpm', { delay: 200 });
    await expect.poll(() => textOf(page)).toContain('model: F30');
    await expect.poll(() => textOf(page)).toContain('value: 450 rpm # as the manual');
    expect(await textOf(page)).toContain('at: free end\n');
    expect(await textOf(page)).toContain('value: 1 turn out,');
    expect(complaints).toEqual([]);
    expect(readFileSync(join(folder, 'sheets', `${id}.md`), 'utf8')).toBe(sheet);
    await page.close();
  });
});
