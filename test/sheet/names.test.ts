import { describe, expect, test } from 'vitest';
import { gaugeBook } from '../../src/gauges/index.ts';
import { builtInKinds, kindNamed } from '../../src/kinds/index.ts';
import { readSheet, settingNamed } from '../../src/sheet/index.ts';

const kinds = builtInKinds();

function read(settings: string, work = '', based: string | null = null) {
  const front = (rest: string) =>
    `---\ngaugeleaf: 1\n${rest}\n---\n\n# X\n\n## Float level\n\n1. ${work}\n`;
  const base = {
    file: 'sheets/base.md',
    text: front(`unit: { kind: Carburetor }\n${based ?? ''}`),
  };
  const own = based === null ? 'unit: { kind: Carburetor }' : 'based-on: base';
  return readSheet(front(`${own}\nsettings:\n${settings}`), 'sheets/x.md', {
    kinds,
    gauges: gaugeBook(),
    wireGauge: null,
    family: { find: (id) => (id === 'base' ? base : null), names: () => ['base'] },
  });
}

const ids = (settings: string) => [...read(settings).settings.values()].map(({ id }) => id);

describe('what a key of `settings:` means', () => {
  test.each([
    ['Float Level', 'float-level'],
    ['choke unloader', 'unloader'],
    ['vacuum_break', 'choke-pull-down'],
    ['Heater Flap', 'heater-flap'],
    ['idle-speed-in-drive', 'idle-speed'],
  ])('`%s` alone is `%s`', (key, id) => {
    expect(ids(`  ${key}: { value: 1/4 in }`)).toEqual([id]);
  });

  test.each([
    [['idle-speed', 'idle-speed-in-drive']],
    [['idle-speed-in-drive', 'idle-speed']],
    [['float-level', 'float-level-check']],
  ])('%j are two settings', (keys) => {
    expect(ids(keys.map((key) => `  ${key}: { value: 1/4 in }`).join('\n'))).toEqual(keys);
  });

  test('a key that only comes near a name leaves marks of that name to the other', () => {
    const sheet = read(
      '  idle-speed-in-drive: { value: 450 rpm }\n  idle-speed: { value: 500 rpm }',
      ':value[Idle Speed], :value[idle speed in drive], :value[curb idle]',
    );
    expect(sheet.values.map(({ setting }) => setting?.name.value)).toEqual([
      'idle-speed',
      'idle-speed-in-drive',
      sheet.values[2]?.setting?.name.value,
    ]);
    expect(settingNamed('IDLE_SPEED', sheet)).toBe(sheet.settings.get('idle-speed'));
    expect(settingNamed('float-drop', sheet)).toBe(null);
  });
});

describe('a variant', () => {
  const base = 'settings:\n  float-level: { value: 13/64 in, cover: inverted }';

  test('states a setting of its base under another of its names', () => {
    const { settings, kind } = read('  Float Level: { value: 7/32 in }', '', base);
    expect(kind?.name).toBe('carburetor');
    expect([...settings.values()].map(({ id, value }) => [id, value?.text])).toEqual([
      ['float-level', '7/32 in'],
    ]);
  });

  test('loses neither of two names that it gives one setting', () => {
    const { settings } = read(
      '  Float Level: { value: 7/32 in }\n  float_level: { value: 15/64 in }',
      '',
      base,
    );
    expect([...settings.keys()]).toEqual(['Float Level', 'float_level']);
  });
});

test.each([
  ['carburetor', 'carburetor'],
  [' CARBURETOR ', 'carburetor'],
  ['Ignition Distributor', 'ignition-distributor'],
  ['ignition_distributor', 'ignition-distributor'],
  ['carburettor', null],
  ['', null],
])('the kind `%s`', (text, name) => {
  expect(kindNamed(text, kinds)?.name ?? null).toBe(name);
});
