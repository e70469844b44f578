import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { bookletModel } from '../../../src/press/booklet/model.ts';
import { cardModel } from '../../../src/press/card/model.ts';
import { capHeightsByFamily } from '../../../src/press/html/font-faces.ts';
import { render } from '../../../src/press/html/render.ts';
import type { SheetToPrint } from '../../../src/press/index.ts';
import { examineFile } from '../../../src/project/examine-file.ts';
import { flate } from '../../../src/project/flate.ts';
import { openProject } from '../../../src/project/project.ts';
import { readTemplates } from '../../../src/project/templates.ts';
import { readPdf } from '../pdf.ts';
import { browserHere, printCard } from '../stand.ts';

const root = join(import.meta.dirname, '../club-style');
const project = openProject(root, root);
const { edition } = project.edition();
const templates = readTemplates(root);
const browser = await browserHere();

function sheet(): SheetToPrint {
  const [path = ''] = project.sheets();
  const examined = examineFile(project, path);
  if (!examined.ok) throw new Error(path);
  const { sheet, findings } = examined;
  return { sheet, findings };
}

describe('a club with its own cover, words, color and mark', () => {
  test('has no mistake in them', async () => {
    expect(await project.templateFaults()).toEqual([]);
    expect(project.edition().faults?.findings).toEqual([]);
  });

  test('has them on its card', async () => {
    const { sheet: read, findings } = sheet();
    const model = cardModel(read, findings, edition?.facts ?? null, {
      paper: 'a4',
      draft: false,
      picture: null,
      capHeights: capHeightsByFamily(templates),
      readings: null,
    });
    const html = await render('card.hbs', model, templates);
    expect(html).toContain('<th scope="col" class="found">Vorgefunden</th>');
    expect(html).toContain('<div class="issue"><img class="logo" src="data:image/svg+xml;base64,');
    expect(html).toContain('"Seite " counter(page) " von " counter(pages)');
    // What the club does not say otherwise stays as it was.
    expect(html).toContain('>Sources</h2>');
    // The club's style comes after all others, so that what it sets holds.
    expect(html.lastIndexOf('--accent: #0b5d2e')).toBeGreaterThan(
      html.lastIndexOf('--accent: #000'),
    );
  });

  test('has them in its booklet', async () => {
    const facts = edition?.facts;
    if (facts === undefined) throw new Error('no edition');
    const options = { paper: 'a5', draft: false, picture: null, texts: templates.texts } as const;
    const html = await render('booklet.hbs', bookletModel([sheet()], facts, options), templates);
    expect(html).toContain('Gute Fahrt wünschen die Freunde der Holmtaler Wagen');
    expect(html).toContain('<li>1 Holm F27 single-barrel, Holmtal Four</li>');
    expect(html).not.toContain('class="scale"');
  });

  test.skipIf(typeof browser === 'string')('prints', { timeout: 120_000 }, async () => {
    if (typeof browser === 'string') return;
    const printed = await printCard({
      ...sheet(),
      edition: edition?.facts ?? null,
      paper: 'a4',
      templates,
      picture: null,
      browser,
      flate,
      draft: false,
    });
    expect(printed.problems).toEqual([]);
    const { pages, title } = await readPdf(printed.pdf);
    const text = pages.map((page) => page.text).join(' ');
    for (const word of [
      'Vorgefunden',
      'Hinterlassen',
      'Zu den Angaben',
      'Eingestellt von',
      'Ausgabe 1',
    ]) {
      expect(text).toContain(word);
    }
    expect(text).toMatch(/Seite 1 von [12]/);
    expect(text).not.toContain('As found');
    expect(title).toBe('Holm F27 single-barrel, Holmtal Four: Einstellblatt');
    const out = process.env.GAUGELEAF_TEST_PRINTS;
    if (out === undefined) return;
    mkdirSync(out, { recursive: true });
    writeFileSync(join(out, 'club-card.pdf'), printed.pdf);
  });
});

test('words that are text only in a template are escaped', async () => {
  const wording = new Map([...templates.wording, ['gauge', '<b>Lehre</b> & "Maß"']]);
  const texts = new Map([['x.hbs', '<p title="{{say "gauge"}}">{{say "gauge"}}</p>']]);
  expect(await render('x.hbs', {}, { ...templates, texts, wording })).toBe(
    '<p title="&lt;b&gt;Lehre&lt;/b&gt; &amp; &quot;Maß&quot;">&lt;b&gt;Lehre&lt;/b&gt; &amp; &quot;Maß&quot;</p>',
  );
});

test('a title in braces is no word of CSS', async () => {
  const texts = new Map([['x.hbs', '{{cssText title}}|{{cssText title page="counter(page)"}}']]);
  const html = await render('x.hbs', { title: '{constructor} {page}' }, { ...templates, texts });
  expect(html).toBe(
    '"\\7b constructor\\7d  \\7b page\\7d "|"\\7b constructor\\7d " " " counter(page)',
  );
});
