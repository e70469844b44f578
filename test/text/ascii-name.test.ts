import { expect, test } from 'vitest';
import { sheetIdOf } from '../../src/import/sheet-ids.ts';
import { asciiName } from '../../src/text/ascii-name.ts';

test.each([
  ['Größe', 'grosse'],
  ['GRÖSSE', 'grosse'],
  ['Straße 12', 'strasse-12'],
  ['Ærlig Øre', 'aerlig-ore'],
  ['Cœur', 'coeur'],
  ['Łódź', 'lodz'],
  ['Đorđe þing', 'dorde-thing'],
  ['Régime à chaud', 'regime-a-chaud'],
  ['  -- Nº 2 (in) --', 'no-2-in'],
  ['浮子', ''],
])('%s is %s', (name, plain) => {
  expect(asciiName(name)).toBe(plain);
});

test('a drafted sheet is named by the same letters', () => {
  expect(sheetIdOf('Süßmann', 'F21')).toBe('sussmann-f21');
  expect(sheetIdOf('浮子')).toBe('unit');
});
