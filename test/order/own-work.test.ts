import { describe, expect, test } from 'vitest';
import { allChecks, type CheckContext } from '../../src/checks/index.ts';
import { examine } from '../../src/checks/list.ts';
import { exampleContext, exampleFile, wholeSheet } from '../checks/examples.ts';

/*
 * What a sheet says under `work:` for its own unit: operations and parts that the kind does not have,
 * another stage or other hazards, and measures that lift a need. Right cases beside wrong ones. Common
 * practice, no source.
 */

const context: CheckContext = exampleContext();
const told = new Set(
  allChecks
    .filter(
      ({ group, id }) =>
        group === 'order' || /^(work-rule|operation-|state-|caution-|hazard-)/.test(id),
    )
    .map(({ id }) => id),
);

const carburetor = `unit:
  kind: carburetor
  maker: Orlo
  model: F27
  features: [single-barrel, side-draft, adjustable-jet]
work:
`;
const distributor = `unit:
  kind: ignition-distributor
  maker: Orlo
  model: K14
  features: [four-lobe, single-points]
work:
`;
const settings = `jet-height: { value: 12 flats down, from: m48 p. 30 }
idle-mixture: { value: 1-1/4 turns out, from: m48 p. 30 }
damper-oil: { value: 1/2 in, from: m48 p. 30 }
balance: { value: equal, from: m48 p. 31 }
lever-clearance: { value: 0.012 in, at: the throttle lever, from: m48 p. 31 }
idle-speed: { value: 475 rpm, from: m48 p. 41 }`;
const sparks = `points-gap: { value: 0.015 in, from: m48 p. 30 }
timing: { value: 0.25 in BTDC, at: the piston, speed: at rest, from: m48 p. 31 }
static-timing: { value: 4° BTDC, at: the flywheel, from: m48 p. 31 }`;

const op = (heading: string, ...steps: readonly string[]): string =>
  `## ${heading}\n\n${steps.map((step, i) => `${i + 1}. ${step}`).join('\n')}\n`;

function found(front: string, own: string, values: string, ...work: readonly string[]) {
  const body = `# Orlo\n\n${work.join('\n')}`;
  const text = wholeSheet({ front: front + own, settings: values, body });
  return examine(text, exampleFile, context)
    .findings.filter(({ check, severity }) => told.has(check) && severity !== 'note')
    .map(
      ({ check, severity, span }) =>
        `${severity} ${check}: ${text.slice(span.start, span.end).split('\n')[0]}`,
    )
    .filter((line) => !/operation-missing|caution-missing/.test(line));
}

const carb = (own: string, ...work: readonly string[]) => found(carburetor, own, settings, ...work);
const dist = (own: string, ...work: readonly string[]) => found(distributor, own, sparks, ...work);

const jet = op('Jet height', 'Turn the nut down: :value[jet-height].');

describe('an operation of the sheet’s own', () => {
  const centering = `  jet-centering:
    label: Jet centering
    aliases: [centering the jet]
    stage: bench
    disturbs: [jet-height]
    because: the gland nut is slackened to let the jet find its needle
`;
  const center = op('Jet centering', 'Slacken the gland nut and let the jet find its needle.');

  test('stands right before what it moves', () => {
    expect(carb(centering, center, jet)).toEqual([]);
  });

  test('is told where it moves what was set and is not set again', () => {
    expect(carb(centering, jet, center)).toEqual([
      'warning setting-disturbed: 1. Slacken the gland nut and let the jet find its needle.',
    ]);
  });

  test('is right again where the setting is made once more', () => {
    expect(
      carb(centering, jet, center, op('Jet height, again', 'Check it: :value[jet-height].')),
    ).toEqual([]);
  });

  test('is known by another name, in any case', () => {
    expect(carb(centering, jet, op('Centering the Jet', 'Slacken the gland nut.'))).toEqual([
      'warning setting-disturbed: 1. Slacken the gland nut.',
    ]);
  });

  test('makes a setting, so that nothing else need make it', () => {
    const linkage = `  throttle-linkage:
    label: Throttle linkage
    stage: bench
    settings: [lever-clearance]
    needs: { throttle: on-idle-stop }
    because: the interconnecting rod has a clearance of its own
`;
    const rod = (mark: string) =>
      op(
        'Throttle linkage',
        `Let the throttle come to rest. ${mark}`,
        'Measure it: :value[lever-clearance].',
      );
    expect(carb(linkage, rod(':state[throttle on-idle-stop]'), jet)).toEqual([]);
    expect(carb(linkage, rod(':state[throttle wide-open]'), jet)).toEqual([
      'error state-unmet: 2. Measure it: :value[lever-clearance].',
    ]);
  });

  test('stands in its stage: after, by its own rule', () => {
    const slack = `  governor-rod:
    label: Governor rod
    stage: before-start
    after: [jet-height]
    because: the rod is set to the lever that the jet nut moves
`;
    const rod = op('Governor rod', 'Set the rod.');
    expect(carb(slack, jet, rod)).toEqual([]);
    expect(carb(slack, rod, jet)).toEqual(['error operation-early: Governor rod']);
  });

  test('without a reason is told', () => {
    const bare = centering.replace(/ {4}because.*\n/, '');
    expect(carb(bare, center, jet)).toEqual(['error work-rule-unreasoned: jet-centering']);
  });
});

describe('a part of the sheet’s own', () => {
  const lock = `  ignition-lock:
    label: ignition lock
    aliases: [steering lock]
    conditions: [locked, free]
    starts: locked
    home: [locked]
    because: the lock of this car stops the distributor shaft
  points-gap:
    needs: { ignition-lock: free }
    because: the shaft cannot be turned while the lock holds it
`;
  const gap = (...steps: readonly string[]) =>
    op(
      'Points gap',
      'Lift off the cap. :state[cap off]',
      ...steps,
      'Turn the shaft to the peak of a lobe. :state[points on-peak]',
      'Pass the leaf: :value[points-gap].',
    );
  const close = (...steps: readonly string[]) =>
    op('Assembly', 'Clip the cap on. :state[cap on] :state[rotor on]', ...steps);

  test('is freed and locked again', () => {
    expect(
      dist(
        lock,
        gap('Free the lock. :state[ignition-lock free]'),
        close('Lock it. :state[ignition-lock locked]'),
      ),
    ).toEqual([]);
  });

  test('is told where work needs it and it was not freed', () => {
    expect(dist(lock, gap(), close())).toEqual([
      'warning state-unmet: 3. Pass the leaf: :value[points-gap].',
    ]);
  });

  test('is told where it is left otherwise than it belongs at the end', () => {
    expect(dist(lock, gap('Free the lock. :state[ignition-lock free]'), close())).toEqual([
      'warning part-left-open: :state[ignition-lock free]',
    ]);
  });

  test('is marked by its label and its other names', () => {
    for (const name of ['ignition lock', 'steering lock', 'Steering Lock'])
      expect(
        dist(lock, gap(`Free it. :state[${name} free]`), close(`Lock it. :state[${name} locked]`)),
      ).toEqual([]);
  });

  test('has no conditions but its own', () => {
    expect(dist(lock, gap('Free it. :state[ignition-lock open]'), close())).toEqual([
      'error state-unknown: :state[ignition-lock open]',
      'warning state-unmet: 4. Pass the leaf: :value[points-gap].',
    ]);
  });

  test('without a reason is told', () => {
    const bare = lock.replace(/ {4}because: the lock.*\n/, '');
    expect(
      dist(
        bare,
        gap('Free it. :state[ignition-lock free]'),
        close('Lock it. :state[ignition-lock locked]'),
      ),
    ).toEqual(['error work-rule-unreasoned: ignition-lock']);
  });
});

describe('another stage or other hazards, with a reason', () => {
  const oil = op('Damper oil level', 'Fill the hollow rod: :value[damper-oil].');
  const start = op(
    'First start',
    'Chock the wheels. :state[wheels chocked] :state[gear neutral]',
    'Start the engine. :state[engine running] :state[engine hot]',
  );
  const baselines = op('Initial idle', 'Turn the needle out: :value[idle-mixture].');
  const stage = (id: string, own: string, ...work: readonly string[]) => {
    const text = wholeSheet({
      front: carburetor + own,
      settings,
      body: `# Orlo\n\n${work.join('\n')}`,
    });
    return examine(text, exampleFile, context)
      .findings.filter(({ check }) => check === id)
      .map(({ severity, message }) => `${severity}: ${message.split(':')[0]}`);
  };

  test('work of the bench that another paper does running is no custom broken', () => {
    const moved =
      '  damper-oil: { stage: running, because: the oil is filled when the engine is warm }\n';
    expect(
      stage('order-unusual', '  jet-height: { because: as it is }\n', jet, baselines, start, oil)
        .length,
    ).toBeGreaterThan(0);
    expect(stage('order-unusual', moved, jet, baselines, start, oil)).toEqual([]);
  });

  test('a stage without a reason is told', () => {
    expect(carb('  damper-oil: { stage: running }\n', jet)).toEqual([
      'error work-rule-unreasoned: damper-oil',
    ]);
  });

  test('a stage that there is not is refused by its schema', () => {
    const text = wholeSheet({
      front: `${carburetor}  damper-oil: { stage: shed, because: it is }\n`,
      settings,
      body: `# Orlo\n\n${jet}`,
    });
    expect(examine(text, exampleFile, context).findings.map(({ check }) => check)).toContain(
      'front-matter-invalid',
    );
  });

  test('hazards in place of the kind’s ask for their caution, and no longer for the kind’s', () => {
    const all = (own: string) => stage('caution-missing', own, oil, start);
    const before = all('  jet-height: { because: as it is }\n').join();
    expect(before).toContain('backfire');
    const after = all(
      '  first-start: { hazards: [carbon-monoxide, moving-parts], because: a sealed test room }\n',
    ).join();
    expect(after).not.toContain('backfire');
    expect(after).toContain('carbon monoxide');
    const added = all(
      '  damper-oil: { hazards: [hot-surface], because: it is filled beside the exhaust }\n',
    ).join();
    expect(added).toContain('hot manifold');
  });

  test('hazards without a reason, and one that nobody knows, are told', () => {
    expect(carb('  damper-oil: { hazards: [hot-surface] }\n', jet)).toEqual([
      'error work-rule-unreasoned: damper-oil',
    ]);
    expect(carb('  damper-oil: { hazards: [dragons], because: there be some }\n', jet)).toEqual([
      'error work-rule-unknown: dragons',
    ]);
  });
});

describe('a measure that lifts a need (`unless-stated` of a kind)', () => {
  const running = [
    op(
      'Points gap',
      'Lift off the cap. :state[cap off]',
      'Turn to the peak. :state[points on-peak]',
      'Pass the leaf: :value[points-gap].',
      'Clip the cap on. :state[cap on]',
    ),
  ];
  const timed = (value: string, step: string) => {
    const text = wholeSheet({
      front: distributor.replace('work:\n', ''),
      settings: `points-gap: { value: 0.015 in, from: m48 p. 30 }\ntiming: { value: ${value}, at: the piston, speed: 400 rpm, from: m48 p. 31 }`,
      body: `# Orlo\n\n${running.join('\n')}\n${op('Timing', step)}`,
    });
    return examine(text, exampleFile, context)
      .findings.filter(({ check, severity }) => check === 'state-unmet' && severity !== 'note')
      .map(({ severity, message }) => `${severity}: ${message.split(',')[0]}`);
  };
  const at = 'Turn the body: :value[timing]. :state[engine stopped]';

  test('a height of the piston is read at rest', () => {
    expect(timed('0.25 in BTDC', at)).toEqual([]);
    expect(timed('6 mm BTDC', at)).toEqual([]);
  });

  test('an angle is read running', () => {
    expect(timed('8° BTDC', at).join()).toContain('engine');
  });

  test('limits of a height are a height', () => {
    expect(timed('0.25 to 0.28 in BTDC', at)).toEqual([]);
    expect(timed('0.25 ± 0.02 in BTDC', at)).toEqual([]);
  });

  test('limits of an angle are an angle', () => {
    expect(timed('8 ± 1° BTDC', at).join()).toContain('engine');
  });

  test('what is not lifted stays: a running engine is secured, whatever the measure', () => {
    expect(timed('0.25 in BTDC', 'Start the engine. :state[engine running]').join()).toContain(
      'vehicle',
    );
    expect(timed('8° BTDC', 'Start the engine. :state[engine running]').join()).toContain(
      'vehicle',
    );
  });
});
