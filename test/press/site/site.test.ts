import { describe, expect, test } from 'vitest';
import type { SiteOrder } from '../../../src/press/site/site.ts';
import { siteFiles, sitePolicy } from '../../../src/press/site/site.ts';
import { leveled, printedText } from '../printed-text.ts';
import { builtInTemplates, finding, sampleText, toPrint } from '../stand.ts';
import { demoOrder, elementsOf, pagesIn, pagesOf } from './demo-site.ts';

const { order: demo } = demoOrder();
const files = await siteFiles(demo);
const pages = pagesIn(files);

/** The pages of one sheet. */
function sample(text: string, more: Partial<SiteOrder> = {}): SiteOrder {
  return {
    sheets: [toPrint(text)],
    edition: {
      title: 'Settings <for> Holme & Tarn',
      club: 'Holme Circle',
      edition: 'Second edition',
    },
    templates: builtInTemplates(),
    picture: null,
    draft: false,
    ...more,
  };
}

async function unitPage(order: SiteOrder): Promise<string> {
  return (await pagesOf(order)).get('units/tarn-t64-holme-seven.html') ?? '';
}

describe('the pages of the demo', () => {
  test('are one to a sheet and four general ones, the first page last', () => {
    expect([...pages.keys()].slice(-4)).toEqual([
      'cautions.html',
      'gauges.html',
      'worked.html',
      'index.html',
    ]);
    expect(pages.size).toBe(demo.sheets.length + 4);
  });

  test.each([...pages])(
    '%s is whole HTML, with a language, a title, one main heading',
    (_, html) => {
      expect(html).toMatch(/^<!DOCTYPE html>\n<html lang="en-US">/);
      const elements = elementsOf(html);
      const named = (name: string) => elements.filter((element) => element.name === name);
      expect(named('h1')).toHaveLength(1);
      expect(named('main')).toHaveLength(1);
      const h1 = named('h1')[0]?.text;
      const title = named('title')[0]?.text ?? '';
      expect(
        ['Adjustment Sheets for the Bench', `${h1} – Adjustment Sheets for the Bench`, h1],
        'the page, and the edition where there is room',
      ).toContain(title);
      expect(title.length).toBeLessThanOrEqual(70);
      const ids = elements.flatMap(({ attributes }) => attributes.id ?? []);
      expect(ids.filter((id, at) => ids.indexOf(id) !== at)).toEqual([]);
      const levels = elements.flatMap(({ name }) => /^h([1-6])$/.exec(name)?.[1] ?? []).map(Number);
      levels.forEach((level, at) => {
        expect(level, `heading ${at + 1}`).toBeLessThanOrEqual((levels[at - 1] ?? 0) + 1);
      });
    },
  );

  test.each([...pages])(
    '%s has no script, no style of its own, and loads what lies beside it',
    (_, html) => {
      for (const { name, attributes } of elementsOf(html)) {
        expect(['script', 'style', 'iframe', 'object', 'embed', 'form', 'base']).not.toContain(
          name,
        );
        for (const attribute of Object.keys(attributes)) {
          expect(attribute, `an attribute of <${name}>`).not.toMatch(
            /^(on.*|style|srcdoc|srcset)$/,
          );
        }
        if (name === 'img') expect(attributes.src).toMatch(/^data:image\//);
        if (name === 'link' && attributes.rel === 'stylesheet') {
          expect(attributes.href).toMatch(/^(\.\.\/)?style\.css$/);
        }
      }
      const [policy] = elementsOf(html).filter(
        ({ attributes }) => attributes['http-equiv'] === 'Content-Security-Policy',
      );
      expect(policy?.attributes.content).toBe(sitePolicy);
    },
  );

  test('every link leads to a page and a place that are there', () => {
    const ids = new Map(
      [...pages].map(([path, html]) => [
        path,
        new Set(elementsOf(html).flatMap(({ attributes }) => attributes.id ?? [])),
      ]),
    );
    let links = 0;
    for (const [path, html] of pages) {
      for (const { name, attributes } of elementsOf(html)) {
        const href = attributes.href;
        if (name !== 'a' || href === undefined || /^(https?|mailto):/.test(href)) continue;
        const url = new URL(href, `file:///${path}`);
        const target = decodeURIComponent(url.pathname.slice(1));
        expect(ids.has(target), `${path}: ${href}`).toBe(true);
        if (url.hash !== '') {
          expect(ids.get(target)?.has(url.hash.slice(1)), `${path}: ${href}`).toBe(true);
        }
        links += 1;
      }
    }
    expect(links).toBeGreaterThan(500);
  });

  test('every setting stands on its page with its values and sources, and every step has its box', () => {
    for (const { sheet } of demo.sheets) {
      const path = `units/${sheet.id?.value}.html`;
      const elements = elementsOf(pages.get(path) ?? '');
      for (const setting of sheet.settings.values()) {
        const row = elements.find(
          ({ attributes }) => attributes.id === `setting-${setting.name.value}`,
        );
        const values = [setting.value, ...setting.places.values()].flatMap((size) => size ?? []);
        for (const { text } of values) {
          expect(leveled(row?.text ?? '')).toContain(printedText(text));
        }
        for (const { page } of setting.from) if (page !== null) expect(row?.text).toContain(page);
      }
      const boxes = elements.filter(({ attributes }) => attributes.type === 'checkbox');
      const steps = sheet.operations.reduce((sum, { steps: own }) => sum + own.length, 0);
      expect(boxes, path).toHaveLength(steps);
    }
  });

  test('the general pages name every gauge, marque and part number', () => {
    const home = elementsOf(pages.get('index.html') ?? '').find(
      ({ name }) => name === 'body',
    )?.text;
    for (const { sheet } of demo.sheets) {
      for (const { value } of sheet.unit.partNumbers) expect(home).toContain(value);
      for (const { marque } of sheet.fits) expect(home).toContain(marque);
    }
    const gauges = elementsOf(pages.get('gauges.html') ?? '').find(
      ({ name }) => name === 'body',
    )?.text;
    expect(gauges).toContain('No. 29 drill 0.1360 in, 3.454 mm');
    expect(gauges).toContain('0.028 in wire');
  });

  test('a worked figure is marked as worked and says how', () => {
    // 0.00131 in2 as one round hole: √(4 × 0.00131 / π) = 0.0408 in.
    const html = pages.get('units/orlo-t71-wexcombe-six.html') ?? '';
    const row = elementsOf(html).find(({ attributes }) => attributes.id === 'setting-economy-step');
    expect(row?.text).toContain('Worked equivalent bore 0.0408 in');
    const how = elementsOf(pages.get('worked.html') ?? '').find(
      ({ attributes }) => attributes.id === 'worked-orlo-t71-wexcombe-six',
    );
    expect(how?.text).toContain(
      'equivalent bore 0.0408 in open area 0.00131 in2 comes to 0.0408 in',
    );
    expect(how?.text).toMatch(/\d+ stated figures were worked again from the others, and agree\./);
  });

  test('where sources differ, both figures and the ruling stand there', () => {
    const html = pages.get('units/orlo-t71-wexcombe-six.html') ?? '';
    const differ = elementsOf(html).find(({ attributes }) => attributes.id === 'differences')?.text;
    expect(differ).toContain('No. 29 drill (source a p. 33) stands.');
    expect(differ).toContain('Source b p. 2 says No. 30 drill');
    expect(differ).toContain('The later bulletin covers T71-104A only');
  });

  test('the settings stand first, the cautions before the work', () => {
    for (const [path, html] of pages) {
      if (!path.startsWith('units/')) continue;
      const places = ['id="settings"', 'id="cautions"', 'id="work"', 'id="sources"'].map((id) =>
        html.indexOf(`<section ${id}`),
      );
      expect(
        places.every((place) => place > 0),
        path,
      ).toBe(true);
      expect([...places].sort((a, b) => a - b)).toEqual(places);
    }
  });

  test('are the same bytes each time', async () => {
    const again = await siteFiles(demoOrder().order);
    expect(again.map(({ path }) => path)).toEqual(files.map(({ path }) => path));
    for (const [at, { path, content }] of files.entries()) {
      expect(
        Buffer.compare(Buffer.from(content), Buffer.from(again[at]?.content ?? '')),
        path,
      ).toBe(0);
    }
  });
});

describe('pages of other sheets', () => {
  test('an edition of one sheet has its title escaped and its edition as written', async () => {
    const all = await pagesOf(sample(sampleText));
    const home = all.get('index.html') ?? '';
    expect(home).toContain('<title>Settings &lt;for&gt; Holme &amp; Tarn</title>');
    expect(home).toContain('Second edition');
    for (const html of all.values()) elementsOf(html);
  });

  test('HTML of a sheet is dropped, and no address of it is loaded', async () => {
    const evil = sampleText.replace(
      '## Float level',
      '<script>alert(1)</script>\n\n<img src=x onerror=alert(1)>\n\n' +
        '![far](https://example.com/a.png)\n\n[click](javascript:alert(1))\n\n- [x] a task\n\n## Float level',
    );
    expect(evil).not.toBe(sampleText);
    const html = await unitPage(sample(evil));
    expect(html).not.toMatch(/<script|onerror|javascript:|example\.com/);
    expect(html).toContain('[picture not printed: far]');
    expect(html).toContain('☑ a task');
    for (const { name, attributes } of elementsOf(html)) {
      // It is for fields that are filled in, and on a box it is a fault of HTML.
      if (name === 'input') expect(attributes.autocomplete).toBeUndefined();
    }
  });

  test('headings of a sheet follow one another without a gap', async () => {
    const text = sampleText.replace(
      '## Float level',
      '#### Deep\n\nWords.\n\n## Float level\n\n##### Deeper',
    );
    const elements = elementsOf(await unitPage(sample(text)));
    const level = (words: string) =>
      elements.find(({ name, text: own }) => /^h[1-6]$/.test(name) && own === words)?.name;
    expect(level('Deep')).toMatch(/^h[2-4]$/);
    expect(level('Deeper')).toBe('h4');
  });

  test('a link to another sheet leads to its page, one to a sheet that has none stays', async () => {
    const text = sampleText.replace(
      '## Float level',
      'See [itself](tarn-t64-holme-seven.md#work-float-level) and [none](other.md).\n\n## Float level',
    );
    const html = await unitPage(sample(text));
    expect(html).toContain('href="tarn-t64-holme-seven.html#work-float-level"');
    expect(html).toContain('href="other.md"');
  });

  test('a sheet with an error is refused, and as a draft says DRAFT on every page', async () => {
    const wrong = [toPrint(sampleText, [finding({ severity: 'error' })])];
    await expect(siteFiles(sample(sampleText, { sheets: wrong }))).rejects.toThrow(
      'Pages are made only as a draft while there are errors in sheets/tarn-t64-holme-seven.md.',
    );
    const drafts = await pagesOf(sample(sampleText, { sheets: wrong, draft: true }));
    for (const html of drafts.values()) expect(html).toContain('<b>DRAFT</b> Not for use');
    await expect(siteFiles(sample(sampleText, { sheets: [] }))).rejects.toThrow('has no sheet');
  });

  test('a style that names a font that is not there is refused by name', async () => {
    const templates = builtInTemplates();
    const texts = new Map(templates.texts).set(
      'styles.css',
      '@font-face { font-family: "Own"; src: url(fonts/own.woff2); }',
    );
    await expect(
      siteFiles(sample(sampleText, { templates: { ...templates, texts } })),
    ).rejects.toThrow('asks for the font own.woff2, which is not in templates/fonts');
  });
});

/** Typeset text and text as typed alike: fraction bars, primes, minus signs and dashes. */
