import { describe, expect, test } from 'vitest';
import { gaugeBook } from '../../src/gauges/index.ts';
import { kinds } from '../../src/generated/kinds.ts';
import { kindFaults } from '../../src/kinds/faults.ts';
import { builtInKinds } from '../../src/kinds/index.ts';
import type { Kind, Stage } from '../../src/kinds/model.ts';
import { readStatement } from '../../src/quantity/index.ts';
import type { Dimension } from '../../src/quantity/model.ts';

function carburetor(): Kind {
  const kind = builtInKinds().get('carburetor');
  if (!kind) throw new Error('no carburetor');
  return kind;
}

const kind = carburetor();

/** The settings that the trade names, in its own order. Common practice, no source. */
const trade = [
  'Float alignment',
  'Float level',
  'Float drop',
  'Fuel level',
  'Pump stroke',
  'Pump delivery',
  'Metering rods',
  'Vacuum piston gap',
  'Economy step',
  'Power step',
  'Choke cover index',
  'Choke pull-down',
  'Vacuum break gap',
  'Fast idle cam position',
  'Choke unloader',
  'Fast idle gap',
  'Fast idle speed',
  'Idle mixture baseline',
  'Idle stop baseline',
  'Idle speed',
  'Idle vacuum',
  'Dashpot',
  'Bowl vent gap',
  'Main jet',
  'Idle tube',
  'Air bleed',
  'Pump nozzle',
  'Power jet',
  'Jet height',
  'Needle shoulder',
  'Needle clip',
  'Piston drop time',
  'Damper oil level',
  'Balance between instruments',
  'Governed speed',
  'Fuel pressure',
  'Flange nut torque',
];

describe('vocabulary', () => {
  test('nothing in it contradicts itself', () => {
    for (const data of Object.values(kinds).map((each) => each()))
      expect(kindFaults(data)).toEqual([]);
  });

  test.each(trade)('the trade’s %s has a name, and an operation makes it', (name) => {
    const setting = kind.settingNamed(name);
    expect(setting, name).not.toBeNull();
    const makers = [...kind.operations.values()].filter((operation) =>
      operation.settings.includes(setting?.name ?? ''),
    );
    expect(makers.length, `${name} is made`).toBeGreaterThan(0);
  });

  test('every setting that a feature or every sheet needs is made by some operation', () => {
    const made = new Set([...kind.operations.values()].flatMap((operation) => operation.settings));
    const needed = [...kind.features.values()].flatMap((feature) => feature.settings.flat());
    for (const name of [...needed, ...kind.always.settings.flat()]) expect(made).toContain(name);
  });

  test('features that exclude one another do so both ways', () => {
    for (const feature of kind.features.values())
      for (const other of feature.excludes)
        expect(kind.features.get(other)?.excludes, `${other} excludes`).toContain(feature.name);
  });

  test('what must be said: the gasket and the place of a float level, the hole of a pump link', () => {
    expect(kind.settings.get('float-level')?.mustSay).toEqual(['gasket', 'at']);
    expect(kind.settings.get('pump-stroke')?.mustSay).toEqual(['link']);
  });

  test('every condition is read as words or as something the setting may be stated in', () => {
    const gauges = gaugeBook();
    for (const setting of kind.settings.values())
      for (const words of setting.conditions) {
        const reading = readStatement(words, { gauges, expect: setting.dimensions });
        expect(reading.ok && setting.dimensions, `${setting.name}: ${words}`).toContain(
          reading.ok ? reading.statement.dimension : '',
        );
      }
  });

  test('the unit’s own sizes and threads', () => {
    expect(kind.dimensionsOfUnit.get('throttle-bore')).toEqual(['length']);
    expect(kind.dimensionsOfUnit.get('throttle-closed-angle')).toEqual(['angle']);
    expect(kind.dimensionsOfUnit.has('idle-needle-thread')).toBe(false);
    expect(kind.threadsOfUnit.has('idle-needle-thread')).toBe(true);
  });
});

describe('model steps', () => {
  const steps = [...kind.operations.values()].flatMap((operation) =>
    operation.steps.map((step) => [operation.name, step] as const),
  );

  test('every operation that is work has some, and names each of its settings in one', () => {
    for (const operation of kind.operations.values()) {
      if (operation.stage === 'any') continue;
      const text = operation.steps.join('\n');
      expect(operation.steps.length, operation.name).toBeGreaterThan(0);
      for (const setting of operation.settings) {
        const slot = operation.settings.length === 1 ? '{setting}' : `{${setting}}`;
        // The hot mixture has no figure of its own: the vacuum gauge says when it is right.
        if (operation.name === 'idle-mixture' && setting === 'idle-mixture') continue;
        expect(text, `${operation.name} prints ${setting}`).toContain(slot);
      }
    }
  });

  // ASD-STE100 issue 9: at most 20 words in an instruction.
  test.each(steps)('%s: %s', (_, step) => {
    const words = step.replace(/:state\[[^\]]*\]/g, '').trim();
    expect(words.split(/\s+/).length).toBeLessThanOrEqual(20);
    expect(words).toMatch(/^[A-Z].*\.$/);
  });
});

describe('hazards', () => {
  test('each message has its three parts, in sentences', () => {
    for (const { name, message } of kind.hazards.values())
      for (const part of [message.hazard, message.consequence, message.avoid])
        expect(part, name).toMatch(/^[A-Z].{20,}\.$/s);
  });

  test('every hazard is met somewhere, and whatever runs the engine meets carbon monoxide', () => {
    const met = new Set([...kind.operations.values()].flatMap((operation) => operation.hazards));
    expect([...met].sort()).toEqual([...kind.hazards.keys()].sort());
    for (const operation of kind.operations.values()) {
      if (operation.stage !== 'running') continue;
      for (const hazard of ['carbon-monoxide', 'moving-parts', 'vehicle-movement', 'hot-surface'])
        expect(operation.hazards, operation.name).toContain(hazard);
    }
  });

  test('carbon monoxide kills, so its word is danger', () => {
    expect(kind.hazards.get('carbon-monoxide')?.signal).toBe('danger');
  });
});

describe('usual ranges', () => {
  // Common practice, no source: figures that an ordinary unit may have.
  const ordinary: [string, string][] = [
    ['fast-idle-cam', '0.020 in'],
    ['idle-speed', '450 rpm'],
    ['fast-idle-speed', '1300 rpm'],
    ['idle-mixture', '1 turn out'],
    ['idle-mixture', '3-1/2 turns out'],
    ['idle-stop', '1/2 turn in after contact'],
    ['float-level', '13/64 in'],
    ['choke-cover-index', 'index'],
    ['choke-cover-index', '2 notches rich'],
    ['choke-cover-index', '2 notches lean'],
    ['unloader', 'No. 29 drill'],
    ['pump-delivery', '12 cm3 per 10 strokes'],
    ['idle-vacuum', '19 inHg'],
    ['jet-height', '12 flats down'],
    ['piston-drop', '6 s'],
    ['fuel-pressure', '0.3 bar'],
    ['flange-torque', '12 ft-lb'],
  ];
  // A slipped point or digit, an inch taken for a millimeter.
  const odd: [string, string][] = [
    ['idle-speed', '4750 rpm'],
    ['idle-speed', '45 rpm'],
    ['fast-idle-cam', '2.0 in'],
    ['float-level', '13 in'],
    ['idle-mixture', '12 turns out'],
    ['choke-cover-index', '20 notches lean'],
    ['fuel-pressure', '45 psi'],
  ];

  function inside(name: string, text: string): boolean {
    const setting = kind.settings.get(name);
    const reading = readStatement(text, {
      gauges: gaugeBook(),
      expect: setting?.dimensions ?? [],
    });
    if (!reading.ok) throw new Error(reading.problem.message);
    const range = setting?.usual.find(({ dimension }) => dimension === reading.statement.dimension);
    const low = range?.low.nominal?.base;
    const high = range?.high.nominal?.base;
    const base = reading.statement.nominal?.base;
    if (!low || !high || !base) throw new Error(`${name} has no usual range for ${text}`);
    return base.compare(low) >= 0 && base.compare(high) <= 0;
  }

  test.each(ordinary)('%s of %s is ordinary', (name, text) => {
    expect(inside(name, text)).toBe(true);
  });

  test.each(odd)('%s of %s is not', (name, text) => {
    expect(inside(name, text)).toBe(false);
  });

  test('are read once, when they are asked for', () => {
    const setting = kind.settings.get('float-level');
    expect(setting?.usual).toBe(setting?.usual);
    const dimensions = setting?.usual.map((range) => range.dimension) as Dimension[];
    expect(dimensions).toEqual(['length', 'angle']);
  });
});

describe('working order', () => {
  const order = [...kind.operations.keys()];

  // Common practice, no source.
  test.each([
    ['float-alignment', 'float-level'],
    ['float-level', 'float-drop'],
    ['pump-stroke', 'metering-rods'],
    ['fast-idle-cam', 'unloader'],
    ['unloader', 'fast-idle-gap'],
    ['unloader', 'fast-idle-speed'],
    ['initial-idle', 'first-start'],
    ['first-start', 'fast-idle-speed'],
    ['first-start', 'idle-speed'],
    ['idle-speed', 'road-test'],
    ['idle-mixture', 'road-test'],
    // By way of another, which a sheet may lack.
    ['float-alignment', 'float-drop'],
    ['initial-idle', 'road-test'],
  ])('%s comes before %s', (earlier, later) => {
    expect([...(kind.operations.get(later)?.before.keys() ?? [])]).toContain(earlier);
    expect(order.indexOf(earlier)).toBeLessThan(order.indexOf(later));
  });

  test('mixture is the last of the running work on an idle, and the road test the last of all', () => {
    const running = order.filter((name) => kind.operations.get(name)?.stage === 'running');
    const idle = running.filter((name) => name.includes('idle'));
    expect(idle.slice(-2)).toEqual(['idle-mixture', 'idle-co']);
    const work = order.filter((name) => kind.operations.get(name)?.stage !== 'any');
    expect(work.at(-1)).toBe('road-test');
  });

  test('the file’s order is the working order: stages never fall back, and `after` agrees', () => {
    const stages: readonly Stage[] = ['strip', 'bench', 'before-start', 'running', 'road'];
    let reached = 0;
    for (const [name, operation] of kind.operations) {
      for (const { name: earlier } of operation.after)
        expect(order.indexOf(earlier), `${earlier} before ${name}`).toBeLessThan(
          order.indexOf(name),
        );
      if (operation.stage === 'any') continue;
      const stage = stages.indexOf(operation.stage);
      expect(stage, name).toBeGreaterThanOrEqual(reached);
      reached = stage;
    }
  });
});

test('a size of a tool and a step size are told by words of the kind', () => {
  for (const word of ['wrench', 'spanner', 'hose', 'screwdriver']) {
    expect(kind.toolWords).toContain(word);
  }
  // A gauge, a wire and a drill are what a setting is measured with, so they are no tools here.
  for (const word of ['gauge', 'wire', 'drill', 'feeler', 'leaf'])
    expect(kind.toolWords).not.toContain(word);
  for (const words of ['at a time', 'each', 'every', 'another']) {
    expect(kind.incrementWords).toContain(words);
  }
});
