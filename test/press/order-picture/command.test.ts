import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { bookletModel } from '../../../src/press/booklet/model.ts';
import { render } from '../../../src/press/html/render.ts';
import { readEdition } from '../../../src/project/edition.ts';
import { openEdition } from '../../../src/project/edition-file.ts';
import { gaugeleaf } from '../../cli/console.ts';
import { cleanSheet, folderWith } from '../../project/folder.ts';
import { builtInTemplates, sampleText, toPrint } from '../stand.ts';

const edition = 'gaugeleaf-edition: 1\ntitle: Settings\n';

function project(sheet = cleanSheet('orlo-f27')): string {
  return folderWith({ 'edition.yaml': edition, 'sheets/orlo-f27.md': sheet });
}

describe('gaugeleaf order', () => {
  test('draws into print/, says where, and says what the arrows are', async () => {
    const cwd = project();
    const { status, out, err } = await gaugeleaf(['order', 'orlo-f27'], { cwd });
    expect({ status, out }).toEqual({ status: 0, out: 'print/orlo-f27-order.svg\n' });
    expect(err).toMatch(/^\d+ operations?: solid arrows for what must be done first, .*\n$/);
    const svg = readFileSync(join(cwd, 'print/orlo-f27-order.svg'), 'utf8');
    expect(svg).toMatch(/^<svg xmlns="http:\/\/www.w3.org\/2000\/svg" width="[\d.]+pt"/);
  });

  test('writes the picture, and nothing else, to standard output with -', async () => {
    const cwd = project();
    const { status, out, err } = await gaugeleaf(['order', 'orlo-f27', '--out', '-'], { cwd });
    expect({ status, err }).toEqual({ status: 0, err: '' });
    expect(out).toMatch(/^<svg[\s\S]*<\/svg>\n$/);
    expect(existsSync(join(cwd, 'print'))).toBe(false);
  });

  test('writes to the file that is named', async () => {
    const cwd = project();
    const { out } = await gaugeleaf(['order', 'orlo-f27', '-o', 'pictures/work.svg'], { cwd });
    expect(out).toBe('pictures/work.svg\n');
    expect(existsSync(join(cwd, 'pictures/work.svg'))).toBe(true);
  });

  test('lists with --text, on standard output', async () => {
    const cwd = project();
    const { status, out, err } = await gaugeleaf(['order', 'orlo-f27', '--text'], { cwd });
    expect({ status, err }).toEqual({ status: 0, err: '' });
    expect(out).toMatch(/^Orlo F27 single-barrel, Wexcombe Four: the order of work\n/);
    expect(out).toMatch(/\nFree: /);
  });

  test('names the headings that it leaves out', async () => {
    const sheet = `${cleanSheet('orlo-f27')}\n## Polishing the badge\n\n1. Polish it.\n`;
    const { err } = await gaugeleaf(['order', 'orlo-f27', '--text'], { cwd: project(sheet) });
    expect(err).toBe(
      'note: left out, for the kind carburetor does not know it: "Polishing the badge"\n',
    );
  });

  test('needs a kind that is known', async () => {
    const sheet = cleanSheet('orlo-f27').replace('kind: carburetor', 'kind: carburettor');
    const { status, out, err } = await gaugeleaf(['order', 'orlo-f27'], { cwd: project(sheet) });
    expect({ status, out }).toEqual({ status: 2, out: '' });
    expect(err).toContain(
      'sheets/orlo-f27.md is about a kind of unit that is not known, carburettor',
    );
    expect(err).toMatch(/say `kind:` under `unit:`: .*carburetor/);
  });

  test('needs work to draw', async () => {
    const sheet = cleanSheet('orlo-f27').replace(/^## .*$/gm, '### Not a heading of work');
    const { status, err } = await gaugeleaf(['order', 'orlo-f27'], { cwd: project(sheet) });
    expect(status).toBe(2);
    expect(err).toContain('has no operation that the kind carburetor knows');
  });
});

describe('the picture in the booklet', () => {
  const entry = toPrint(sampleText);
  const facts = { title: 'Settings' };
  const options = { paper: 'half-letter', draft: true, picture: null } as const;
  const svg = '<svg id="the-picture"></svg>';

  test('ends its chapter, with words that say how to read it', async () => {
    const model = bookletModel([entry, entry], facts, { ...options, orders: [null, svg] });
    expect(model.chapters.map(({ order }) => order)).toEqual([null, svg]);
    const html = await render('booklet.hbs', model, builtInTemplates());
    expect(html).toMatch(
      /<p class="over-page">The order of work<\/p>\s*<figure>\s*<svg id="the-picture"><\/svg>\s*<figcaption>[^<]+<\/figcaption>\s*<\/figure>\s*<\/section>/,
    );
    expect(html.match(/<section class="chapter order"/g)).toHaveLength(1);
  });

  test('fills a page that would be blank, and stands in every chapter where the edition says so', async () => {
    const read = (text: string) =>
      readEdition(openEdition(folderWith({ 'edition.yaml': text }), 'edition.yaml'), []);
    expect(read(edition).edition?.orderGraphs).toBe(false);
    expect(read(`${edition}order-graphs: true\n`).edition?.orderGraphs).toBe(true);
    const wrong = read(`${edition}order-graphs: sometimes\n`);
    expect(wrong.edition?.orderGraphs).toBe(false);
    expect(wrong.faults?.findings.map(({ message }) => message).join()).toContain('order-graphs');
    const withPicture = async (orderGraphs: boolean) => {
      const model = bookletModel([entry], facts, { ...options, orders: [svg], orderGraphs });
      return render('booklet.hbs', model, builtInTemplates());
    };
    expect(await withPicture(false)).toContain('<section class="chapter order" data-fills');
    expect(await withPicture(true)).toContain('<section class="chapter order" style');
  });
});
