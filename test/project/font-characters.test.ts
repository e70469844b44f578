import { describe, expect, test } from 'vitest';
import { missingCharacters } from '../../src/press/browser/guard.ts';
import { fontCoverage } from '../../src/project/font-characters.ts';
import { readTemplates } from '../../src/project/templates.ts';

const { fonts, texts, characters } = readTemplates(import.meta.dirname);

const textFonts = [
  'sans-regular.woff2',
  'sans-italic.woff2',
  'sans-semibold.woff2',
  'condensed-regular.woff2',
  'condensed-semibold.woff2',
];

describe('the fonts that ship', () => {
  test.each(textFonts)('%s has every sign a sheet needs', (name) => {
    const font = fonts.get(name);
    expect(font, `${name} is in templates/fonts`).toBeDefined();
    const needed =
      'ABCXYZabcxyz0123456789.,:;!?()[]{}/\\|@#$%&*+-=<>_^~' +
      '½⅓⅔¼¾⅛⅜⅝⅞⁄±–—−×÷°′″≤≥≈≠☐☑✓→←↑↓⚠Ωµμ⌀■□●○“”‘’«»…•·' +
      'ÀÁÂÃÄÅÆÇÈÉÊËÌÍÎÏÑÒÓÔÕÖØÙÚÛÜÝàáâãäåæçèéêëìíîïñòóôõöøùúûüýÿßŒœŠšŽžŁłŐő€£¥©®§¶†‡№';
    expect(missingCharacters(needed, fontCoverage(font ?? new Uint8Array()))).toEqual([]);
  });

  test.each(['upper-regular', 'upper-semibold', 'lower-regular', 'lower-semibold'])(
    '%s has the figures of fractions and nothing else',
    (name) => {
      const codes = [...fontCoverage(fonts.get(`${name}.woff2`) ?? new Uint8Array())];
      expect(String.fromCodePoint(...codes.sort((a, b) => a - b))).toBe(' 0123456789⁄');
    },
  );

  test('the fallback for machines without fonts covers the same as the text font', () => {
    const fallback = fontCoverage(fonts.get('sans-regular.ttf') ?? new Uint8Array());
    const regular = fontCoverage(fonts.get('sans-regular.woff2') ?? new Uint8Array());
    expect([...fallback].sort()).toEqual([...regular].sort());
  });

  test('the style asks for no font that is not there, and leaves none unused', () => {
    const asked = [...(texts.get('styles.css') ?? '').matchAll(/url\(fonts\/([^)]+)\)/g)].map(
      (match) => match[1] ?? '',
    );
    const shipped = [...fonts.keys()].filter((name) => name.endsWith('.woff2'));
    expect([...new Set(asked)].sort()).toEqual(shipped.sort());
  });

  test('letters that no font has are found, each once', () => {
    expect(missingCharacters('сталь 7, сталь', characters)).toEqual(['а', 'л', 'с', 'т', 'ь']);
  });

  test('what is no font covers nothing', () => {
    expect(fontCoverage(new Uint8Array([1, 2, 3])).size).toBe(0);
  });
});
