import { describe, expect, test } from 'vitest';
import type { CheckContext } from '../../src/checks/index.ts';
import { examine } from '../../src/checks/list.ts';
import { compareSheets } from '../../src/compare/compare.ts';
import { sheetSnapshot } from '../../src/compare/index.ts';
import { assessRecord, readRecord, verdictWord } from '../../src/conformance/index.ts';
import { gaugeBook } from '../../src/gauges/index.ts';
import { draftSheet } from '../../src/import/draft-sheet.ts';
import { builtInKinds } from '../../src/kinds/index.ts';
import type { Kind } from '../../src/kinds/model.ts';
import { cardModel } from '../../src/press/card/model.ts';
import { capHeightsByFamily } from '../../src/press/html/font-faces.ts';
import { recordPlace } from '../../src/project/record-place.ts';
import { builtInTemplates } from '../press/stand.ts';

const kinds = builtInKinds();
const gauges = gaugeBook();
const context: CheckContext = { kinds, gauges, wireGauge: 'imperial', picture: null };

function kindOf(name: string): Kind {
  const kind = kinds.get(name);
  if (!kind) throw new Error(`there is no kind ${name}`);
  return kind;
}

// What papers print of them, with an ordinary figure, one that a slip would make of it, and the words of
// a paper. Common practice, no source.
const printed: readonly (readonly [string, string, string, string | null, string])[] = [
  ['carburetor', 'main-needle', '1-1/2 turns out', '15 turns out', 'Main adjusting needle'],
  ['carburetor', 'needle-jet', '2.65 mm', '26.5 mm', 'Needle jet'],
  ['carburetor', 'slide-cutaway', '2.5 mm', '25 mm', 'Throttle slide cutaway'],
  ['carburetor', 'emulsion-tube', '5 mm', '50 mm', 'Diffuser tube'],
  ['carburetor', 'auxiliary-venturi', '4.5 mm', '45 mm', 'Booster venturi'],
  ['carburetor', 'starter-jet', '1.20 mm', '12.0 mm', 'Starter petrol jet'],
  ['carburetor', 'power-valve-vacuum', '6 inHg', '60 inHg', 'Economizer opening vacuum'],
  ['carburetor', 'piston-spring', '4-1/2 oz', '45 lb', 'Suction piston spring'],
  ['carburetor', 'lever-clearance', '0.012 in', '1.2 in', 'Linkage clearance'],
  ['carburetor', 'cable-slack', '1/16 in', '1 in', 'Throttle cable free play'],
  ['carburetor', 'idle-co', '3 ± 0.5 % CO', '30 % CO', 'CO content'],
  ['ignition-distributor', 'air-gap', '0.2 to 0.4 mm', '4 mm', 'Reluctor gap'],
  [
    'ignition-distributor',
    'pickup-resistance',
    '600 ± 50 ohms',
    '60 kilohms',
    'Signal coil resistance',
  ],
  ['ignition-distributor', 'coil-primary', '3.2 ohms', '32 ohms', 'Primary resistance'],
  ['ignition-distributor', 'coil-secondary', '8.5 kΩ', '8.5 Ω', 'Secondary winding'],
  ['ignition-distributor', 'ballast-resistance', '1.5 ohms', '15 ohms', 'Ballast'],
  ['ignition-distributor', 'insulation', '50 MΩ min', '50 ohms', 'Cap insulation'],
  ['ignition-distributor', 'lead-resistance', '5 to 10 kΩ', '500 kΩ', 'Suppressor'],
  ['ignition-distributor', 'firing-order', '1-5-3-6-2-4', null, 'Order of firing'],
  ['ignition-distributor', 'octane-setting', '5°', '50°', 'Vernier setting'],
  ['ignition-distributor', 'plug-reach', '3/4 in', '7.5 in', 'Reach of the plug'],
];

const features = {
  carburetor: '[two-barrel, semi-downdraft, power-valve, starter-device]',
  'ignition-distributor': '[six-lobe, single-points]',
};

function sheetWith(kind: string, settings: string): string {
  const all = features[kind as keyof typeof features];
  return `---
gaugeleaf: 1
sheet: x
title: Orlo K14
unit: { kind: ${kind}, maker: Orlo, model: K14, features: ${all} }
revision: 1
date: 2026-11-01
status: proof
sources: { s1: { title: Measured, kind: measured, units: 3 } }
settings:
${settings}
---

# Orlo K14
`;
}

const examined = (text: string) => examine(text, 'sheets/x.md', context);
const entry = (name: string, value: string) =>
  `  ${name}: { value: ${value}, at: pump lever, from: s1 }`;

describe.each(printed)('%s: %s', (kindName, name, usual, slipped, words) => {
  const kind = kindOf(kindName);
  const setting = kind.settings.get(name);

  test('has its words, a maker, an explanation, and marks its source by the file', () => {
    expect(kind.settingNamed(words)?.name).toBe(name);
    const makers = [...kind.operations.values()].filter((each) => each.settings.includes(name));
    expect(makers).toHaveLength(1);
    expect(makers[0]?.steps.some((step) => /\{/.test(step))).toBe(true);
    expect(setting?.explain).toMatch(/^[A-Z].{30,}\.$/s);
    expect(setting?.aliases.length).toBeGreaterThanOrEqual(3);
  });

  test('an ordinary figure has no finding of sizes, and a slipped one has', () => {
    const wrong = (value: string) =>
      examined(sheetWith(kindName, entry(name, value)))
        .findings.filter(({ check }) => /^(size|dimension|condition|usual)/.test(check))
        .map(({ check }) => check);
    expect(wrong(usual)).toEqual([]);
    if (slipped !== null) expect(wrong(slipped)).toContain('size-unusual');
  });

  test('a draft that is not asked for it has none of it', () => {
    const own =
      kindName === 'carburetor' ? ['single-barrel', 'downdraft'] : ['four-lobe', 'single-points'];
    const plain = draftSheet({
      kind,
      maker: 'Orlo',
      model: 'K14',
      features: own,
      id: 'orlo-k14',
      date: '2026-11-01',
    });
    expect(plain).not.toContain(`:value[${name}]`);
  });

  test('a card prints it as it is written', () => {
    const { sheet, findings } = examined(sheetWith(kindName, entry(name, usual)));
    const model = cardModel(sheet, findings, null, {
      paper: 'letter',
      draft: false,
      picture: () => null,
      capHeights: capHeightsByFamily(builtInTemplates()),
      readings: null,
    } as never);
    const rows = JSON.stringify(model.settings);
    expect(rows).toContain(setting?.label);
    expect(rows.replace(/<[^>]*>|&nbsp;|\u00a0|\u2009/g, ' ')).toContain(usual.split(/[ -]/)[0]);
  });
});

describe('a record', () => {
  const judged = (kind: string, settings: string, reading: string) => {
    const { sheet } = examined(sheetWith(kind, settings));
    const text = `gaugeleaf-record: 1\nsheet: x\nserial: 1\nby: A\ndate: 2026-11-14\nsettings:\n  ${reading}\n`;
    const read = readRecord(text, gauges);
    if (!read.record) throw new Error(read.faults.map(({ message }) => message).join());
    const place = recordPlace(read.record, kindOf(kind), { gauges });
    const { entries, faults } = assessRecord(read.record, sheet, 'guarded', { gauges }, place);
    return [
      ...entries.map(({ left }) => (left === null ? 'none' : verdictWord(left))),
      ...faults.map(({ message }) => message),
    ];
  };

  test.each([
    ['firing-order', '1-5-3-6-2-4', '153624', 'conforms'],
    ['firing-order', '1-5-3-6-2-4', '5, 3, 6, 2, 4, 1', 'conforms'],
    ['firing-order', '1-5-3-6-2-4', '1-4-2-6-3-5', 'does not conform'],
    ['insulation', '50 megohms min', '{ left: 200 MΩ, uncertainty: 10 MΩ }', 'conforms'],
    ['insulation', '50 megohms min', '{ left: 900 kΩ, uncertainty: 10 kΩ }', 'does not conform'],
    ['pickup-resistance', '500 to 700 ohms', '{ left: 0.69 kΩ, uncertainty: 0.05 kΩ }', 'unproven'],
    ['air-gap', '0.2 to 0.4 mm', '{ left: 0.30 mm, uncertainty: 0.02 mm }', 'conforms'],
  ])('%s %s read as %s: %s', (name, value, reading, verdict) => {
    expect(
      judged(
        'ignition-distributor',
        entry(name, value),
        `${name}: ${reading.startsWith('{') ? reading : `{ left: "${reading}" }`}`,
      ),
    ).toEqual([verdict]);
  });

  test.each([
    ['idle-co', '3 ± 0.5 % CO', '{ left: 3.10 %, uncertainty: 0.1 % }', 'conforms'],
    ['idle-co', '4.5 % CO max', '{ left: 6.0 % CO, uncertainty: 0.2 % }', 'does not conform'],
    ['cable-slack', '1.0 to 2.0 mm', '{ left: 1.50 mm, uncertainty: 0.1 mm }', 'conforms'],
  ])('%s %s read as %s: %s', (name, value, reading, verdict) => {
    expect(judged('carburetor', entry(name, value), `${name}: ${reading}`)).toEqual([verdict]);
  });
});

describe('two editions', () => {
  const changes = (kind: string, name: string, one: string, two: string) => {
    const snapshot = (value: string) =>
      sheetSnapshot(examined(sheetWith(kind, entry(name, value))).sheet);
    const reading = {
      gauges,
      dimensionsOf: (each: string) => kindOf(kind).settings.get(each)?.dimensions,
    };
    return compareSheets(snapshot(one), snapshot(two), reading).changes.length;
  };

  test.each([
    ['ignition-distributor', 'firing-order', '1-5-3-6-2-4', '1-4-2-6-3-5', 1],
    ['ignition-distributor', 'insulation', '50 MΩ', '5 MΩ', 1],
    ['carburetor', 'idle-co', '3 % CO', '3.5 % CO', 1],
    ['carburetor', 'main-needle', '1-1/2 turns out', '1-1/2 turns out', 0],
  ])('%s %s: %s, then %s', (kind, name, one, two, count) => {
    expect(changes(kind, name, one, two)).toBe(count);
  });
});

describe('features', () => {
  test.each([
    ['ignition-distributor', ['one-lobe', 'breakerless']],
    ['ignition-distributor', ['five-lobe', 'breakerless', 'vacuum-advance']],
    ['ignition-distributor', ['nine-lobe', 'single-points']],
    ['carburetor', ['three-barrel', 'semi-downdraft', 'pump']],
    ['carburetor', ['single-barrel', 'semi-downdraft', 'starter-device']],
  ])('a draft of %s with %s has no finding but its blanks', (name, own) => {
    const text = draftSheet({
      kind: kindOf(name),
      maker: 'Orlo',
      model: 'K14',
      features: own,
      id: 'orlo-k14',
      date: '2026-11-01',
    });
    const { findings } = examine(text, 'sheets/orlo-k14.md', context);
    expect(findings.filter(({ check }) => check !== 'blank-to-fill')).toEqual([]);
    if (own.includes('breakerless')) {
      expect(text).toContain(':value[air-gap]');
      expect(text).not.toContain('points-gap');
    }
  });

  test('twelve lobes at most, each with its own number', () => {
    const counts = kindOf('ignition-distributor').relations.counts.get('lobes');
    expect([...(counts?.values() ?? [])].sort((a, b) => a - b)).toEqual(
      [...Array(12)].map((_, i) => i + 1),
    );
  });
});
