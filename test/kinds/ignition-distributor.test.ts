import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { CheckContext, Finding } from '../../src/checks/index.ts';
import { examine } from '../../src/checks/list.ts';
import { gaugeBook } from '../../src/gauges/index.ts';
import { kinds } from '../../src/generated/kinds.ts';
import { draftSheet } from '../../src/import/draft-sheet.ts';
import { kindFaults } from '../../src/kinds/faults.ts';
import { builtInKinds } from '../../src/kinds/index.ts';
import type { Kind, Stage } from '../../src/kinds/model.ts';
import { agree, readStatement } from '../../src/quantity/index.ts';
import { formulaNames } from '../../src/relations/index.ts';
import { runs } from '../suite/part.ts';

function distributor(): Kind {
  const found = builtInKinds().get('ignition-distributor');
  if (!found) throw new Error('there is no kind ignition-distributor');
  return found;
}

const kind = distributor();
const gauges = gaugeBook();
const context: CheckContext = {
  gauges,
  kinds: builtInKinds(),
  wireGauge: 'imperial',
  picture: null,
};

function read(text: string) {
  const reading = readStatement(text, { gauges });
  if (!reading.ok) throw new Error(reading.problem.message);
  return reading.statement;
}

describe('vocabulary', () => {
  test('nothing in it contradicts itself', () => {
    for (const data of Object.values(kinds).map((each) => each()))
      expect(kindFaults(data)).toEqual([]);
  });

  test('a relation that names nothing is told', () => {
    const data = kinds[kind.name]?.();
    if (!data) throw new Error('no data');
    const counts = { lobes: { 'thirteen-lobe': 13 } };
    const relations = [
      {
        relation: 'dwell-shares',
        of: 'dwel',
        quantities: { dwell: { setting: 'dwell' } },
      },
      {
        relation: 'dwell-share',
        each: ['advance-most'],
        quantities: {
          dwell: { setting: '{each}', unit: 'shaft-diameter' },
          lobes: { count: 'lobe' },
          shar: { unit: 'shaft-diametr' },
        },
      },
      {
        relation: 'even-lobes',
        quantities: { lobes: { fixed: '4' }, spacing: { thread: 'clamp', key: 'travel' } },
      },
    ];
    const faults = kindFaults({ ...data, counts, relations }, formulaNames());
    expect(faults.map(({ path, message }) => `${path.join('.')}: ${message}`)).toEqual([
      'counts.lobes.thirteen-lobe: this kind has no feature `thirteen-lobe`',
      'relations.0.of: this kind has no setting `dwel`',
      'relations.1.each.0: this kind has no setting `advance-most`',
      'relations.1.quantities.shar.unit: this kind has no size of the unit `shaft-diametr`',
      'relations.1.quantities.lobes.count: this kind has no count `lobe`',
      'relations.0.relation: there is no formula `dwell-shares`',
      'relations.1.quantities.shar: `dwell-share` has no quantity `shar`',
      'relations.1.quantities: `dwell-share` does not say where `share` stands',
      'relations.1.quantities.dwell: a quantity stands in one place, and this one names `setting` and `unit`',
      'relations.2: a relation belongs to one setting under `of`, or to several under `each`',
      'relations.2.quantities.lobes.fixed: a fixed figure needs its reason',
      'relations.2.quantities.spacing.key: `key` says nothing without `setting`',
    ]);
  });

  // The trade's own names. Common practice, no source.
  test.each([
    'Points gap',
    'Contact breaker gap',
    'Dwell',
    'Cam angle',
    'Dwell in percent',
    'Firing interval',
    'Condenser',
    'Breaker spring tension',
    'Breaker alignment',
    'Rotor gap',
    'Shaft end play',
    'Start of centrifugal advance',
    'Maximum advance',
    'Maximum vacuum advance',
    'Static timing',
    'Ignition timing',
    'Spark plug gap',
  ])('%s has a name, and an operation makes it', (name) => {
    const setting = kind.settingNamed(name);
    expect(setting, name).not.toBeNull();
    const makers = [...kind.operations.values()].filter(({ settings }) =>
      settings.includes(setting?.name ?? ''),
    );
    expect(makers.length).toBeGreaterThan(0);
  });

  test('features that exclude one another do so both ways', () => {
    for (const feature of kind.features.values())
      for (const other of feature.excludes)
        expect(kind.features.get(other)?.excludes, `${other} excludes`).toContain(feature.name);
  });

  test('every number of lobes among the features is a number in its relations', () => {
    for (const name of kind.oneOf[0] ?? [])
      expect(kind.relations.counts.get('lobes')?.get(name)).toBeGreaterThan(0);
    expect(kind.relations.counts.get('lobes')?.size).toBe(kind.oneOf[0]?.length);
  });

  test('every condition is read as words', () => {
    for (const setting of kind.settings.values())
      for (const words of setting.conditions)
        expect(
          readStatement(words, { gauges, expect: setting.dimensions }).ok,
          `${setting.name}: ${words}`,
        ).toBe(true);
  });

  test('stages never fall back in the file, and `after` agrees with its order', () => {
    const stages: readonly Stage[] = ['strip', 'bench', 'before-start', 'running', 'road'];
    const order = [...kind.operations.keys()];
    let reached = 0;
    for (const [name, { after, stage }] of kind.operations) {
      for (const { name: earlier } of after)
        expect(order.indexOf(earlier), `${earlier} before ${name}`).toBeLessThan(
          order.indexOf(name),
        );
      if (stage === 'any') continue;
      expect(stages.indexOf(stage), name).toBeGreaterThanOrEqual(reached);
      reached = stages.indexOf(stage);
    }
  });

  // Common practice, no source: a wider gap moves dwell and timing, so both come after it.
  test.each([
    ['breaker-alignment', 'points-gap'],
    ['breaker-spring-tension', 'points-gap'],
    ['points-gap', 'dwell'],
    ['points-gap', 'static-timing'],
    ['static-timing', 'first-start'],
    ['dwell', 'timing'],
    ['points-gap', 'timing'],
    ['timing', 'centrifugal-advance'],
    ['timing', 'vacuum-advance'],
    ['timing', 'road-test'],
  ])('%s comes before %s', (earlier, later) => {
    expect([...(kind.operations.get(later)?.before.keys() ?? [])]).toContain(earlier);
  });

  test('the points disturb what is read from them', () => {
    expect(kind.operations.get('points-gap')?.disturbs.map(({ name }) => name)).toEqual(
      expect.arrayContaining(['dwell', 'static-timing', 'timing']),
    );
  });

  // ASD-STE100 issue 9: at most 20 words in an instruction.
  test('model steps are short, and print what their operation makes', () => {
    for (const operation of kind.operations.values()) {
      if (operation.stage === 'any') continue;
      expect(operation.steps.length, operation.name).toBeGreaterThan(0);
      for (const setting of operation.settings) {
        const slot = operation.settings.length === 1 ? '{setting}' : `{${setting}}`;
        expect(operation.steps.join('\n'), operation.name).toContain(slot);
      }
      for (const step of operation.steps) {
        const words = step.replace(/:state\[[^\]]*\]/g, '').trim();
        expect(words.split(/\s+/).length, step).toBeLessThanOrEqual(20);
        expect(words).toMatch(/^[A-Z].*\.$/);
      }
    }
  });

  test('each hazard is met, in three sentences; what runs the engine meets carbon monoxide', () => {
    const met = new Set([...kind.operations.values()].flatMap(({ hazards }) => hazards));
    expect([...met].sort()).toEqual([...kind.hazards.keys()].sort());
    for (const { name, message } of kind.hazards.values())
      for (const part of [message.hazard, message.consequence, message.avoid])
        expect(part, name).toMatch(/^[A-Z].{20,}\.$/s);
    for (const { name, stage, hazards } of kind.operations.values())
      if (stage === 'running') expect(hazards, name).toContain('carbon-monoxide');
    expect(kind.hazards.get('carbon-monoxide')?.signal).toBe('danger');
  });

  // A slipped point or digit. Common practice, no source.
  test.each([
    ['points-gap', '0.015 in', true],
    ['points-gap', '0.15 in', false],
    ['dwell', '54°', true],
    ['dwell', '5.4°', false],
    ['condenser', '0.22 µF', true],
    ['condenser', '2.2 µF', false],
    ['breaker-spring-tension', '20 oz', true],
    ['plug-gap', '0.25 in', false],
    ['timing', '4° BTDC', true],
    ['timing', '40° BTDC', false],
  ])('%s of %s is ordinary: %s', (name, text, isOrdinary) => {
    const { dimension, nominal } = read(text);
    const range = kind.settings.get(name)?.usual.find((each) => each.dimension === dimension);
    const [low, high] = [range?.low.nominal?.base, range?.high.nominal?.base];
    if (!low || !high || !nominal) throw new Error(`${name} has no range for ${text}`);
    expect(nominal.base.compare(low) >= 0 && nominal.base.compare(high) <= 0).toBe(isOrdinary);
  });
});

describe('the capacity of a condenser', () => {
  // SI Brochure, 9th edition: µ is a millionth. `mfd` for it is common practice, no source.
  test.each(['0.22 µF', '0.22 μF', '0.22 uF', '0.22 mfd', '.22 MFD', '0.22 microfarad'])(
    '%s is one size',
    (text) => {
      const statement = read(text);
      expect(statement.dimension).toBe('capacitance');
      expect(agree(statement, read('0.22 µF'), { gauges }).verdict).toMatch(/same|agrees/);
    },
  );
});

describe('lobes and dwell', () => {
  test('a share worked by floating point agrees, and one that is a degree out does not', () => {
    const features = [...(kind.relations.counts.get('lobes') ?? [])];
    fc.assert(
      fc.property(fc.nat(features.length - 1), fc.integer({ min: 40, max: 90 }), (pick, share) => {
        const [feature, lobes] = features[pick] as [string, number];
        const dwell = ((share / 100) * 360) / lobes;
        const says = (percent: number) =>
          found(sheetWith(feature, dwell.toFixed(3), percent.toFixed(1)), 'worked-disagrees');
        expect(says(share)).toEqual([]);
        expect(says(share + (100 * lobes) / 360)).toHaveLength(1);
      }),
      { numRuns: runs(40) },
    );
  });
});

function sheetWith(feature: string, dwell: string, percent: string): string {
  return `---
gaugeleaf: 1
sheet: orlo-k14
title: Orlo K14
unit: { kind: ignition-distributor, maker: Orlo, model: K14, features: [${feature}, single-points] }
settings:
  dwell: { value: ${dwell}° }
  dwell-percent: { value: ${percent} % }
---
`;
}

function found(text: string, check: string, file = 'sheets/orlo-k14.md'): readonly Finding[] {
  return examine(text, file, context).findings.filter((finding) => finding.check === check);
}

describe('a draft of the kind', () => {
  /** Any set of features that can stand together, one at least of each set that needs one. */
  const features = fc
    .tuple(fc.shuffledSubarray([...kind.features.keys()]), fc.nat(), fc.nat())
    .map(([wish, lobes, points]) => {
      const [ofLobes = [], ofPoints = []] = kind.oneOf;
      const chosen = [ofLobes[lobes % ofLobes.length], ofPoints[points % ofPoints.length]].filter(
        (name) => name !== undefined,
      );
      for (const name of wish) {
        const clashes = chosen.some((other) => kind.features.get(name)?.excludes.includes(other));
        if (!clashes && !chosen.includes(name)) chosen.push(name);
      }
      return chosen;
    });

  test('has no findings but its blanks, whatever the features', () => {
    fc.assert(
      fc.property(features, (chosen) => {
        const text = draftSheet({
          kind,
          maker: 'Orlo',
          model: 'K14',
          features: chosen,
          id: 'orlo-k14',
          date: '2026-11-01',
        });
        const { findings } = examine(text, 'sheets/orlo-k14.md', context);
        expect(findings.filter(({ check }) => check !== 'blank-to-fill')).toEqual([]);
        expect(findings.length).toBe(text.split(/fill in|goes here/).length - 1);
      }),
      { numRuns: runs(30) },
    );
  });
});

describe('the demo’s sheets', () => {
  const sheets = ['brennick-b12-larkmoor-ten', 'ostrel-n63-tollgarth-eight'] as const;
  const texts = new Map(
    sheets.map((id) => [
      id,
      readFileSync(new URL(`../../sheets/${id}.md`, import.meta.url), 'utf8'),
    ]),
  );

  function textOf(id: (typeof sheets)[number]): string {
    return texts.get(id) ?? '';
  }

  test.each(sheets)('%s is clean, with its marks and without', (id) => {
    const text = textOf(id);
    expect(examine(text, `sheets/${id}.md`, context).findings).toEqual([]);
    const bare = text.replace(/\s*:state\[[^\]]*\]/g, '');
    const loud = examine(bare, `sheets/${id}.md`, context).findings.filter(
      ({ severity }) => severity !== 'note',
    );
    expect(loud).toEqual([]);
  });

  /** The text without the steps that hold these words, the sheet being otherwise as it was. */
  function without(text: string, ...words: string[]): string {
    const lines = text.split('\n').filter((line) => !words.some((word) => line.includes(word)));
    expect(lines.length).toBe(text.split('\n').length - words.length);
    return lines.join('\n');
  }

  function swapped(text: string, one: string, two: string): string {
    const section = (heading: string): string =>
      new RegExp(`^## ${heading}\\n[^]*?(?=^## )`, 'm').exec(text)?.[0] ?? heading;
    const [a, b] = [section(one), section(two)];
    return text.replace(a, '\0').replace(b, a).replace('\0', b);
  }

  // Each is common practice, no source.
  test.each<[string, (text: string) => string, string, string]>([
    [
      'a lock screw left loose',
      (t) => without(t, '[lock-screw tight]'),
      'state-unmet',
      'the lock screw loose',
    ],
    [
      'a battery never joined',
      (t) => without(t, '[battery connected]'),
      'state-unmet',
      'the battery disconnected',
    ],
    [
      'timing before dwell',
      (t) => swapped(t, 'Timing', 'Dwell'),
      'operation-early',
      '`Timing` stands before `Dwell`',
    ],
    [
      'a gap before the alignment',
      (t) => swapped(t, 'Points gap', 'Breaker alignment'),
      'operation-early',
      '`Points gap` stands before',
    ],
    [
      'an engine that is not stopped',
      (t) => without(t, '[engine stopped]'),
      'state-unmet',
      'not running',
    ],
    [
      'a dwell of another number of lobes',
      (t) => t.replace('value: 54 ± 3°', 'value: 39 ± 2°'),
      'worked-disagrees',
      '39 ± 2° of the 90° between 4 lobes',
    ],
    [
      'a crank figure with a wrong digit',
      (t) => t.replace('crank: 28 ± 2°', 'crank: 23 ± 2°'),
      'worked-disagrees',
      'is 28° at the crank',
    ],
    [
      'a gap with two digits swapped',
      (t) => t.replace('0.38 mm', '0.83 mm'),
      'sizes-disagree',
      'is 0.381 mm, but `also` says 0.83 mm',
    ],
  ])('%s is found', (_, spoil, check, words) => {
    const id = sheets[0];
    const text = spoil(textOf(id));
    expect(text).not.toBe(textOf(id));
    const messages = found(text, check, `sheets/${id}.md`).map(({ message }) => message);
    expect(messages.join('\n')).toContain(words);
  });

  test.each<[string, (text: string) => string, string]>([
    [
      'a vacuum line left off',
      (t) => without(t, 'Take the pump away and join', '1. See that the vacuum line is home'),
      'vacuum line',
    ],
    ['timing with the line on', (t) => without(t, '[vacuum-line plugged]'), 'the vacuum line'],
  ])('%s is found', (_, spoil, words) => {
    const id = sheets[1];
    const { findings } = examine(spoil(textOf(id)), `sheets/${id}.md`, context);
    expect(findings.map(({ message }) => message).join('\n')).toContain(words);
  });
});
