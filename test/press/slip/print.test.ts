import { describe, expect, test } from 'vitest';
import { compareEditions, plainStep } from '../../../src/compare/index.ts';
import type { EditionSnapshot, SheetSnapshot } from '../../../src/compare/model.ts';
import { gaugeBook } from '../../../src/gauges/index.ts';
import { slipModel } from '../../../src/press/slip/model.ts';

const sheet: SheetSnapshot = {
  id: 'orlo',
  title: 'Orlo F27',
  kind: 'carburetor',
  revision: 1,
  status: 'proof',
  date: null,
  unit: {},
  fits: [],
  opening: '',
  sources: {},
  settings: [
    {
      name: 'float-level',
      label: 'Float level',
      values: { '': '13/64 in' },
      also: [],
      said: {},
      from: [],
      but: [],
      note: null,
    },
  ],
  operations: [
    {
      name: 'float-level',
      heading: 'Float level',
      prose: '',
      cautions: [{ signal: 'caution', hazards: ['solvent'], text: 'It burns.' }],
      steps: [
        { text: 'Turn the **cover** over. :state[cover inverted]' },
        { text: 'Measure :value[float-level], <b>there</b>.' },
      ],
    },
  ],
};

function edition(sheets: readonly SheetSnapshot[], name: string): EditionSnapshot {
  return { title: 'Sheets', edition: name, date: null, sheets };
}

function slip(after: SheetSnapshot) {
  const [old, now] = [edition([sheet], 'first'), edition([after], 'second')];
  const reading = { gauges: gaugeBook(), dimensionsOf: () => undefined };
  return slipModel(compareEditions(old, now, reading), null, {
    paper: 'half-letter',
    before: old,
    after: now,
    labels: { before: 'a', after: 'b' },
    capHeights: new Map(),
  });
}

describe('which edition has it right', () => {
  const settings = sheet.settings.map((each) => ({ ...each, values: { '': '7/32 in' } }));
  const names = (one: Partial<EditionSnapshot>, two: Partial<EditionSnapshot>) => {
    const old = { ...edition([sheet], 'first'), ...one };
    const now = { ...edition([{ ...sheet, settings, revision: 2 }], 'first'), ...two };
    const reading = { gauges: gaugeBook(), dimensionsOf: () => undefined };
    const changes = compareEditions(old, now, reading);
    const labels = { before: 'v1', after: 'new edition' };
    const model = slipModel(changes, null, {
      paper: 'half-letter',
      before: old,
      after: now,
      labels,
      capHeights: new Map(),
    });
    return [model.before, model.after];
  };

  test.each<[string, Partial<EditionSnapshot>, Partial<EditionSnapshot>, string, string]>([
    ['one name', {}, {}, 'first edition', 'corrected first edition'],
    [
      'one name, spelled otherwise',
      {},
      { edition: 'First ' },
      'first edition',
      'corrected First  edition',
    ],
    [
      'one name and one date',
      { date: '2026-01-01' },
      { date: '2026-01-01' },
      'first edition, 2026-01-01',
      'corrected first edition, 2026-01-01',
    ],
    [
      'one date only',
      {},
      { date: '2026-01-01' },
      'first edition',
      'corrected first edition, 2026-01-01',
    ],
    [
      'two dates',
      { date: '2026-01-01' },
      { date: '2026-02-01' },
      'first edition, 2026-01-01',
      'first edition, 2026-02-01',
    ],
    ['two names', {}, { edition: 'second' }, 'first edition', 'second edition'],
    ['no name', { edition: null }, { edition: null }, 'v1', 'new edition'],
  ])('%s', (_, one, two, before, after) => {
    expect(names(one, two)).toEqual([before, after]);
  });
});

const operation = sheet.operations[0] as SheetSnapshot['operations'][number];

describe('an errata slip', () => {
  test('tells a changed figure so that an old copy can be corrected', () => {
    const settings = sheet.settings.map((each) => ({ ...each, values: { '': '7/32 in' } }));
    const model = slip({ ...sheet, settings, revision: 2 });
    expect(model.before).toBe('first edition');
    expect(model.units[0]).toMatchObject({ title: 'Orlo F27', revision: 'revision 1 to 2' });
    const [line] = model.units[0]?.lines ?? [];
    expect(line?.html.replace(/<[^>]*>/g, '')).toMatch(/^for .*13.*64.*in read .*7.*32.*in$/);
    expect(line?.size).toBe('0.016 in more');
  });

  test('prints a step as its reader has it, and nothing of a stranger as HTML', () => {
    const steps = operation.steps.slice(0, 1);
    const [line] = slip({ ...sheet, operations: [{ ...operation, steps }] }).units[0]?.lines ?? [];
    expect(line?.html).toMatch(
      /^strike out the step <q>Measure .*64.*, &lt;b&gt;there&lt;\/b&gt;\.<\/q>$/,
    );
    expect(line?.html).not.toContain('<b>there');
  });

  test('tells a signal word by itself', () => {
    const cautions = operation.cautions.map((each) => ({ ...each, signal: 'warning' as const }));
    const [line] =
      slip({ ...sheet, operations: [{ ...operation, cautions }] }).units[0]?.lines ?? [];
    expect(line?.html).toBe('for <q>CAUTION (solvent)</q> read <q>WARNING (solvent)</q>');
  });

  test('leaves out rewording and counts it', () => {
    const steps = operation.steps.map((step, i) =>
      i === 0 ? { text: 'Turn the cover gently over. :state[cover inverted]' } : step,
    );
    const model = slip({ ...sheet, operations: [{ ...operation, steps }] });
    expect(model.units).toEqual([]);
    expect(model.rest).toBe('1 more change is of wording, sources or notes alone.');
  });
});

test.each([
  ['Back it off. :state[stop-screw backed-off]', 'Back it off.'],
  ['Measure :value[float-level].', 'Measure 13/64 in.'],
  ['Measure :value[fuel-level].', 'Measure fuel level.'],
  ['See [the picture](pictures/a.svg), `never` **twice**.', 'See the picture, never twice.'],
])('plain: %s', (text, plain) => {
  expect(plainStep(text, sheet)).toBe(plain);
});
