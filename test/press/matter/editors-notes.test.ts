import { describe, expect, it } from 'vitest';
import { builtInKinds } from '../../../src/kinds/index.ts';
import { plainPoint } from '../../../src/press/matter/editors-notes.ts';

const kind = builtInKinds().get('carburetor') ?? null;

describe('an accepted point on the card', () => {
  it.each([
    ['`float-drop` is given, but no step uses it', '“Float drop” is given, but no step uses it'],
    [
      '0.230 in stands beside the setting `float-level`, which is 13/64 in',
      '0.230 in stands beside the setting “Float level”, which is 13/64 in',
    ],
    [
      'No. 29 drill is 0.1360 in, but `also` says 0.163 in',
      'No. 29 drill is 0.1360 in, but the same size written another way says 0.163 in',
    ],
    ['`my-own-gap` follows no source', 'My own gap follows no source'],
    ['write `:value[idle-speed]` if it is meant', 'Write “Idle speed” if it is meant'],
  ])('tells %s in the words of the card', (message, printed) => {
    expect(plainPoint(message, kind)).toBe(printed);
    expect(plainPoint(message, null)).not.toContain('`');
  });
});
