import { describe, expect, test } from 'vitest';
import { builtInKinds } from '../../src/kinds/index.ts';
import { stateNamed } from '../../src/order/index.ts';

const kind = builtInKinds().get('carburetor');
if (kind === undefined) throw new Error('there is no kind carburetor');
const named = (text: string) => {
  const state = stateNamed(text, kind);
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
