import { expect, test } from 'vitest';
import { gaugeBook, kitOf, readKitEntry } from '../../../src/gauges/index.ts';
import { builtInKinds } from '../../../src/kinds/index.ts';
import { gaugesToGather } from '../../../src/press/matter/gauges-to-gather.ts';
import { gaugeLine, resolvedGauges } from '../../../src/press/matter/resolved-gauge.ts';
import { readSheet } from '../../../src/sheet/index.ts';

const kinds = builtInKinds();

function worked(setting: string, ...kit: readonly string[]) {
  const text = `---\ngaugeleaf: 1\nunit: { kind: carburetor, throttle-bore: 1-7/16 in }\nsettings:\n  ${setting}\n---\n`;
  const sheet = readSheet(text, 'sheets/x.md', { kinds, gauges: gaugeBook(), wireGauge: null });
  const [first] = sheet.settings.values();
  if (!first) throw new Error('no setting');
  const own = kit.length === 0 ? null : kitOf(kit.map((line) => readKitEntry(line)));
  return resolvedGauges(first, sheet, { kit: own });
}

test.each([
  ['bowl-vent: { value: 0.018–0.022 in }', '0.020 in leaf; go 0.019 in leaf, no-go 0.021 in leaf'],
  ['dashpot: { value: 3/32 ± 1/64 in }', '3/32 drill; go 0.080 in wire, no-go No. 36 drill'],
  [
    'choke-pull-down: { value: 0.157 ± 0.003 in }',
    'No. 22 drill; go 5/32 drill, no-go No. 21 drill',
  ],
])('%s is measured with %s', (setting, text) => {
  expect(gaugeLine(worked(setting))).toBe(text);
  expect(worked(setting)).toMatchObject([{ place: null, chosen: true, caution: null }]);
});

test('in a bore of known width it says how to hold the wire, and what lying across costs', () => {
  // R = .71875 in: R - √(R² - .0625) = .0449 in.
  expect(worked('fast-idle-gap: { value: 34 to 36 thou }')).toMatchObject([
    {
      place: null,
      take: '0.035 in wire',
      held: 'held along the bore',
      more: 'to prove it, make go 0.0341 in and no-go 0.0359 in, known to 0.0001 in',
      caution: 'laid across the bore, 1/2 in of gauge reads 0.0449 in too little',
    },
  ]);
});

test('each barrel that is told apart has its own, by round gauges', () => {
  expect(
    worked('fast-idle-gap: { places: { primary: 0.020 ± 0.001 in, secondary: 0.025 ± 0.001 in } }'),
  ).toMatchObject([
    { place: 'primary', take: '0.020 in wire' },
    { place: 'secondary', take: '0.025 in wire' },
  ]);
});

test.each([
  ['bowl-vent: { value: 0.020 in, gauge: 0.021 in leaf }', '0.021 in leaf', false],
  [
    'bowl-vent: { value: 0.020 in, gauge: { go: 0.019 in leaf, no-go: 0.021 in leaf } }',
    'go 0.019 in leaf, no-go 0.021 in leaf',
    false,
  ],
  ['bowl-vent: { value: 5/64 drill }', null, false],
  ['bowl-vent: { value: 0.020 in min }', 'go 0.020 in leaf', true],
  ['bowl-vent: { value: 0.020 in max }', 'no-go 0.020 in leaf', true],
  ['bowl-vent: { value: 0.0185 in }', '0.016 in and 0.0025 in leaves together', true],
  ['float-drop: { value: 1-1/8 ± 1/16 in }', 'steel rule', true],
  ['float-drop: { value: 7/8 in min }', 'steel rule', true],
])('%s takes %s', (setting, line, chosen) => {
  expect(gaugeLine(worked(setting))).toBe(line);
  expect(worked(setting)[0]?.chosen).toBe(chosen);
});

test.each(['main-jet: { value: 0.050 in }', 'fast-idle-speed: { value: 1500 rpm }'])(
  '%s asks for none',
  (setting) => expect(worked(setting)).toEqual([]),
);

test('what a booklet gathers goes before what else is at hand, where it can measure', () => {
  const text =
    '---\ngaugeleaf: 1\nunit: { kind: carburetor }\nsettings:\n' +
    '  bowl-vent: { value: 0.018–0.022 in }\n  dashpot: { value: 0.0205–0.024 in, gauge: 0.021 in leaf }\n---\n';
  const sheet = readSheet(text, 'sheets/x.md', { kinds, gauges: gaugeBook(), wireGauge: null });
  const [vent] = sheet.settings.values();
  if (!vent) throw new Error('no setting');
  const { kit } = gaugesToGather([{ sheet }]);
  expect(kit.gauges.map(({ gauge }) => gauge.label)).toEqual(['0.021 in leaf']);
  expect(resolvedGauges(vent, sheet, { gathered: kit })[0]?.take).toBe('0.021 in leaf');
  const other = kitOf([readKitEntry('0.040 in wire')]);
  expect(resolvedGauges(vent, sheet, { gathered: other })[0]?.take).toBe('0.020 in leaf');
});

test('the club’s own kit counts', () => {
  expect(worked('bowl-vent: { value: 0.018–0.022 in }', '0.019 in wire')).toMatchObject([
    { take: '0.019 in wire', more: expect.stringMatching(/^to prove it/) },
  ]);
});
