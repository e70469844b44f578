import { describe, expect, test } from 'vitest';
import { capHeightOf } from '../../src/project/font-cap-height.ts';
import { readTemplates } from '../../src/project/templates.ts';
import { folderWith } from './folder.ts';

describe('the height of capitals', () => {
  const { capHeights } = readTemplates(folderWith({}));

  // IBM Plex Sans: sCapHeight 698 of 1000 units, as fontTools reads it.
  test.each(['sans-regular', 'sans-italic', 'sans-semibold', 'condensed-regular'])(
    'of %s is .698 em',
    (name) => expect(capHeights.get(`${name}.woff2`)).toBe(0.698),
  );

  test.each(['upper-regular', 'lower-semibold'])('of the figures of %s is .537 em', (name) => {
    expect(capHeights.get(`${name}.woff2`)).toBe(0.537);
  });

  test('is read from a TrueType file as well', () => {
    expect(capHeights.get('sans-regular.ttf')).toBe(0.698);
  });

  test('of what is no font is not known', () => {
    expect(capHeightOf(new Uint8Array([1, 2, 3]))).toBeNull();
    expect(capHeightOf(new Uint8Array(64))).toBeNull();
  });
});
