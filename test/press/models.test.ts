import { describe, expect, test } from 'vitest';
import { bookletModel } from '../../src/press/booklet/model.ts';
import { cardModel } from '../../src/press/card/model.ts';
import { capHeightsByFamily } from '../../src/press/html/font-faces.ts';
import { render } from '../../src/press/html/render.ts';
import type { EditionFacts } from '../../src/press/index.ts';
import { builtInTemplates, expectGolden, finding, sampleText, toPrint } from './stand.ts';

const edition: EditionFacts = {
  title: 'Settings for Holme cars',
  subtitle: 'Carburetors, 1951 to 1954',
  club: 'Holme & Tarn Circle',
  edition: 'First edition',
  date: '2026-05-01',
};
const accepted = finding({ accepted: 'The bench gauge reads to half a thousandth.' });
const picture = () => ({ dataUri: 'data:image/png;base64,iVBORw0KGgo=' });
const entry = toPrint(sampleText, [accepted]);
const capHeights = capHeightsByFamily(builtInTemplates());
const options = { paper: 'letter', draft: false, picture, capHeights, readings: null } as const;

function card(text: string, findings = [accepted]) {
  const { sheet } = toPrint(text);
  return cardModel(sheet, findings, edition, options);
}

/** HTML without the fonts, which would make the golden file unreadable. */
function withoutFonts(html: string): string {
  return html.replace(/<style>[\s\S]*?<\/style>\n?/g, '');
}

describe('the card', () => {
  const model = cardModel(entry.sheet, entry.findings, edition, options);

  test('its model is plain data, and as agreed', () => {
    const text = JSON.stringify(model, null, 2);
    expect(JSON.parse(text)).toEqual(model);
    expectGolden('card-model.json', `${text}\n`);
  });

  test('its HTML is as agreed', async () => {
    expectGolden('card.html', withoutFonts(await render('card.hbs', model, builtInTemplates())));
  });

  test('settings stand in the order of the work, not of the front matter', () => {
    expect(model.settings.map((row) => row.name)).toEqual([
      'float-level',
      'pump-stroke',
      'choke-cover-index',
      'choke-pull-down',
      'fast-idle-gap',
      'idle-mixture',
      'idle-speed',
      'idle-vacuum',
    ]);
  });

  test('a value is printed as written, with limits rounded inward beside it', () => {
    // 13/64 ± 1/64 in is 3/16 to 7/32 in: 4.7625 to 5.55625 mm, inward 4.77 to 5.55.
    const [value] = model.settings[0]?.values ?? [];
    expect(value?.written).toBe('13/64 ± 1/64 in');
    expect(value?.mm).toContain('5.16 mm');
    expect(value?.mm).toContain('4.77');
    expect(value?.mm).toContain('5.55');
    expect(value?.mm).not.toContain('5.56');
  });

  test('two barrels that differ give two lines', () => {
    const row = model.settings.find(({ name }) => name === 'fast-idle-gap');
    expect(row?.values.map(({ place, written }) => `${place}: ${written}`)).toEqual([
      'primary: 0.026 in wire',
      'secondary: 0.030 in wire',
    ]);
  });

  test('hazards stand before the work, the gravest in full, the rest in an imperative and in full behind it', () => {
    const { dangers, strip, full } = model.hazards;
    expect(strip.map(({ word }) => word)).toEqual(['WARNING', 'CAUTION']);
    expect(dangers.every(({ signal }) => signal === 'danger')).toBe(true);
    const said = [...dangers, ...full].map(({ html }) => html).join(' ');
    expect(said.split('Gasoline vapor burns.').length).toBe(2);
    // An empty message says what the kind says of its hazard.
    expect(said).toMatch(/[Cc]ompressed air/);
    const short = strip.flatMap(({ hazards }) => hazards.map(({ imperative }) => imperative));
    expect(short).toContain('Wear goggles; blow away from people.');
    expect(new Set(short).size).toBe(short.length);
  });

  test('HTML in a sheet is dropped, and states are not printed', () => {
    const html = JSON.stringify(model) + JSON.stringify(bookletModel([entry], edition, options));
    expect(html).not.toContain('<b>not');
    expect(html).not.toContain('cover inverted]');
    expect(html).not.toContain(':state');
    expect(html).toContain('ratio 4:a is no directive');
  });

  test('the accepted finding is an editor’s note with its reason', () => {
    expect(model.notes).toEqual([
      { point: accepted.message, reason: 'The bench gauge reads to half a thousandth.' },
    ]);
  });

  const ruled = (rule: string) =>
    sampleText.replace('settings:\n', `work:\n  fast-idle-cam: ${rule}\nsettings:\n`);

  test('a rule of the order that the sheet overrules is an editor’s note with its reason', () => {
    const text = ruled(
      '{ without: { after: [choke-pull-down], needs: [choke], disturbs: [unloader, fast-idle-gap] }, because: The lug stands on the other lever. }',
    );
    const note = {
      point:
        'On this unit “Fast idle cam position” asks nothing of the choke plate and does not disturb “Choke unloader” or “Fast idle gap”:',
      reason: 'The lug stands on the other lever.',
    };
    const model = card(text, []);
    expect(model.notes).toEqual([note]);
    const [chapter] = bookletModel([toPrint(text)], edition, { ...options, paper: 'a5' }).chapters;
    expect(chapter?.notes).toEqual([note]);
  });

  test('a rule that is only added, or that the kind does not have, is no editor’s note', () => {
    expect(card(ruled('{ after: [pump-stroke], because: They share a lever. }'), []).notes).toEqual(
      [],
    );
    const idle = '{ without: { after: [road-test] }, because: It is done on the bench. }';
    expect(card(ruled(idle), []).notes).toEqual([]);
  });

  test.each([
    ['released', null],
    ['proof', 'PROOF'],
    ['draft', 'DRAFT'],
  ])('status %s is marked %s', (status, mark) => {
    expect(card(sampleText.replace('status: released', `status: ${status}`)).face.mark).toBe(mark);
  });

  test('an error makes it a draft, whatever was asked', () => {
    expect(card(sampleText, []).draft).toBe(false);
    expect(card(sampleText, [finding({ severity: 'error' })]).draft).toBe(true);
  });

  test('a value that is not set says so and is no crash', () => {
    const text = sampleText.replace(':value[idle-mixture]', ':value[idle-mixtrue]');
    expect(JSON.stringify(card(text).operations)).toContain('[idle-mixtrue: not set]');
  });

  test('a sheet of nothing but front matter, or of nothing, still has a model', () => {
    expect(card('').operations).toEqual([]);
    expect(card('---\nsheet: x\n---\n').settings).toEqual([]);
  });
});

describe('the booklet', () => {
  const model = bookletModel([entry, entry], edition, { ...options, paper: 'a5' });

  test('its model is plain data, and as agreed', () => {
    const text = JSON.stringify(model, null, 2);
    expect(JSON.parse(text)).toEqual(model);
    expectGolden('booklet-model.json', `${text}\n`);
  });

  test('its HTML is as agreed', async () => {
    const html = await render('booklet.hbs', model, builtInTemplates());
    expectGolden('booklet.html', withoutFonts(html));
  });

  test('every id is there once', async () => {
    const html = await render('booklet.hbs', model, builtInTemplates());
    const ids = [...html.matchAll(/ id="([^"]+)"/g)].map((match) => match[1]);
    expect(ids.filter((id, index) => ids.indexOf(id) !== index)).toEqual([]);
    for (const [, target] of html.matchAll(/ href="#([^"]+)"/g)) expect(ids).toContain(target);
  });

  test('a footnote of the card is on the card', async () => {
    const { sheet } = toPrint(sampleText);
    const html = await render(
      'card.hbs',
      cardModel(sheet, [], edition, options),
      builtInTemplates(),
    );
    expect(html).toContain('href="#card-fn-1"');
    expect(html).toContain('id="card-fn-1"');
    expect(html).toContain('At sea level.');
  });

  test('gauges are gathered by family and size, with the units that use them', () => {
    expect(
      model.gauges.map(({ title, gauges }) => [title, gauges.map(({ label }) => label)]),
    ).toEqual([
      ['Twist drills', ['No. 30 drill', '13/64 drill']],
      ['Wire feelers', ['0.026 in wire', '0.030 in wire']],
    ]);
    expect(model.gauges[0]?.gauges[0]?.usedBy.map(({ number }) => number)).toEqual([1, 2]);
  });

  test('where sources differ both figures and the ruling are printed', () => {
    const [row] = model.chapters[0]?.rulings ?? [];
    expect(row?.name).toBe('choke-pull-down');
    expect(row?.dissents[0]).toMatchObject({ written: 'No. 29 drill', from: 'b' });
    expect(row?.dissents[0]?.ruling).toContain('Later units only');
  });
});

describe('templates', () => {
  const templates = builtInTemplates();
  const model = cardModel(entry.sheet, [], null, options);
  const withCard = (text: string) => ({
    ...templates,
    texts: new Map([...templates.texts, ['card.hbs', text]]),
  });

  test('a name that the model lacks stops the press and is named', async () => {
    await expect(render('card.hbs', model, withCard('{{face.colour}}'))).rejects.toThrow(
      /card\.hbs can't be filled: .*colour/,
    );
  });

  test('nothing of a value’s prototype can be reached', async () => {
    for (const text of [
      '{{face.constructor}}',
      '{{face.__proto__}}',
      '{{lookup face "constructor"}}',
    ]) {
      const html = await render('card.hbs', model, withCard(text)).catch(() => '');
      expect(html).toBe('');
    }
  });

  test('a font that is missing stops the press and is named', async () => {
    const fonts = new Map([...templates.fonts].filter(([name]) => name !== 'sans-italic.woff2'));
    await expect(render('card.hbs', model, { ...templates, fonts })).rejects.toThrow(
      'styles.css asks for the font sans-italic.woff2, which is not in templates/fonts',
    );
  });
});
