import { describe, expect, test } from 'vitest';
import { cardModel } from '../../../src/press/card/model.ts';
import { capHeightsByFamily } from '../../../src/press/html/font-faces.ts';
import { type CardOrder, type Paper, printCards } from '../../../src/press/index.ts';
import { flate } from '../../../src/project/flate.ts';
import { demoEdition, demoSheets } from '../demo-sheets.ts';
import { type SpokenText, spokenText } from '../pdf.ts';
import { browserHere, builtInTemplates } from '../stand.ts';

// What is read aloud, over the structure tree of printed files as another reader (PDF.js) has it, and not
// over the HTML. These are checks that the Matterhorn Protocol 1.1 leaves to people (numbers from memory):
// 09-001, tags in logical order; 09-002 and 09-003, tags nested and chosen by what they mean.
const browser = await browserHere();
if (typeof browser === 'string') console.warn(`Reading order is not looked at: ${browser}`);
const here = typeof browser === 'string' ? null : browser;
const templates = builtInTemplates();
const { facts } = demoEdition();
const sheets = demoSheets().filter(({ sheet }) => /orlo-t71|ostrel|tamsel/.test(sheet.file));
const orders = sheets.flatMap(({ sheet }) =>
  (['letter', 'a5'] satisfies Paper[]).map((paper) => ({ sheet, paper })),
);

const marks: Readonly<Record<string, string>> = {
  amp: '&',
  lt: '<',
  gt: '>',
  quot: '"',
  nbsp: ' ',
};

/** Text without tags, spaces and capitals: a line's end is no matter of order. */
function bare(html: string): string {
  return html
    .replace(/<span class="step-number">[^<]*<\/span>/g, '')
    .replace(/<[^>]*>/g, '')
    .replace(/&(?:#(\d+)|(\w+));/g, (_, code: string | undefined, name = '') =>
      code === undefined ? (marks[name] ?? '') : String.fromCodePoint(Number(code)),
    )
    .replace(/\s+/g, '')
    .normalize('NFKC')
    .toLowerCase();
}

/** The first of some texts that does not come behind the one before it; null where all do. */
function firstAstray(spoken: readonly SpokenText[], texts: readonly string[]): string | null {
  const all = bare(spoken.map(({ text }) => text).join(''));
  let from = 0;
  for (const text of texts) {
    const at = all.indexOf(bare(text), from);
    if (at === -1) return text;
    from = at + bare(text).length;
  }
  return null;
}

const printed =
  here === null
    ? []
    : await printCards(
        orders.map(
          ({ sheet, paper }): CardOrder => ({
            sheet,
            paper,
            templates,
            picture: null,
            browser: here,
            flate,
            draft: false,
            edition: facts,
            findings: [],
          }),
        ),
      );
const heard = await Promise.all(printed.map(({ pdf }) => spokenText(pdf)));

describe
  .skipIf(here === null)
  .each(
    orders.map((order, at) => ({ ...order, at, name: `${order.sheet.file} on ${order.paper}` })),
  )('the card of $name', ({ sheet, paper, at }) => {
  const model = cardModel(sheet, [], facts, {
    paper,
    draft: false,
    picture: null,
    capHeights: capHeightsByFamily(templates),
    readings: null,
  });
  const spoken = () => heard[at] ?? [];

  test('Matterhorn 09-001: hazards, settings in their order, steps in theirs, what stands behind', () => {
    const steps = model.operations.flatMap(({ number, title, steps: html }) => [
      `${number} ${title}`,
      ...html
        .split(/<li[^>]*>/)
        .slice(1)
        .map((step) => step.replace(/<\/li>[\s\S]*$/, '')),
    ]);
    const order = [
      model.face.title,
      ...model.hazards.dangers.map(({ html }) => html),
      ...model.hazards.strip.flatMap(({ word, hazards }) => [word, hazards[0]?.imperative ?? '']),
      ...model.settings.flatMap(({ number, label }) => [`${number}`, label]),
      ...steps,
      'Hazards in full',
      ...model.hazards.full.map(({ html }) => html),
      'Behind the figures',
      'Sources',
      'Unit no.',
    ];
    expect(order.length).toBeGreaterThan(60);
    expect(firstAstray(spoken(), order)).toBeNull();
    const turned = [...steps].reverse();
    expect(firstAstray(spoken(), turned), 'another order is told from it').not.toBeNull();
  });

  test('Matterhorn 09-003: each caution is a note of its own, headings are headings, steps items', () => {
    const { dangers, strip, full } = model.hazards;
    const notes = spoken().filter(({ roles }) => roles.includes('Note'));
    const begun = notes.filter(({ text }) => /(DANGER|WARNING|CAUTION|NOTICE)$/.test(text.trim()));
    expect(begun).toHaveLength(dangers.length + strip.length + full.length);
    const inRole = (role: RegExp) =>
      bare(
        spoken()
          .filter(({ roles }) => roles.some((each) => role.test(each)))
          .map(({ text }) => text)
          .join(''),
      );
    for (const { number, title } of model.operations) {
      expect(inRole(/^H2$/)).toContain(bare(`${number}${title}`));
    }
    const cells = inRole(/^TH$/);
    for (const { label } of model.settings) expect(cells).toContain(bare(label));
    const items = spoken().filter(({ roles }) => roles.includes('Lbl')).length;
    expect(items).toBeGreaterThanOrEqual(sheet.operations.flatMap(({ steps }) => steps).length);
  });
});
