import { expect, it } from 'vitest';
import { builtInKinds } from '../../src/kinds/index.ts';
import { sameWords } from '../../src/rereading/same-words.ts';

const kind = builtInKinds().get('carburetor') ?? null;

it.each([
  ['at', 'free end of the float', "the float's free end"],
  ['at', 'free end of the float', 'free end'],
  ['at', 'Upper edge of the choke plate', 'choke plate, upper edge'],
  ['gasket', 'removed', 'off'],
  ['cam-step', 'highest', 'top'],
  ['cam-step', 'highest', 'on the top step'],
  ['link', 'middle hole', 'middle'],
  ['link', 'hole', 'the hole'],
])('%s: %s is %s', (key, first, second) => {
  expect(sameWords(key, first, second, { kind })).toBe('otherwise');
  expect(sameWords(key, second, first, { kind })).toBe('otherwise');
});

it.each([
  ['at', 'free end of the float', 'center of the float'],
  ['at', 'upper edge of the choke plate', 'edge of the choke plate'],
  ['at', 'not at the free end', 'free end'],
  ['gasket', 'removed', 'fitted'],
  ['cover', 'inverted', 'upright'],
  ['cam-step', 'second', 'third'],
  ['cam-step', 'highest', 'second'],
  ['link', 'middle hole', 'long stroke'],
  ['link', 'hole 1', 'hole 2'],
  ['temperature', 'hot', 'cold'],
])('%s: %s is not %s', (key, first, second) => {
  expect(sameWords(key, first, second, { kind })).toBe('differs');
  expect(sameWords(key, second, first, { kind })).toBe('differs');
});
