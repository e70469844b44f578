import { describe, expect, test } from 'vitest';
import { printBooklet } from '../../../src/press/index.ts';
import { flate } from '../../../src/project/flate.ts';
import { readPdf } from '../pdf.ts';
import { browserHere, builtInTemplates, sampleText, toPrint } from '../stand.ts';

const browser = await browserHere();
if (typeof browser === 'string') console.warn(`Printing is not tested: ${browser}`);

describe.skipIf(typeof browser === 'string')('a printed picture', { timeout: 120_000 }, () => {
  test('stands whole on one page of the half-letter booklet, in the booklet’s fonts', async () => {
    if (typeof browser === 'string') return;
    const { pdf, problems } = await printBooklet({
      sheets: [toPrint(sampleText)],
      edition: { title: 'Settings for Holme cars' },
      orderGraphs: true,
      paper: 'half-letter',
      templates: builtInTemplates(),
      picture: null,
      browser,
      draft: false,
      flate,
      store: null,
    });
    expect(problems).toEqual([]);
    const { pages } = await readPdf(pdf);
    const page = pages.find(({ text }) => text.includes('must be done first'));
    for (const words of ['The order of work', 'Strip', 'Bench', 'The numbers are those'])
      expect(page?.text).toContain(words);
    for (const font of page?.fonts ?? []) expect(font.name).toMatch(/Gaugeleaf/);
  });
});
