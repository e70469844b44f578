import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { compareSheets } from '../../src/compare/compare.ts';
import { compareEditions, type SizeReading, sheetSnapshot } from '../../src/compare/index.ts';
import type { ChangeKind, SheetSnapshot } from '../../src/compare/model.ts';
import { longestRising, pairUp } from '../../src/compare/pairing.ts';
import { gaugeBook } from '../../src/gauges/index.ts';
import { readSheet } from '../../src/sheet/index.ts';
import { demoContext, demoSheets } from '../order/demo-sheets.ts';
import { runs } from '../suite/part.ts';

const kind = demoContext.kinds.get('carburetor');
const reading: SizeReading = {
  gauges: gaugeBook(),
  dimensionsOf: (name) => kind?.settings.get(name)?.dimensions,
};
const snapshots = demoSheets.map(([name, text]) => {
  const sheet = readSheet(text, name, demoContext);
  return sheetSnapshot(sheet);
});

type Mutable = { -readonly [K in keyof SheetSnapshot]: SheetSnapshot[K] };

/** A sheet with one thing done to it, and what comparing must call it; null where it cannot be done. */
type Edit = (
  sheet: SheetSnapshot,
  pick: (count: number) => number,
) => { readonly sheet: SheetSnapshot; readonly kind: ChangeKind; readonly about: string } | null;

const edits: Readonly<Record<string, Edit>> = {
  'one digit of a value': (sheet, pick) => {
    const settings = sheet.settings.filter(({ values }) => /\d/.test(values[''] ?? ''));
    const setting = settings[pick(settings.length)];
    if (!setting) return null;
    const text = setting.values[''] ?? '';
    const places = [...text].flatMap((letter, i) => (/\d/.test(letter) ? [i] : []));
    const at = places[pick(places.length)] as number;
    const digit = String((Number(text[at]) + 1 + pick(8)) % 10);
    const value = text.slice(0, at) + digit + text.slice(at + 1);
    const changed = { ...setting, values: { ...setting.values, '': value } };
    return {
      sheet: replace(sheet, setting, changed),
      kind: 'setting-changed',
      about: setting.name,
    };
  },
  'a setting dropped': (sheet, pick) => {
    const setting = sheet.settings[pick(sheet.settings.length)];
    if (!setting) return null;
    const settings = sheet.settings.filter((each) => each !== setting);
    return { sheet: { ...sheet, settings }, kind: 'setting-dropped', about: setting.name };
  },
  'a condition of measuring': (sheet, pick) => {
    const settings = sheet.settings.filter(({ said }) => said.at !== undefined);
    const setting = settings[pick(settings.length)];
    if (!setting) return null;
    const changed = {
      ...setting,
      said: { ...setting.said, at: `${setting.said.at}, not the rim` },
    };
    return {
      sheet: replace(sheet, setting, changed),
      kind: 'condition-changed',
      about: setting.name,
    };
  },
  'another source': (sheet, pick) => {
    const setting = sheet.settings[pick(sheet.settings.length)];
    if (!setting) return null;
    const changed = { ...setting, from: [...setting.from, 'b99 p. 7'] };
    return { sheet: replace(sheet, setting, changed), kind: 'source-changed', about: setting.name };
  },
  'a step dropped': (sheet, pick) =>
    withSteps(sheet, pick, (steps) => {
      const at = pick(steps.length);
      return { steps: steps.filter((_, i) => i !== at), kind: 'step-dropped' };
    }),
  'a step added': (sheet, pick) =>
    withSteps(sheet, pick, (steps) => {
      const at = pick(steps.length + 1);
      const step = { text: 'Zinc paste belongs nowhere near this brass nipple.' };
      return { steps: [...steps.slice(0, at), step, ...steps.slice(at)], kind: 'step-added' };
    }),
  'a step moved': (sheet, pick) =>
    withSteps(sheet, pick, (steps) => {
      if (new Set(steps.map(({ text }) => text)).size < Math.max(steps.length, 3)) return null;
      // From one end to the other: the fewest moves that explain it are that one.
      const [first, ...rest] = steps;
      return first ? { steps: [...rest, first], kind: 'step-moved' } : null;
    }),
  'a step reworded': (sheet, pick) =>
    withSteps(sheet, pick, (steps) => {
      const at = pick(steps.length);
      return {
        steps: steps.map((step, i) => (i === at ? { text: `${step.text} Gently does it.` } : step)),
        kind: 'step-reworded',
      };
    }),
  'a step told not to': (sheet, pick) =>
    withSteps(sheet, pick, (steps) => {
      const at = pick(steps.length);
      return {
        steps: steps.map((step, i) => (i === at ? { text: `Do not ${step.text}` } : step)),
        kind: 'step-changed',
      };
    }),
  'a caution dropped': (sheet, pick) => {
    const operations = sheet.operations.filter(({ cautions }) => cautions.length > 0);
    const operation = operations[pick(operations.length)];
    if (!operation) return null;
    const at = pick(operation.cautions.length);
    const cautions = operation.cautions.filter((_, i) => i !== at);
    return {
      sheet: swap(sheet, operation, { ...operation, cautions }),
      kind: 'caution-dropped',
      about: operation.name,
    };
  },
  'a milder signal word': (sheet, pick) => {
    const operations = sheet.operations.filter(({ cautions }) =>
      cautions.some(({ signal }) => signal === 'warning'),
    );
    const operation = operations[pick(operations.length)];
    if (!operation) return null;
    const at = operation.cautions.findIndex(({ signal }) => signal === 'warning');
    const cautions = operation.cautions.map((caution, i) =>
      i === at ? { ...caution, signal: 'notice' as const } : caution,
    );
    return {
      sheet: swap(sheet, operation, { ...operation, cautions }),
      kind: 'caution-changed',
      about: operation.name,
    };
  },
  'an operation moved': (sheet) => {
    const [first, ...rest] = sheet.operations;
    if (!first || rest.length < 2) return null;
    if (rest.some(({ name }) => name === first.name)) return null;
    return {
      sheet: { ...sheet, operations: [...rest, first] },
      kind: 'operation-moved',
      about: first.name,
    };
  },
  'an operation dropped': (sheet, pick) => {
    const counts = new Map<string, number>();
    for (const { name } of sheet.operations) counts.set(name, (counts.get(name) ?? 0) + 1);
    const single = sheet.operations.filter(
      ({ name, cautions }) => counts.get(name) === 1 && cautions.length === 0,
    );
    const operation = single[pick(single.length)];
    if (!operation) return null;
    const operations = sheet.operations.filter((each) => each !== operation);
    return { sheet: { ...sheet, operations }, kind: 'operation-dropped', about: operation.name };
  },
  'the throttle bore': (sheet) => {
    const bore = sheet.unit['throttle-bore'];
    if (bore === undefined) return null;
    return {
      sheet: { ...sheet, unit: { ...sheet.unit, 'throttle-bore': `9${bore}` } },
      kind: 'unit-changed',
      about: 'throttle-bore',
    };
  },
};

function replace(
  sheet: SheetSnapshot,
  setting: SheetSnapshot['settings'][number],
  by: SheetSnapshot['settings'][number],
): SheetSnapshot {
  return { ...sheet, settings: sheet.settings.map((each) => (each === setting ? by : each)) };
}

function swap(
  sheet: SheetSnapshot,
  operation: SheetSnapshot['operations'][number],
  by: SheetSnapshot['operations'][number],
): SheetSnapshot {
  return { ...sheet, operations: sheet.operations.map((each) => (each === operation ? by : each)) };
}

function withSteps(
  sheet: SheetSnapshot,
  pick: (count: number) => number,
  edit: (
    steps: SheetSnapshot['operations'][number]['steps'],
  ) => { steps: SheetSnapshot['operations'][number]['steps']; kind: ChangeKind } | null,
): ReturnType<Edit> {
  const operations = sheet.operations.filter(({ steps }) => steps.length > 1);
  const operation = operations[pick(operations.length)];
  const edited = operation ? edit(operation.steps) : null;
  if (!operation || !edited) return null;
  return {
    sheet: swap(sheet, operation, { ...operation, steps: edited.steps }),
    kind: edited.kind,
    about: operation.name,
  };
}

describe('one edit is named, and nothing else', () => {
  for (const [name, edit] of Object.entries(edits)) {
    test(name, () => {
      let done = 0;
      fc.assert(
        fc.property(fc.constantFrom(...snapshots), fc.infiniteStream(fc.nat()), (sheet, stream) => {
          const pick = (count: number) =>
            count === 0 ? 0 : (stream.next().value as number) % count;
          const edited = edit(sheet, pick);
          if (!edited) return;
          done++;
          const { changes } = compareSheets(sheet, edited.sheet, reading);
          expect(changes.map(({ kind: found, about }) => `${found} ${about}`)).toEqual([
            `${edited.kind} ${edited.about}`,
          ]);
        }),
        { numRuns: runs(120), seed: 7 },
      );
      expect(done).toBeGreaterThan(runs(20));
    });
  }
});

describe('an edition', () => {
  const edition = (sheets: readonly SheetSnapshot[]) => ({
    title: 'Sheets',
    edition: null,
    date: null,
    sheets,
  });

  test('does not differ from itself, nor from its sheets in another order', () => {
    const turned = [...snapshots].reverse();
    const found = compareEditions(edition(snapshots), edition(turned), reading);
    expect(found.sheets).toEqual([]);
    expect(found.unchanged).toBe(snapshots.length);
  });

  test('names what was added and what was dropped', () => {
    const [first, second, third] = snapshots as [SheetSnapshot, SheetSnapshot, SheetSnapshot];
    const { sheets } = compareEditions(edition([first, second]), edition([second, third]), reading);
    expect(sheets.map(({ id, changes }) => [id, changes[0]?.kind])).toEqual([
      [third.id, 'sheet-added'],
      [first.id, 'sheet-dropped'],
    ]);
  });

  test('survives the way through JSON', () => {
    const kept = JSON.parse(JSON.stringify(edition(snapshots)));
    expect(compareEditions(kept, edition(snapshots), reading).sheets).toEqual([]);
  });
});

describe('a setting', () => {
  const base = snapshots.find(({ id }) => id === 'orlo-t71-wexcombe-six') as SheetSnapshot;
  const changed = (name: string, value: string, revision = base.revision) => {
    const settings = base.settings.map((setting) =>
      setting.name === name ? { ...setting, values: { '': value } } : setting,
    );
    const sheet: Mutable = { ...base, settings, revision };
    return compareSheets(base, sheet, reading);
  };

  test.each([
    // 13/64 ± 1/64 in: the tolerance is 1/32 in wide.
    [
      'float-level',
      '14/64 ± 1/64 in',
      'setting-changed',
      '0.016 in more, 0.5 of the old tolerance',
    ],
    ['float-level', '13/64 ± 1/32 in', 'setting-changed', 'tolerance wider: 2.0 of the old'],
    ['float-level', '0.203125 ± 0.015625 in', 'setting-rewritten', null],
    ['unloader', 'No. 30 drill', 'setting-changed', '0.008 in less'],
    ['unloader', '#29 drill', 'setting-rewritten', null],
    ['idle-speed', '550 ± 25 rpm', 'setting-changed', '50 rpm more, 1.0 of the old tolerance'],
    ['choke-cover-index', '1 notch lean', 'setting-changed', '2 notches leaner'],
    ['float-alignment', 'flush', 'setting-changed', null],
  ])('%s %s: %s', (name, value, kind, size) => {
    const { changes } = changed(name, value);
    expect(changes.map((change) => [change.kind, change.size])).toEqual([[kind, size]]);
  });

  test('changed under the same revision is told', () => {
    expect(changed('idle-speed', '550 ± 25 rpm').unraised).toBe(true);
    expect(changed('idle-speed', '550 ± 25 rpm', (base.revision ?? 0) + 1).unraised).toBe(false);
  });
});

describe('pairing', () => {
  test('moves the fewest', () => {
    fc.assert(
      fc.property(fc.uniqueArray(fc.nat(30), { maxLength: 9 }), (values) => {
        const run = longestRising(values);
        let best = 0;
        for (let mask = 0; mask < 2 ** values.length; mask++) {
          const kept = values.filter((_, i) => mask & (1 << i));
          if (kept.every((value, i) => i === 0 || value > (kept[i - 1] as number))) {
            best = Math.max(best, kept.length);
          }
        }
        expect(run.size).toBe(best);
      }),
      { numRuns: runs(200) },
    );
  });

  test('pairs every item once and keeps count', () => {
    const words = fc.array(
      fc.constantFrom('bend the arm', 'bend the tab', 'fit a gasket', 'look'),
      {
        maxLength: 8,
      },
    );
    fc.assert(
      fc.property(words, words, (before, after) => {
        const { pairs, dropped, added } = pairUp(before, after);
        expect(pairs.length + dropped.length).toBe(before.length);
        expect(pairs.length + added.length).toBe(after.length);
        expect(new Set(pairs.map((pair) => pair.before)).size).toBe(pairs.length);
      }),
    );
  });
});

test('a snapshot holds the words of the sheet', () => {
  const text = readFileSync('sheets/orlo-t71-wexcombe-six.md', 'utf8').replace(/\s+/g, ' ');
  const sheet = snapshots.find(({ id }) => id === 'orlo-t71-wexcombe-six') as SheetSnapshot;
  for (const operation of sheet.operations) {
    expect(text).toContain(operation.heading);
    for (const step of operation.steps) expect(text).toContain(step.text);
    for (const caution of operation.cautions) expect(text).toContain(caution.text);
    for (const { text: step } of operation.steps) expect(operation.prose).not.toContain(step);
  }
  expect(sheet.opening).toMatch(/^# Orlo T71 two-barrel The Orlo T71 is/);
  expect(sheet.operations.flatMap(({ cautions }) => cautions)).toHaveLength(10);
});
