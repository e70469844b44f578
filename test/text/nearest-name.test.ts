import { expect, test } from 'vitest';
import { nearestName } from '../../src/text/nearest-name.ts';

const names = ['float-level', 'float-drop', 'fuel-level', 'unloader', 'idle-speed', 'from', 'also'];

test.each([
  ['flaot-level', 'float-level'], // two letters swapped
  ['float-levl', 'float-level'], // one left out
  ['Float Level', 'float-level'], // another way to write it
  ['float_level', 'float-level'],
  ['unlaoder', 'unloader'],
  ['unnloaderr', 'unloader'], // two too many, ten letters
  ['form', 'from'], // a swap is one edit, and four letters bear one
  ['idel-sped', 'idle-speed'],
  ['', null],
  ['frmo-x', null],
  ['fxxm', null], // two edits in four letters
  ['metering-rods', null],
  ['no', null],
  ['f'.repeat(5000), null],
])('%s → %s', (word, wanted) => {
  expect(nearestName(word, names)).toBe(wanted);
});

test('of equally near names the same first letter wins, then the one that sorts first', () => {
  expect(nearestName('cat', ['hat', 'car', 'cap'])).toBe('cap');
  expect(nearestName('cat', ['cap', 'car', 'hat'])).toBe('cap');
  expect(nearestName('bat', ['zat', 'aat'])).toBe('aat');
});

test('nothing to choose from gives nothing', () => {
  expect(nearestName('float', [])).toBeNull();
});
