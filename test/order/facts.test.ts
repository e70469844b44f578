import { describe, expect, test } from 'vitest';
import { allChecks } from '../../src/checks/index.ts';
import { examine } from '../../src/checks/list.ts';
import { exampleContext, exampleFile, wholeSheet } from '../checks/examples.ts';

/*
 * Facts of the trade, each as work that is right and its twin that is wrong. Common practice, no
 * source.
 */

const context = exampleContext();
const orderChecks = new Set(allChecks.filter(({ group }) => group === 'order').map(({ id }) => id));

const unit = `unit:
  kind: carburetor
  maker: Orlo
  model: F27
  features: [two-barrel, downdraft, automatic-choke, pump, metering-rods, fast-idle-cam, unloader, choke-pull-down]`;

const settings = `float-alignment: { value: parallel, from: m48 p. 30 }
float-drop: { value: 3/4 in, at: free end of the float, from: m48 p. 32 }
metering-rods: { value: 2-7/16 in, from: m48 p. 35 }
choke-cover-index: { value: index, from: m48 p. 36 }
choke-pull-down: { value: 3/16 in, from: m48 p. 36 }
fast-idle-cam: { value: 1/16 in, from: m48 p. 37 }
unloader: { value: 3/16 in, from: m48 p. 37 }
fast-idle-gap: { value: 0.030 in wire, from: m48 p. 38 }
idle-stop: { value: 3/4 turn in after contact, from: m48 p. 40 }
fast-idle-speed: { value: 1500 rpm, from: m48 p. 41 }
idle-speed: { value: 475 rpm, from: m48 p. 41 }
idle-vacuum: { value: 19 inHg, from: m48 p. 41 }`;

const op = (heading: string, ...steps: readonly string[]): string =>
  `## ${heading}\n\n${steps.map((step, i) => `${i + 1}. ${step}`).join('\n')}\n`;

/** What `check` says of the order, with the line under each place. */
function found(...work: readonly string[]): readonly string[] {
  const text = wholeSheet({ front: unit, settings, body: `# Orlo F27\n\n${work.join('\n')}` });
  return examine(text, exampleFile, context)
    .findings.filter(({ check }) => orderChecks.has(check))
    .map(
      ({ check, severity, message, span }) =>
        `${severity} ${check} at “${text.slice(span.start, span.end).split('\n')[0]}”: ${unreasoned(message)}`,
    );
}

/** A message without the reason of its rule, which the kind's own tests hold. */
function unreasoned(message: string): string {
  return message
    .replace(/(it needs the [^:]+|has to follow (?:it|them)): .*$/, '$1')
    .replace(/ \([^)]*\), and/, ', and');
}

const strip = op(
  'Strip and inspect',
  'Take it to the bench and drain it. :state[unit on-bench]',
  'Lift the rods out. :state[rods out]',
  'Take off the cover. :state[cover off]',
  'Lift the gasket. :state[gasket off]',
);
const level = op(
  'Float level',
  'Turn the cover over. :state[cover inverted]',
  'Pass the gauge: :value[float-level].',
);
const cover = op(
  'Refitting the cover',
  'Lay the gasket and lower the cover. :state[gasket on] :state[cover on]',
);
const pump = op(
  'Pump stroke',
  'Back the stop screw off. :state[stop-screw backed-off] :state[cam slow-notch]',
  'Let the throttle shut. :state[throttle shut]',
  'Measure :value[pump-stroke].',
);
const rods = op(
  'Metering rods',
  'Set the gauge in the well: :value[metering-rods].',
  'Hang the rods in. :state[rods in]',
);
const cam = op(
  'Fast idle cam',
  'Rest the screw on its step. :state[cam named-step]',
  'Press the choke shut and pass the drill: :value[fast-idle-cam]. :state[choke shut]',
);
const unloader = op(
  'Unloader',
  'Hold it wide open. :state[throttle wide-open]',
  'Pass the drill: :value[unloader].',
);
const gap = op(
  'Fast idle gap',
  'Rest the screw on the high step. :state[cam highest-step]',
  'Pass the wire: :value[fast-idle-gap].',
  'Let the cam fall. :state[cam slow-notch]',
);
const baselines = op(
  'Initial idle',
  'Turn the needles out: :value[idle-mixture].',
  'Turn the stop screw in to contact, then :value[idle-stop]. :state[stop-screw set]',
);
const installation = op('Installation', 'Draw the nuts down. :state[unit on-engine]');
const start = op(
  'First start',
  'Chock the wheels. :state[wheels chocked] :state[gear neutral]',
  'Start the engine. :state[engine running]',
  'Let it warm. :state[engine hot]',
);
const fastSpeed = op(
  'Fast idle speed',
  'Set the screw on its step. :state[cam named-step]',
  'Bring it to :value[fast-idle-speed].',
  'Let the cam fall. :state[cam slow-notch]',
);
const speed = op('Idle speed', 'Bring it to :value[idle-speed].');
const mixture = op('Idle mixture', 'Seek the highest vacuum: :value[idle-vacuum].');
const again = op(
  'Idle speed, again {#idle-speed}',
  'Bring it back to :value[idle-speed].',
  'Switch off. :state[engine stopped]',
);
const road = op('Road test', 'Pull up a hill.');

const whole = [
  strip,
  level,
  cover,
  pump,
  rods,
  cam,
  unloader,
  gap,
  baselines,
  installation,
  start,
  fastSpeed,
  speed,
  mixture,
  again,
  road,
];

/** The whole work with one operation written otherwise. */
const but = (was: string, is: string): readonly string[] =>
  whole.map((each) => (each === was ? is : each));
/** The whole work with one operation at another place. */
const moved = (what: string, behind: string): readonly string[] =>
  whole
    .filter((each) => each !== what)
    .flatMap((each) => (each === behind ? [each, what] : [each]));

test('the whole work, in order', () => {
  expect(found(...whole)).toEqual([]);
});

describe('faults that a checker can prove', () => {
  test.each([
    [
      'metering rods measured while the fast idle screw holds the throttle open',
      but(
        rods,
        op(
          'Metering rods',
          'Rest the fast idle screw on its step. :state[cam named-step]',
          'Set the gauge in the well: :value[metering-rods].',
          'Hang the rods in. :state[rods in]',
        ),
      ),
      [
        'error state-unmet at “2. Set the gauge in the well: :value[metering-rods].”: `Metering rods` is measured here with the throttle held by the fast idle cam; it needs the throttle shut',
      ],
    ],
    [
      'float level checked with the gasket on where the setting says off',
      but(
        level,
        op(
          'Float level',
          'Turn the cover over and lay the gasket on. :state[cover inverted] :state[gasket on]',
          'Pass the gauge: :value[float-level].',
          'Take it off again. :state[gasket off]',
        ),
      ),
      [
        'error state-unmet at “2. Pass the gauge: :value[float-level].”: `Float level` is measured here with the cover gasket on; it needs the cover gasket off',
      ],
    ],
    [
      'fast idle speed set cold',
      but(
        start,
        op(
          'First start',
          'Chock the wheels. :state[wheels chocked] :state[gear neutral]',
          'Start the engine. :state[engine running]',
        ),
      ).map((each) =>
        each === speed
          ? op('Idle speed', 'Let it warm. :state[engine hot]', 'Bring it to :value[idle-speed].')
          : each,
      ),
      [
        'error state-unmet at “2. Bring it to :value[fast-idle-speed].”: `Fast idle speed` is measured here with the engine cold; it needs the engine hot',
      ],
    ],
    [
      'the unloader after the fast idle that it moves',
      moved(unloader, gap),
      [
        'warning operation-early at “Fast idle gap”: `Fast idle gap` stands before `Unloader`, and has to follow it',
      ],
    ],
    [
      'the stop screw backed off at the start',
      but(baselines, op('Initial idle', 'Turn the needles out: :value[idle-mixture].')),
      [
        'error part-left-open at “:state[stop-screw backed-off]”: nothing brings the idle stop screw back from backed off before the engine is started',
      ],
    ],
    [
      'a cover reinstalled that never came off',
      but(
        pump,
        op(
          'Pump stroke',
          'Back the stop screw off and let the throttle shut. :state[stop-screw backed-off] :state[throttle shut]',
          'Measure :value[pump-stroke].',
        ),
      ).map((each) =>
        each === rods ? `${rods}3. Reinstall the dust cover. :state[dust-cover on]\n` : each,
      ),
      [
        'error state-unmet at “1. Set the gauge in the well: :value[metering-rods].”: `Metering rods` is measured here with the dust cover on; it needs the dust cover off',
        'warning part-refitted at “:state[dust-cover on]”: this step leaves the dust cover on, and no step has had it otherwise',
      ],
    ],
  ] as const)('%s', (_, work, expected) => {
    expect(found(...work)).toEqual(expected);
  });
});

describe('the order of work', () => {
  test.each([
    ['float level before the cover is on, not after', moved(level, cover), 'operation-early'],
    ['the pump before the rods that hang on it', moved(pump, rods), 'operation-early'],
    ['the cam before the unloader', moved(cam, unloader), 'operation-early'],
    ['the unloader before the fast idle', moved(unloader, gap), 'operation-early'],
    ['baselines before the first start', moved(baselines, start), 'operation-early'],
    ['fast idle speed with the engine running', moved(fastSpeed, installation), 'operation-early'],
    ['the road test last', moved(road, start), 'order-unusual'],
  ] as const)('%s', (_, work, check) => {
    const told = found(...work);
    expect(told.map((each) => each.split(' ')[1])).toContain(check);
    // One heading out of place is told once, however much follows from it.
    expect(told.filter((each) => each.includes(check))).toHaveLength(1);
  });

  test('the pump may go before the float, or behind the choke', () => {
    expect(
      found(...moved(rods, unloader).map((each) => (each === unloader ? unloader : each))),
    ).not.toContain('operation-early');
    const dashpot = op(
      'Dashpot',
      'See that the cam is clear and the throttle at its stop. :state[cam slow-notch] :state[stop-screw set] :state[throttle on-idle-stop]',
      'Press the plunger home.',
    );
    for (let at = 1; at <= whole.indexOf(baselines); at++) {
      // Between the two that need the throttle shut, its stop is in the way.
      if (whole[at] === rods) continue;
      const work = [...whole.slice(0, at), dashpot, ...whole.slice(at)];
      expect(found(...work)).toEqual([]);
    }
  });

  test('the pump touched again, the rods checked again', () => {
    const pumpAgain = pump.replace('## Pump stroke', '## Pump stroke, once more {#pump-stroke}');
    const touched = whole.flatMap((each) => (each === rods ? [rods, pumpAgain] : [each]));
    expect(found(...touched)).toEqual([
      'warning setting-disturbed at “3. Measure :value[pump-stroke].”: `metering-rods` is made in `Metering rods` and moved by `Pump stroke, once more`, and no step checks it again before the work ends',
    ]);
    const checked = touched.map((each) =>
      each === pumpAgain ? `${pumpAgain}4. Check again: :value[metering-rods].\n` : each,
    );
    expect(found(...checked)).toEqual([]);
  });

  test('bench work on the engine, with the engine off and saying so', () => {
    const dashpot = op('Dashpot', 'Press the plunger home.');
    const late = whole.flatMap((each) => (each === mixture ? [mixture, dashpot] : [each]));
    expect(found(...late).map((each) => each.split(' ')[1])).toEqual(['order-unusual']);
    const off = op(
      'Dashpot',
      'Stop the engine. :state[engine stopped]',
      'Press the plunger home.',
      'Start it again. :state[engine running]',
    );
    expect(found(...late.map((each) => (each === dashpot ? off : each)))).toEqual([]);
  });

  test('speed is repeated after mixture, which moves it', () => {
    expect(found(...whole.filter((each) => each !== again))).toEqual([
      'warning setting-disturbed at “1. Seek the highest vacuum: :value[idle-vacuum].”: `idle-speed` is made in `Idle speed` and moved by `Idle mixture`, and no step checks it again before the work ends',
    ]);
  });

  test('no running adjustment in gear or unbraked', () => {
    const told = found(
      ...but(
        speed,
        op(
          'Idle speed',
          'Take a gear. :state[gear drive]',
          'Let the brake go. :state[brake released]',
          'Bring it to :value[idle-speed].',
        ),
      ),
    );
    expect(told).toEqual([
      'error state-unmet at “3. Bring it to :value[idle-speed].”: `Idle speed` is measured here with the gear in drive; it needs the gear in neutral',
      'error state-unmet at “3. Bring it to :value[idle-speed].”: `Idle speed` is measured here with the vehicle free to move; it needs the vehicle chocked or braked',
    ]);
  });

  test('bending the float for level moves the drop', () => {
    const drop = op(
      'Float drop',
      'Hold the cover upright. :state[cover upright]',
      'Measure :value[float-drop].',
    );
    const levelAgain = level.replace('## Float level', '## Float level, corrected {#float-level}');
    const work = whole.flatMap((each) => (each === level ? [level, drop, levelAgain] : [each]));
    expect(found(...work).map((each) => each.split(' ')[1])).toEqual(['setting-disturbed']);
    // And bending for the drop may move the level, so that is measured again.
    const after = whole.flatMap((each) => (each === level ? [level, drop] : [each]));
    expect(found(...after).map((each) => each.split(' ')[1])).toEqual(['setting-disturbed']);
    const both = drop.replace(
      '2. Measure :value[float-drop].',
      '2. Measure :value[float-drop].\n3. Measure :value[float-level]. :state[cover inverted]',
    );
    expect(found(...after.map((each) => (each === drop ? both : each)))).toEqual([]);
  });
});

describe('rules of the sheet’s own', () => {
  const overruled = `${unit}
work:
  unloader: { after: [fast-idle-gap], without: { disturbs: [fast-idle-gap] }, because: the lug stands on the other lever }
  fast-idle-gap: { without: { after: [unloader] }, because: the lug stands on the other lever }`;
  const check = (front: string, work: readonly string[]): readonly string[] => {
    const text = wholeSheet({ front, settings, body: `# Orlo F27\n\n${work.join('\n')}` });
    return examine(text, exampleFile, context)
      .findings.filter(({ check: id }) => orderChecks.has(id))
      .map(({ check: id, message }) => `${id}: ${unreasoned(message)}`);
  };

  test('turn what is right about', () => {
    expect(check(overruled, moved(unloader, gap))).toEqual([]);
    expect(check(overruled, whole)).toEqual([
      'operation-early: `Unloader` stands before `Fast idle gap`, and has to follow it',
    ]);
  });

  test('need, leave and disturb what the kind does not', () => {
    const needs = `${unit}\nwork:\n  unloader: { needs: { choke: shut } }`;
    expect(check(needs, whole)).toEqual([]);
    const open = but(
      unloader,
      op(
        'Unloader',
        'Hold it wide open with the choke open. :state[throttle wide-open] :state[choke open]',
        'Pass the drill: :value[unloader].',
      ),
    );
    expect(check(needs, open)).toEqual([
      'state-unmet: `Unloader` is measured here with the choke plate open; it needs the choke plate shut',
    ]);
    expect(check(unit, open)).toEqual([]);
    const leaves = `${unit}\nwork:\n  fast-idle-cam: { leaves: { choke: open } }\n  unloader: { needs: { choke: shut } }`;
    expect(check(leaves, whole)).toEqual([
      'state-unmet: `Unloader` is measured here with the choke plate open; it needs the choke plate shut',
    ]);
    const disturbs = `${unit}\nwork:\n  unloader: { disturbs: [pump-stroke] }`;
    expect(check(disturbs, whole).map((each) => each.split(':')[0])).toEqual(['setting-disturbed']);
    const without = `${unit}\nwork:\n  fast-idle-speed: { without: { needs: [temperature] }, because: it is set cold on this engine }`;
    const cold = but(start, start.replace('3. Let it warm. :state[engine hot]\n', '')).map(
      (each) =>
        each === speed
          ? op('Idle speed', 'Let it warm. :state[engine hot]', 'Bring it to :value[idle-speed].')
          : each,
    );
    expect(check(without, cold)).toEqual([]);
    expect(check(unit, cold)).toHaveLength(1);
  });
});

describe('a stranger’s sheet', () => {
  const unmarked = whole.map((each) => each.replace(/ :state\[[^\]]*\]/g, ''));

  test('with no marks at all gets no errors and no warnings', () => {
    expect(found(...unmarked).filter((each) => !each.startsWith('note '))).toEqual([]);
  });

  test('in the right order and with nothing but headings gets no finding but notes', () => {
    const bare = whole.map((each) => `${each.split('\n')[0]}\n\nSee the manual.\n`);
    expect(found(...bare)).toEqual([]);
  });
});
