import { describe, expect, it } from 'vitest';
import type { CheckContext } from '../../src/checks/index.ts';
import { examine } from '../../src/checks/list.ts';
import { gaugeBook } from '../../src/gauges/index.ts';
import { builtInKinds } from '../../src/kinds/index.ts';
import { exampleFile, wholeSheet } from './examples.ts';

const context: CheckContext = {
  gauges: gaugeBook(),
  kinds: builtInKinds(),
  wireGauge: 'imperial',
  picture: null,
};

/** What a setting says with one slip in it, and the figure that has to be offered first or second. */
type Case = readonly [setting: string, right: string];

const unit = (kind: string, features: string): string =>
  `unit:\n  kind: ${kind}\n  maker: Orlo\n  model: F27\n  features: [${features}]`;

/** The cures of all findings on one setting. */
function curesOf(setting: string): readonly string[] {
  const isIgnition = /^(?:advance|vacuum-m|timing|static|dwell|condenser|points)/.test(setting);
  const text = wholeSheet(
    isIgnition
      ? {
          front: `${unit('ignition-distributor', 'four-lobe, single-points, centrifugal-advance, vacuum-advance')}\nsettings:\n  ${setting}`,
          body: '# Orlo F27\n',
        }
      : { settings: setting },
  );
  const name = setting.slice(0, setting.indexOf(':'));
  return examine(text, exampleFile, context)
    .findings.filter((one) => one.subject === name && one.severity !== 'note')
    .flatMap(({ fix }) => (fix === null ? [] : [fix]));
}

/** Whether a figure is among the first two that a cure offers, as it stands and not inside another. */
function isNamed(cures: readonly string[], right: string): boolean {
  return cures.some((cure) =>
    cure
      .split(/; |,? or /)
      .slice(0, 2)
      .some((part) =>
        ` ${part.replaceAll('`', '')} `.replace(/[,:]? /g, ' ').includes(` ${right} `),
      ),
  );
}

const cases: Readonly<Record<string, readonly Case[]>> = {
  'the whole number of a mixed figure was left out': [
    ['float-drop: { value: 1/8 in, also: [28.6 mm], from: m48 p. 1 }', '1-1/8 in'],
    [
      'idle-mixture: { value: 1/4 turn out, also: [2.25 turns out], from: m48 p. 1 }',
      '2-1/4 turns out',
    ],
    [
      'idle-mixture: { value: 3/4 turn out, also: [1.75 turns out], from: m48 p. 1 }',
      '1-3/4 turns out',
    ],
  ],
  'a figure and its tolerance changed places': [
    ['float-drop: { value: 1/32 ± 3/4 in, also: [19.05 mm], from: m48 p. 1 }', '3/4 ± 1/32 in'],
    ['float-drop: { value: 0.5 ± 18 mm, also: [0.709 in], from: m48 p. 1 }', '18 ± 0.5 mm'],
    ['float-drop: { value: 1/16 ± 1-1/8 in, also: [28.6 mm], from: m48 p. 1 }', '1-1/8 ± 1/16 in'],
  ],
  'the point slipped in both ends': [
    [
      'fast-idle-gap: { value: 0.50–0.75 mm, also: [0.20–0.30 in], from: m48 p. 1 }',
      '0.020–0.030 in',
    ],
    ['float-drop: { value: 18.0–19.0 mm, also: [7.09–7.48 in], from: m48 p. 1 }', '0.709–0.748 in'],
    ['points-gap: { value: 3.5–4.0 mm, also: [0.014–0.016 in], from: m48 p. 1 }', '0.35–0.40 mm'],
  ],
  'ounces for pounds, and pounds for ounces': [
    ['flange-torque: { value: 15 N m, also: [133 in-oz], from: m48 p. 1 }', '133 in-lb'],
    ['flange-torque: { value: 180 oz in, also: [20.3 N m], from: m48 p. 1 }', '180 in-lb'],
  ],
  'a fraction that no paper tells, stated once': [
    ['float-drop: { value: 21/23 in, from: m48 p. 1 }', '21/32 in'],
    [
      'float-level: { value: 9/46 in, at: free end of the float, cover: inverted, gasket: removed, from: m48 p. 1 }',
      '9/64 in',
    ],
    ['float-drop: { value: 32/23 in, from: m48 p. 1 }', '23/32 in'],
  ],
  'a figure at the crank beside one at the shaft': [
    [
      'advance-maximum: { value: 14 ± 1° distributor, also: [82 ± 2° crank], at: 1600 rpm, shaft: distributor, from: m48 p. 1 }',
      '28 ± 2° crank',
    ],
    [
      'advance-part: { value: 8 ± 1° distributor, also: [61 ± 2° crank], at: 900 rpm, shaft: distributor, from: m48 p. 1 }',
      '16 ± 2° crank',
    ],
    [
      'vacuum-maximum: { value: 7 ± 1° distributor, also: [41 ± 2° crank], pressure: 12 inHg, from: m48 p. 1 }',
      '14 ± 2° crank',
    ],
  ],
  'a slipped point keeps the number of places': [
    ['unloader: { value: No. 29 drill, also: [1.360 in, 3.454 mm], from: m48 p. 1 }', '0.1360 in'],
    ['main-jet: { value: 1.50 mm, also: [0.5910 in], from: m48 p. 1 }', '0.0591 in'],
    ['fast-idle-gap: { value: 0.3200 in, also: [0.813 mm], from: m48 p. 1 }', '0.0320 in'],
    ['float-drop: { value: 3/4 in, also: [7.500 in, 19.05 mm], from: m48 p. 1 }', '0.750 in'],
    ['fast-idle-gap: { value: .2500 in, also: [0.635 mm], from: m48 p. 1 }', '.0250 in'],
    ['idle-tube: { value: No. 70 drill, also: [.0028 in], from: m48 p. 1 }', '.028 in'],
    ['float-drop: { value: 3/4 in, also: [1.905 mm], from: m48 p. 1 }', '19.05 mm'],
  ],
  'digits that changed places although they are no neighbors': [
    ['main-jet: { value: 1.80 mm, also: [0.0907 in], from: m48 p. 1 }', '0.0709 in'],
    ['float-drop: { value: 0.7500 in, also: [10.95 mm], from: m48 p. 1 }', '19.05 mm'],
    ['unloader: { value: 0.1063 in, also: [2.70 mm, No. 36 drill], from: m48 p. 1 }', '0.1065 in'],
    ['idle-speed: { value: 574 rpm, also: [475 rpm], from: m48 p. 1 }', '475 rpm'],
    ['float-level: { value: 5.159 mm, also: [0.1302 in], from: m48 p. 1 }', '0.2031 in'],
    ['pump-stroke: { value: 7/16 in, also: [0.4735 in], from: m48 p. 1 }', '0.4375 in'],
  ],
  'a limit on one side': [
    [
      'idle-vacuum: { value: 18-1/2 inHg min, also: [67.2 kPa min], from: m48 p. 1 }',
      '62.7 kPa min',
    ],
    [
      'idle-vacuum: { value: 17 inHg min, also: [56.7 kPa min, 432 mmHg min], from: m48 p. 1 }',
      '57.6 kPa min',
    ],
    ['fuel-pressure: { value: 3 psi max, also: [26.0 kPa max], from: m48 p. 1 }', '20.6 kPa max'],
    [
      'fast-idle-gap: { value: 0.020 in min, also: [0.510 in min], from: m48 p. 1 }',
      '0.020 in min',
    ],
    ['fuel-pressure: { value: 2.5 psi max, also: [1.72 kPa max], from: m48 p. 1 }', '17.2 kPa max'],
    ['float-drop: { value: 3/4 in min, also: [19.50 mm min], from: m48 p. 1 }', '19.05 mm min'],
  ],
  'a digit of a fraction': [
    [
      'idle-mixture: { value: 10 flats out, also: [1-1/3 turns out], from: m48 p. 1 }',
      '1-2/3 turns out',
    ],
    [
      'idle-mixture: { value: 1-1/2 turns out, also: [8 flats out, 1-1/3 turns out], from: m48 p. 1 }',
      '1-1/3 turns out',
    ],
    [
      'idle-mixture: { value: 2-1/4 turns out, also: [7-1/2 flats out], from: m48 p. 1 }',
      '1-1/4 turns out',
    ],
    ['float-level: { value: 1-3/16 in, also: [27.0 mm], from: m48 p. 1 }', '1-1/16 in'],
    ['float-drop: { value: 1-1/8 in, also: [34.9 mm], from: m48 p. 1 }', '1-3/8 in'],
    ['float-drop: { value: 2-1/4 in, also: [31.75 mm], from: m48 p. 1 }', '1-1/4 in'],
    ['idle-mixture: { value: 1/6 turn out, also: [5 flats out], from: m48 p. 1 }', '5/6 turn out'],
  ],
  'six and nine upside down, inside the limits as well': [
    [
      'idle-mixture: { value: 1-1/2 ± 1/2 turns out, also: [6 flats out], from: m48 p. 1 }',
      '9 flats out',
    ],
    [
      'idle-mixture: { value: 1 ± 1/2 turn out, also: [9 flats out], from: m48 p. 1 }',
      '6 flats out',
    ],
    ['unloader: { value: 0.0292 in, also: [No. 66 drill], from: m48 p. 1 }', 'No. 69 drill'],
    ['unloader: { value: 0.1960 in, also: [No. 6 drill], from: m48 p. 1 }', 'No. 9 drill'],
    ['float-drop: { value: 0.750 ± 0.015 in, also: [0.759 in], from: m48 p. 1 }', '0.750 in'],
    ['fast-idle-gap: { value: 0.090 in, also: [0.060 in, 1.52 mm], from: m48 p. 1 }', '0.060 in'],
  ],
  'limits the wrong way round': [
    ['bowl-vent: { value: 0.070 to 0.060 in, from: m48 p. 1 }', '0.060 to 0.070 in'],
    ['fast-idle-gap: { value: 0.022–0.018 in, from: m48 p. 1 }', '0.018–0.022 in'],
    ['idle-speed: { value: 600/550 r.p.m., from: m48 p. 1 }', '550/600 r.p.m.'],
    ['idle-vacuum: { value: 20 inHg to 17 inHg, from: m48 p. 1 }', '17 inHg to 20 inHg'],
    ['float-drop: { value: 3/4 to 5/8 in, from: m48 p. 1 }', '5/8 to 3/4 in'],
    ['fuel-pressure: { value: 2-1/2 to 1-1/2 psi, from: m48 p. 1 }', '1-1/2 to 2-1/2 psi'],
  ],
  'a unit mistaken, in every statement and both ways': [
    [
      'pump-stroke: { value: 25-29 N m, also: [25-29 ft-lb, 34-39 N m], from: m48 p. 1 }',
      '25-29 ft-lb',
    ],
    ['float-drop: { value: 19.05 in, also: [0.750 in], from: m48 p. 1 }', '19.05 mm'],
    ['fuel-pressure: { value: 2 kPa, also: [13.8 kPa], from: m48 p. 1 }', '2 psi'],
    ['fuel-pressure: { value: 2 psi, also: [13.8 psi], from: m48 p. 1 }', '13.8 kPa'],
    [
      'idle-vacuum: { value: 17 to 20 inHg, also: [58 to 67 inHg], from: m48 p. 1 }',
      '58 to 67 kPa',
    ],
    [
      'idle-mixture: { value: 9 turns out, also: [1-1/2 turns out], from: m48 p. 1 }',
      '9 flats out',
    ],
    [
      'advance-maximum: { value: 28° distributor, also: [28° crank], speed: 2000 rpm, from: m48 p. 1 }',
      '14° distributor',
    ],
    [
      'advance-maximum: { value: 14° distributor, also: [14° crank], speed: 2000 rpm, from: m48 p. 1 }',
      '28° crank',
    ],
    [
      'advance-maximum: { value: 26° crank, also: [26° distributor], speed: 2000 rpm, from: m48 p. 1 }',
      '13° distributor',
    ],
    [
      'advance-start: { value: 400 rpm distributor, also: [400 rpm crank], from: m48 p. 1 }',
      '800 rpm crank',
    ],
    [
      'vacuum-maximum: { value: 12° distributor, crank: 12°, vacuum: 15 inHg, from: m48 p. 1 }',
      '24°',
    ],
  ],
};

describe.each(Object.entries(cases))('the misprint that is offered: %s', (_, list) => {
  it.each(list)('%s', (setting, right) => {
    const cures = curesOf(setting);
    expect(isNamed(cures, right), `${right} in: ${cures.join(' | ')}`).toBe(true);
  });
});

describe('the thread that is offered for one that no system has', () => {
  const threads: readonly (readonly [key: string, text: string, setting: string, first: string])[] =
    [
      [
        'stop-screw-thread',
        'M6 x 1.5',
        'idle-stop: { value: 1-1/2 turns in after contact, travel: 1.5 mm, from: m48 p. 1 }',
        'M6 x 1',
      ],
      [
        'stop-screw-thread',
        'M6 x 1.5',
        'idle-stop: { value: 2 turns in after contact, travel: 1.5 mm, from: m48 p. 1 }',
        'M6 x 0.75',
      ],
      [
        'idle-needle-thread',
        'M5 x 8',
        'idle-mixture: { value: 1-1/4 turns out, from: m48 p. 1 }',
        'M5 x 0.8',
      ],
      [
        'idle-needle-thread',
        'M5 x 5',
        'idle-mixture: { value: 1-1/4 turns out, from: m48 p. 1 }',
        'M5 x 0.5',
      ],
      [
        'jet-nut-thread',
        '3/8-29 BSF',
        'idle-mixture: { value: 1-1/4 turns out, from: m48 p. 1 }',
        '3/8-20 BSF',
      ],
      [
        'idle-needle-thread',
        '10-23 UNF',
        'idle-mixture: { value: 1-1/4 turns out, from: m48 p. 1 }',
        '10-32 UNF',
      ],
      [
        'idle-needle-thread',
        '10-33 UNC',
        'idle-mixture: { value: 1-1/4 turns out, from: m48 p. 1 }',
        '10-24 UNC',
      ],
      [
        'idle-needle-thread',
        '10-23',
        'idle-mixture: { value: 2 turns out, travel: 0.0625 in, from: m48 p. 1 }',
        '10-32 UNF',
      ],
      [
        'idle-needle-thread',
        '1/4-62 BSF',
        'idle-mixture: { value: 1 turn out, from: m48 p. 1 }',
        '1/4-26 BSF',
      ],
      [
        'idle-needle-thread',
        '30 BA',
        'idle-mixture: { value: 1 turn out, travel: 0.35 mm, from: m48 p. 1 }',
        '10 BA',
      ],
      [
        'idle-needle-thread',
        '#18-32 UNF',
        'idle-mixture: { value: 1 turn out, from: m48 p. 1 }',
        '10-32 UNF',
      ],
    ];

  it.each(threads)('%s: %s beside %s', (key, text, setting, first) => {
    const { findings } = examine(
      wholeSheet({
        front: `${unit('carburetor', 'single-barrel, downdraft, pump')}\n  ${key}: "${text}"`,
        settings: setting,
      }),
      exampleFile,
      context,
    );
    const found = findings.find(({ check }) => check === 'thread-unknown');
    expect(`${found?.fix} `).toMatch(new RegExp(`^write ${first.replace('.', '\\.')}[, ]`));
  });

  it('says it of the screw of one setting as well', () => {
    const { findings } = examine(
      wholeSheet({
        settings:
          'dashpot: { value: 3 turns in, thread: 8-23 UNC, travel: 0.0938 in, from: m48 p. 1 }',
      }),
      exampleFile,
      context,
    );
    const found = findings.find(({ check }) => check === 'thread-unknown');
    expect(found?.fix).toMatch(/^write 8-32 UNC, which the turns and the travel bear out/);
  });
});

describe('the name that is offered where the figures bear out another', () => {
  const lobes = (feature: string, settings: string): string =>
    `${unit('ignition-distributor', `${feature}, single-points`)}\nsettings:\n  ${settings}`;
  const screw = (key: string, text: string, setting: string): string =>
    `${unit('carburetor', 'single-barrel, downdraft')}\n  ${key}: ${text}\nsettings:\n  ${setting}`;

  it.each([
    [lobes('six-lobe', 'lobe-spacing: { value: 45°, from: m48 }'), '`eight-lobe` among'],
    [lobes('four-lobe', 'lobe-spacing: { value: 60 ± 0.5°, from: m48 }'), '`six-lobe` among'],
    [
      lobes(
        'eight-lobe',
        'dwell: { value: 54°, from: m48 }\n  dwell-percent: { value: 60 %, from: m48 }',
      ),
      '`four-lobe` among',
    ],
    [
      screw(
        'stop-screw-thread',
        '4 BA',
        'idle-stop: { value: 2 turns in after contact, travel: 1.62 mm, from: m48 }',
      ),
      '2 BA for the',
    ],
    [
      screw(
        'idle-needle-thread',
        '6 BA',
        'idle-mixture: { value: 2 turns out, travel: 1.18 mm, from: m48 }',
      ),
      '5 BA for the',
    ],
  ])('%s', (front, right) => {
    const { findings } = examine(wholeSheet({ front, body: '# Orlo F27\n' }), exampleFile, context);
    const found = findings.find(({ check }) => check === 'worked-disagrees');
    expect(
      found?.fix
        ?.split(/; |,? or /)
        .slice(0, 2)
        .join(' | '),
    ).toContain(right);
  });
});
