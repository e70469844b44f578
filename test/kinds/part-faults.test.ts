import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { readKind } from '../../src/kinds/index.ts';

const winch = `gaugeleaf-kind: 1
kind: winch
title: Winch
features:
  brake: { label: Brake, explain: It holds. }
settings:
  band-gap:
    label: Band gap
    explain: Gap of the band.
    dimensions: [length]
operations:
  band-gap:
    stage: bench
    needs: { guard: { is: off, because: it lies under the guard } }
    needs-said: { lever: lever }
    leaves: { lever: down }
    disturbs: { band-gap: the band is bent }
parts:
  guard:
    label: guard
    starts: on
    home: [on]
    if-feature: [brake]
    reads: { take-off: off, put-back: on }
    conditions:
      on: {}
      off: {}
      propped: { counts-as: [off] }
  lever:
    label: lever
    starts: up
    conditions:
      up: {}
      down: {}
states:
  lever up: { bars: { guard: { is: propped, because: the lever fills its place } } }
  lever down:
    starts-up: true
    after: { band-gap: it slips without }
    needs: { guard: { is: on, because: the band flies } }
    follows: { guard: { is: on, because: the lever shuts it } }
verbs:
  take-off: [take off]
  put-back: [refit]
phrases:
  lever down: [pull the lever]
`;

function faults(from: string, to: string): readonly (readonly [string, string, string | null])[] {
  const text = winch.replace(from, to);
  if (text === winch && from !== '') throw new Error(`nothing to change: ${from}`);
  return readKind(text, 'kinds/winch.yaml').problems.map(({ span, message, fix }) => [
    text.slice(span.start, span.end).split('\n')[0] ?? '',
    message,
    fix,
  ]);
}

test('names that all stand', () => {
  expect(faults('', '')).toEqual([]);
});

test.each([
  [
    'needs: { guard: { is: off',
    'needs: { gaurd: { is: off',
    'gaurd',
    'this kind has no part `gaurd`',
    'did you mean `guard`?',
  ],
  [
    'needs: { guard: { is: off',
    'needs: { guard: { is: [off, proped]',
    'proped',
    '`guard` has no condition `proped`',
    'did you mean `propped`?',
  ],
  [
    'needs-said: { lever',
    'needs-said: { leaver',
    'leaver',
    'this kind has no part `leaver`',
    'did you mean `lever`?',
  ],
  [
    'leaves: { lever: down }',
    'leaves: { lever: sideways }',
    'sideways',
    '`lever` has no condition `sideways`',
    'write one of them: `up`, `down`',
  ],
  [
    'disturbs: { band-gap',
    'disturbs: { band-gpa',
    'band-gpa',
    'this kind has no setting `band-gpa`',
    'did you mean `band-gap`?',
  ],
  ['starts: on', 'starts: onn', 'onn', '`guard` has no condition `onn`', 'did you mean `on`?'],
  [
    'home: [on]',
    'home: [shut]',
    'shut',
    '`guard` has no condition `shut`',
    'write one of them: `on`, `off`, `propped`',
  ],
  [
    'if-feature: [brake]',
    'if-feature: [brakes]',
    'brakes',
    'this kind has no feature `brakes`',
    'did you mean `brake`?',
  ],
  [
    'take-off: off',
    'takeoff: off',
    'takeoff',
    'this kind has no verbs `takeoff`',
    'did you mean `take-off`?',
  ],
  [
    'put-back: on',
    'put-back: home',
    'home',
    '`guard` has no condition `home`',
    'write one of them: `on`, `off`, `propped`',
  ],
  [
    'counts-as: [off]',
    'counts-as: [of]',
    'of',
    '`guard` has no condition `of`',
    'did you mean `off`?',
  ],
  [
    'bars: { guard: {',
    'bars: { guards: {',
    'guards',
    'this kind has no part `guards`',
    'did you mean `guard`?',
  ],
  ['after: { band-gap', 'after: { band', 'band', 'this kind has no operation `band`', null],
  [
    'lever up: { bars',
    'guard on: { starts-up: true }\n  lever up: { bars',
    'true',
    'both `guard on` and `lever down` start the unit',
    'leave `starts-up` to one of them',
  ],
  [
    ', because: it lies under the guard',
    '',
    'guard',
    '`operations › band-gap › needs › guard` has no `because`',
    null,
  ],
] as const)('%s → %s', (from, to, at, message, fix) => {
  const found = faults(from, to);
  expect(found).toContainEqual([at, message, fix ?? expect.any(String)]);
});

test.each([
  [
    'what a state brings about and bars',
    'follows: { guard: { is: on, because: the lever shuts it } }',
    'follows: { guard: { is: off, because: it opens } }\n    bars: { guard: { is: off, because: it shuts } }',
    '`lever down` both brings about and bars `guard off`',
  ],
  [
    'a state that brings about what bars it',
    'lever up: { bars: { guard: { is: propped, because: the lever fills its place } } }',
    'guard on: { bars: { lever: { is: down, because: it is in the way } } }',
    '`lever down` brings about `guard on`, which bars it',
  ],
  [
    'a state that needs what it bars',
    'follows: { guard: { is: on, because: the lever shuts it } }',
    'bars: { guard: { is: on, because: it is in the way } }',
    '`lever down` needs what it bars',
  ],
  [
    'needs that shut one another out',
    'needs: { guard: { is: off, because: it lies under the guard } }',
    'needs: { lever: { is: up, because: it is }, guard: { is: propped, because: it is } }',
    'nothing meets both needs: the `lever` bars what is needed of the `guard`',
  ],
])('a contradiction: %s', (_, from, to, message) => {
  expect(faults(from, to).map(([, told]) => told)).toContain(message);
});

test('a phrase that says no state', () => {
  expect(faults('lever down: [pull', 'lever dwon: [pull')[0]?.[1]).toBe(
    '`lever` has no condition `dwon`',
  );
  expect(faults('lever down: [pull', 'leaver down: [pull')[0]).toEqual([
    'leaver down',
    'this kind has no part `leaver`',
    'did you mean `lever`?',
  ]);
});

test('the kinds that come with the tool name nothing that is not there', () => {
  const folder = join(import.meta.dirname, '..', '..', 'src', 'kinds');
  const files = readdirSync(folder).filter((name) => name.endsWith('.yaml'));
  expect(files.length).toBeGreaterThan(0);
  for (const file of files)
    expect(readKind(readFileSync(join(folder, file), 'utf8'), file).problems).toEqual([]);
});
