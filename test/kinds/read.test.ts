import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { builtInKinds, readKind } from '../../src/kinds/index.ts';
import { LineIndex } from '../../src/text/span.ts';

const distributor = `gaugeleaf-kind: 1
kind: distributor
title: Distributor
unit:
  cam-lobes-thread: [thread]
  shaft: [length]
settings:
  point-gap:
    label: Point gap
    aliases: [contact gap]
    explain: Gap of the open points.
    dimensions: [length, condition]
    conditions: [just touches]
    usual: { length: [0.005 in, 0.05 in] }
  dwell:
    label: Dwell
    explain: Angle of the closed points.
    dimensions: [angle]
operations:
  point-gap:
    stage: bench
    hazards: [sharp-edge]
    steps: ["Measure: {setting}."]
  dwell: { stage: running, after: { point-gap: the gap makes the dwell } }
hazards:
  sharp-edge:
    label: Sharp edge
    signal: caution
    message: { hazard: Edges are sharp., consequence: They cut., avoid: Wear gloves. }
`;

/** Place, text under the span and message of everything wrong with a changed distributor. */
function faults(from: string, to: string): [string, string, string][] {
  const text = distributor.replace(from, to);
  if (text === distributor) throw new Error(`nothing to change: ${from}`);
  const { kind, problems } = readKind(text, 'kinds/distributor.yaml');
  expect(kind === null).toBe(problems.length > 0);
  const lines = new LineIndex(text);
  return problems.map(({ span, message, fix, file }) => {
    expect(file).toBe('kinds/distributor.yaml');
    const { line, column } = lines.place(span.start);
    const under = text.slice(span.start, span.end).split('\n')[0] ?? '';
    return [`${line}:${column} ${under}`, message, fix ?? ''];
  });
}

test('a club’s own kind is read without code', () => {
  const { kind, problems } = readKind(distributor, 'kinds/distributor.yaml');
  expect(problems).toEqual([]);
  expect(kind?.name).toBe('distributor');
  expect(kind?.operations.get('point-gap')).toMatchObject({
    label: 'Point gap',
    aliases: ['contact gap'],
    explain: 'Gap of the open points.',
    settings: ['point-gap'],
  });
  expect(kind?.operationNamed('Contact gap')?.name).toBe('point-gap');
  expect(kind?.settings.get('dwell')).toMatchObject({ usual: [], mustSay: [], perBarrel: true });
  expect(kind?.threadsOfUnit.has('cam-lobes-thread')).toBe(true);
});

test('a kind that comes with the program reads the same from its file', () => {
  const path = join(import.meta.dirname, '../../src/kinds/carburetor.yaml');
  const { kind, problems } = readKind(readFileSync(path, 'utf8'), 'carburetor.yaml');
  expect(problems).toEqual([]);
  const plain = (value: unknown) =>
    JSON.stringify(value, (_, inner) => {
      if (inner instanceof Map || inner instanceof Set) return [...inner];
      return typeof inner === 'bigint' ? String(inner) : inner;
    });
  expect(plain(kind)).toBe(plain(builtInKinds().get('carburetor')));
});

test.each<[string, string, string, [string, string, string]]>([
  [
    'YAML that is none',
    'title: Distributor',
    'title: "Distributor',
    ['3:8 "Distributor', expect.any(String) as string, expect.any(String) as string],
  ],
  [
    'a key that is none',
    'stage: bench',
    'stag: bench',
    [
      '21:5 stag',
      '`operations › point-gap › stag` is no key that is known here',
      'did you mean `stage`?',
    ],
  ],
  [
    'a setting that nothing bears',
    'stage: bench',
    'stage: bench\n    settings: [piont-gap]',
    ['22:16 piont-gap', 'this kind has no setting `piont-gap`', 'did you mean `point-gap`?'],
  ],
  [
    'a hazard that nothing bears',
    '[sharp-edge]',
    '[hot-coil]',
    [
      '22:15 hot-coil',
      'this kind has no hazard `hot-coil`',
      'add it under `hazards:`, or take it out',
    ],
  ],
  [
    'an operation without a name for people',
    'dwell: { stage: running',
    'timing: { stage: running, explain: x, settings: [dwell]',
    [
      '24:3 timing',
      '`timing` has no `label`, and there is no setting of that name to take it from',
      'add `label:`',
    ],
  ],
  [
    'a bore that the unit has not',
    'usual: { length: [0.005 in, 0.05 in] }',
    'usual: { length: [0.005 in, 0.05 in] }\n    measured: in-bore\n    bore: barrel',
    ['16:11 barrel', '`barrel` is no length of the unit', 'add `barrel: [length]` under `unit:`'],
  ],
  [
    'a bore of what is not measured in it',
    'usual: { length: [0.005 in, 0.05 in] }',
    'usual: { length: [0.005 in, 0.05 in] }\n    measured: gap\n    bore: shaft',
    ['16:5 bore', '`point-gap` has a bore, but is not measured in it', 'add `measured: in-bore`'],
  ],
  [
    'a circle',
    'stage: bench',
    'stage: bench\n    after: { dwell: the dwell shows it }',
    [
      '25:28 after',
      'these operations wait for one another: `point-gap` after `dwell` after `point-gap`',
      'take one of the `after` entries out',
    ],
  ],
  [
    'an alias that means two things',
    'label: Dwell',
    'label: Dwell\n    aliases: [Contact-Gap]',
    [
      '17:15 Contact-Gap',
      '`Contact-Gap` means both `point-gap` and `dwell`',
      'leave it to one of them',
    ],
  ],
  [
    'a range upside down',
    '[0.005 in, 0.05 in]',
    '[0.05 in, 0.005 in]',
    [
      '14:22 [0.05 in, 0.005 in]',
      '0.05 in to 0.005 in is no range',
      'write the lowest first, then the highest',
    ],
  ],
  [
    'a range of something else',
    'length: [0.005 in, 0.05 in]',
    'speed: [400 rpm, 900 rpm]',
    [
      '14:14 speed',
      '`point-gap` has a usual speed, but it may not be stated as one',
      'add `speed` to `dimensions`',
    ],
  ],
  [
    'conditions that it may not be stated in',
    'dimensions: [length, condition]',
    'dimensions: [length]',
    [
      '13:5 conditions',
      '`point-gap` lists conditions, but `condition` is not among its dimensions',
      'add `condition` to `dimensions`',
    ],
  ],
  [
    'a step with a setting that is none',
    '{setting}',
    '{gap}',
    [
      '23:14 Measure: {gap}.',
      'this kind has no setting `gap`',
      'add it under `settings:`, or take it out',
    ],
  ],
])('%s is told of at its place', (_, from, to, wanted) => {
  expect(faults(from, to)).toEqual([wanted]);
});

test('a usual range without a unit is told of at its end', () => {
  const [found] = faults('[0.005 in, 0.05 in]', '[0.005 in, "50"]');
  expect(found?.[0]).toBe('14:34 50');
  expect(found?.[2]).toBe('write a size with a unit');
});

test.each([
  ['', 'empty'],
  ['just words', 'words'],
  ['[1, 2]', 'a list'],
  [`kind: ${'['.repeat(5000)}`, 'deep'],
  ['\0', 'a NUL'],
])('%# what is no kind at all gives words and no kind', (text) => {
  const { kind, problems } = readKind(text, 'x.yaml');
  expect(kind).toBeNull();
  expect(problems.length).toBeGreaterThan(0);
});

test('what interchanging units have in common is a size of the unit or a setting', () => {
  const interchange = (yaml: string) => faults('settings:\n', `interchange: ${yaml}\nsettings:\n`);
  expect(interchange('{ unit: [cam-lobes-thread], settings: [dwel] }')).toEqual([
    [
      '7:23 cam-lobes-thread',
      'this kind has no size of the unit `cam-lobes-thread`',
      'add it under `unit:`, or take it out',
    ],
    ['7:53 dwel', 'this kind has no setting `dwel`', 'did you mean `dwell`?'],
  ]);
  expect(builtInKinds().get('carburetor')?.interchange).toContain('idle-speed');
});
