import type { CheckContext, Example } from '../../src/checks/define.ts';
import { gaugeBook } from '../../src/gauges/index.ts';
import { builtInKinds, readKind } from '../../src/kinds/index.ts';
import type { Kind } from '../../src/kinds/model.ts';
import type { SheetText } from '../../src/sheet/index.ts';

/** The file that every example stands in. */
export const exampleFile = 'sheets/orlo-f27.md';

/** Top-level keys of the clean sheet, each with its lines. */
const cleanFront: readonly (readonly [string, string])[] = [
  ['gaugeleaf', 'gaugeleaf: 1'],
  ['sheet', 'sheet: orlo-f27'],
  ['title', 'title: Orlo F27 single-barrel, Wexcombe Four'],
  [
    'unit',
    `unit:
  kind: carburetor
  maker: Orlo
  model: F27
  features: [single-barrel, downdraft, pump]`,
  ],
  ['fits', 'fits:\n  - { marque: Wexcombe, model: Four, years: 1947-1949 }'],
  ['revision', 'revision: 1'],
  ['date', 'date: 2026-10-03'],
  ['status', 'status: proof'],
  [
    'sources',
    'sources:\n  m48: { title: Wexcombe Four Workshop Manual, kind: manual, year: 1948 }',
  ],
];

/** Settings of the clean sheet, each with its lines. */
const cleanSettings: readonly (readonly [string, string])[] = [
  [
    'float-level',
    `float-level:
  value: 13/64 in
  at: free end of the float
  cover: inverted
  gasket: removed
  from: m48 p. 31`,
  ],
  ['pump-stroke', 'pump-stroke: { value: 7/16 in, link: middle hole, from: m48 p. 34 }'],
  ['idle-mixture', 'idle-mixture: { value: 1-1/4 turns out, from: m48 p. 40 }'],
];

const cleanBody = `# Orlo F27 single-barrel

Cast-iron body; the number stands on a tag under a cover screw.

:::warning{hazard=gasoline-vapor}
Gasoline vapor burns. It can burn or kill you. No flame, spark or hot lamp; catch the fuel.
:::

## Float level

High level floods and stalls; low level starves.

1. Turn the cover over. :state[cover inverted]
2. Lift away the cover gasket. :state[gasket off]
3. Pass the gauge under the free end: :value[float-level].
4. Lay the gasket on, and the cover. :state[gasket on] :state[cover on]

## Pump stroke

1. Hold the throttle shut and measure to wide open: :value[pump-stroke].

## Initial idle

1. Turn the needle in until it seats lightly, then back it out: :value[idle-mixture].
`;

/**
 * The whole sheet of an example. A fragment's keys take the place of the clean sheet's keys of the
 * same name, others are added; a fragment's body takes the place of the whole body. A `settings:`
 * in `front` stands for all settings.
 */
export function wholeSheet(sheet: Example['sheet']): string {
  if (typeof sheet === 'string') return sheet;
  const given = blocks(sheet.front ?? '');
  const lines = merged(cleanFront, given);
  if (!given.some(([key]) => key === 'settings')) {
    const settings = merged(cleanSettings, blocks(sheet.settings ?? '')).join('\n');
    lines.push('settings:', settings.replace(/^(?=.)/gm, '  '));
  }
  return `---\n${lines.join('\n')}\n---\n\n${sheet.body ?? cleanBody}`;
}

function merged(
  clean: readonly (readonly [string, string])[],
  given: readonly (readonly [string, string])[],
): string[] {
  const replaced = new Map(given);
  const lines = clean.map(([key, text]) => replaced.get(key) ?? text);
  const known = new Set(clean.map(([key]) => key));
  return [...lines, ...given.filter(([key]) => !known.has(key)).map(([, text]) => text)];
}

/** YAML lines cut before each line that is not indented, each piece under its key. */
function blocks(yaml: string): readonly (readonly [string, string])[] {
  return yaml
    .split(/\n(?=\S)/)
    .map((text) => text.trimEnd())
    .filter((text) => text !== '')
    .map((text) => [text.slice(0, text.search(/:(\s|$)/)), text] as const);
}

/** A kind such as a club adds, for what no unit of the built-in kind needs. */
const fuelPump = `gaugeleaf-kind: 1
kind: fuel-pump
title: Fuel pump
always:
  operations: [[diaphragm]]
features:
  glass-bowl:
    label: Glass bowl
    explain: A bowl of glass with a strainer in it.
    operations: [[strainer, bowl-seal]]
settings:
  pump-pressure:
    label: Pump pressure
    explain: Pressure at the outlet with no flow.
    dimensions: [pressure]
operations:
  diaphragm:
    label: Diaphragm
    explain: Renew the diaphragm.
    stage: bench
  strainer:
    label: Strainer
    explain: Clean the strainer.
    stage: bench
  bowl-seal:
    label: Bowl seal
    explain: Renew the seal of the bowl.
    stage: before-start
`;

function clubKind(): Kind {
  const { kind, problems } = readKind(fuelPump, 'kinds/fuel-pump.yaml');
  if (kind === null) throw new Error(problems.map(({ message }) => message).join('; '));
  return kind;
}

/** What an example may be based on. */
const bases: ReadonlyMap<string, SheetText> = new Map(
  [
    ['orlo-base', wholeSheet({ front: 'sheet: orlo-base' })],
    ['orlo-circle', wholeSheet({ front: 'sheet: orlo-circle\nbased-on: orlo-f27' })],
    ['orlo-broken', '---\ntitle: "Orlo\n---\n'],
  ].map(([id = '', text = '']) => [id, { file: `sheets/${id}.md`, text }]),
);

/** What the examples are checked with: the built-in kinds and gauges, a kind of a club, and one picture. */
export function exampleContext(): CheckContext {
  return {
    gauges: gaugeBook(),
    kinds: new Map([...builtInKinds(), ['fuel-pump', clubKind()]]),
    wireGauge: null,
    family: { find: (id) => bases.get(id) ?? null, names: () => [...bases.keys()] },
    measuredUnits: 3,
    secondReading: 'released',
    readings: {
      digest: String,
      all: [
        {
          file: 'sheets/readings/orlo-f27.m48.yaml',
          source: 'm48',
          by: 'A. HALE',
          date: null,
          read: [{ page: 'p. 9', setting: 'dashpot', verdict: 'same', sheet: '0', answer: '0' }],
          settled: [],
        },
      ],
    },
    sharedSources: new Map([['shared', { title: 'Shared Manual', year: '1951' }]]),
    records: (name) =>
      name === '1234'
        ? { file: 'sheets/records/orlo-f27.1234.yaml', left: [['pump-stroke', '0.437 in']] }
        : null,
    picture: (url) => {
      if (/^[a-z]+:/.test(url)) return 'remote';
      if (url.startsWith('../')) return 'outside';
      if (url.endsWith('.tiff')) return 'unsupported';
      const named = /^pictures\/(damaged|unsafe|heavy)\./.exec(url)?.[1];
      if (named !== undefined) return named as 'damaged' | 'unsafe' | 'heavy';
      return url === 'pictures/bowl.png' ? 'found' : 'missing';
    },
  };
}
