import { describe, expect, test } from 'vitest';
import { withBrowser } from '../../../src/press/browser/run.ts';
import { render } from '../../../src/press/html/render.ts';
import { printBooklet } from '../../../src/press/index.ts';
import { typesetSize, typesetWords } from '../../../src/press/lettering/index.ts';
import { flate } from '../../../src/project/flate.ts';
import { demoSheets } from '../demo-sheets.ts';
import { letteringIn } from '../pdf.ts';
import { browserHere, builtInTemplates } from '../stand.ts';

const browser = await browserHere();
if (typeof browser === 'string') console.warn(`Lettering is not measured: ${browser}`);
const here = typeof browser === 'string' ? null : browser;
const templates = builtInTemplates();
/** Heights of capitals and of a fraction's figures in ems, as `font-cap-height.test.ts` holds them. */
const CAP = 0.698;
const FIGURE = 0.537;

interface Box {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
  readonly size: number;
}

/** Where each element that a selector finds stands on a page of the prints' own style, in px. */
async function boxes(html: string, selectors: readonly string[]): Promise<readonly Box[][]> {
  if (here === null) throw new Error('no browser');
  const page = `<html lang="en"><head><style>{{css "styles.css"}}</style></head><body style="font-size:10pt;line-height:1.36"><p>${html}</p></body></html>`;
  const built = { ...templates, texts: new Map([...templates.texts, ['x.hbs', page]]) };
  const filled = await render('x.hbs', {}, built);
  return withBrowser(here, async (run) => {
    await run.load(filled);
    return (await run.ask(`(async () => {
      await document.fonts.ready;
      return ${JSON.stringify(selectors)}.map((selector) =>
        [...document.querySelectorAll(selector)].map((each) => {
          const { left, right, top, bottom } = each.getBoundingClientRect();
          return { left, right, top, bottom, size: parseFloat(getComputedStyle(each).fontSize) };
        }));
    })()`)) as Box[][];
  });
}

describe.skipIf(here === null)('what is set on a page', { timeout: 120_000 }, () => {
  test('powers are raised, the 2 of water is lowered, and unequal tolerances stand one above the other', async () => {
    const html = [
      typesetSize('12 cm3'),
      typesetSize('4 inH2O'),
      typesetSize('29/32 +1/32/-1/64 in'),
    ].join('<br>');
    const [[line] = [], [water] = [], [power] = [], [below] = [], tolerances = []] = await boxes(
      html,
      [
        '.size:first-of-type .together',
        '.size:nth-of-type(2) .together',
        'sup.power',
        'sub',
        '.limits > span',
      ],
    );
    if (!line || !water || !power || !below) throw new Error('not found');
    const middle = (box: Box) => (box.top + box.bottom) / 2;
    expect(middle(power)).toBeLessThan(middle(line) - 1);
    expect(middle(below)).toBeGreaterThan(middle(water) + 1);
    const [up, down] = tolerances;
    if (!up || !down) throw new Error('no tolerances');
    expect(up.bottom).toBeLessThanOrEqual(down.top + 0.5);
    expect(Math.abs(up.left - down.left)).toBeLessThan(0.5);
  });

  test('the figures of a fraction are 1.7 mm high and more, however small the text around them', async () => {
    const html = `<span style="font-size:6.5pt">${typesetWords('a 13/64 in drill')}</span> ${typesetSize('1-3/4 turns')}`;
    const [parts = [], fractions = []] = await boxes(html, ['.upper, .lower', '.fraction']);
    expect(parts).toHaveLength(4);
    for (const { size } of parts) {
      expect((size * FIGURE * 25.4) / 96).toBeGreaterThanOrEqual(1.7);
    }
    expect(fractions).toHaveLength(2);
  });
});

describe.skipIf(here === null)('the booklet', { timeout: 300_000 }, () => {
  test('has no figure of a fraction under 1.7 mm and no capital that can’t be read', async () => {
    if (here === null) return;
    const printed = await printBooklet({
      paper: 'half-letter',
      templates,
      picture: null,
      browser: here,
      flate,
      draft: false,
      edition: { title: 'Settings', club: 'Register', altitude: '1350 ft' },
      findings: [],
      sheets: demoSheets().slice(0, 2),
      store: null,
    } as never);
    const least = { caps: { mm: 99, text: '' }, figures: { mm: 99, text: '' } };
    for (const { font, mm, text } of await letteringIn(printed.pdf)) {
      const [kind, height] = /Upper|Lower/.test(font)
        ? (['figures', mm * FIGURE] as const)
        : (['caps', mm * CAP] as const);
      // A dot that says "used" is no letter.
      if (!/[\p{L}\p{N}]/u.test(text)) continue;
      if (height < least[kind].mm) least[kind] = { mm: height, text };
    }
    console.log(
      `half letter: smallest capitals ${least.caps.mm.toFixed(2)} mm (${least.caps.text}), ` +
        `figures of fractions ${least.figures.mm.toFixed(2)} mm (${least.figures.text})`,
    );
    // A font size is rounded to a hundredth of a point in the PDF.
    expect(least.figures.mm).toBeGreaterThanOrEqual(1.695);
    expect(least.caps.mm).toBeGreaterThanOrEqual(1.5);
  });
});
