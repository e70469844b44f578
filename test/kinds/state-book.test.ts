import { describe, expect, test } from 'vitest';
import { builtInKinds } from '../../src/kinds/index.ts';

const kind = builtInKinds().get('carburetor');
if (kind === undefined) throw new Error('there is no kind carburetor');
const named = (text: string) => {
  const state = kind.stateNamed(text);
  return state === null ? null : `${state.part} ${state.condition}`;
};

describe('a mark', () => {
  test.each([
    ['cam named-step', 'cam named-step'],
    ['cam on second step', 'cam named-step'],
    ['cam: on the second step', 'cam named-step'],
    ['cam second step', 'cam named-step'],
    ['the throttle at idle', 'throttle on-idle-stop'],
    ['throttle on its stop', 'throttle on-idle-stop'],
    ['throttle against stop', 'throttle on-idle-stop'],
    ['unit on bench', 'unit on-bench'],
    ['unit in a vise', 'unit on-bench'],
    ['gasket on', 'cover-gasket on'],
    ['gasket off', 'cover-gasket off'],
    ['Cover, upside down', 'cover inverted'],
  ])('`%s` is %s', (text, state) => {
    expect(named(text.replace(/^the /, ''))).toBe(state);
  });

  test.each(['gasket', 'gasket on the', 'cam on', 'throttle fourth step', 'on', ''])(
    '`%s` is none',
    (text) => {
      expect(named(text)).toBeNull();
    },
  );
});

describe('a part', () => {
  test.each([
    ['Cover gasket', 'cover-gasket'],
    ['COVER_GASKET', 'cover-gasket'],
    ['fast idle cam', 'cam'],
    ['gasket paper', null],
    ['', null],
  ])('%j is %j', (text, part) => {
    expect(kind.partNamed(text)?.name ?? null).toBe(part);
  });

  test('is found where a text only begins with it, by its longest name', () => {
    expect(kind.partBegun('Cover gasket, askew')?.name).toBe('cover-gasket');
    expect(kind.partBegun('cover askew')?.name).toBe('cover');
    expect(kind.partBegun('coverlet')).toBeNull();
  });
});
