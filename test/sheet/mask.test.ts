import { describe, expect, test } from 'vitest';
import { maskedSource } from '../../src/sheet/mask.ts';
import { read, under } from './fixtures.ts';

/** Every stretch of prose of a Markdown text with the source below it. */
function prose(markdown: string): readonly (readonly [string, string | null])[] {
  const sheet = read(markdown);
  return sheet.prose.map(({ text, span }) => [text, under(sheet, span)] as const);
}

describe('prose keeps the length of its source', () => {
  test.each([
    ['13/64 &plusmn; 1/64 in', '13/64 ±        1/64 in'],
    ['12&deg; &#176; &#xB0; x', '12°     °      °      x'],
    ['\\#29 drill', ' #29 drill'],
    ['0.203\\" wide', '0.203 " wide'],
    ['AT&T &amp; &nosuch; &amp;amp;', 'AT&T &     &nosuch; &    amp;'],
    ['&#x1F600; after', '😀        after'],
    ['a\\\\b', 'a \\b'],
  ])('%s', (source, text) => expect(prose(source)).toEqual([[text, source]]));

  test('a size with an escape within is made opaque, not another size', () => {
    expect(prose('set 5\\.16 mm now')[0]?.[0]).toBe('set \uFFFC\uFFFC\uFFFC\uFFFC\uFFFC mm now');
  });

  test('line starts of quotes and lists are blanks', () => {
    expect(prose('> 1/4\n> in gap')).toEqual([['1/4\n  in gap', '1/4\n> in gap']]);
    expect(prose('1. 1/4\n   in gap')).toEqual([['1/4\n   in gap', '1/4\n   in gap']]);
    expect(prose('> 1/4  x \r\n>   in')).toEqual([['1/4  x \r\n    in', '1/4  x \r\n>   in']]);
  });

  test('a colon in a time or a word starts no directive', () => {
    expect(prose('at 10:30 or a:b, ratio:lean:')).toEqual([
      ['at 10:30 or a:b, ratio:lean:', 'at 10:30 or a:b, ratio:lean:'],
    ]);
    expect(read('at 10:30 or a:b').directives).toEqual([]);
  });

  test('but one with brackets or braces does, and so does a bare :value', () => {
    const sheet = read('x :vlaue[y] :foo{a=b} :value 0.5 in');
    expect(sheet.directives.map(({ name }) => name)).toEqual(['vlaue', 'foo']);
    expect(sheet.values.map(({ name }) => name)).toEqual(['']);
  });

  test('addresses that the table plugin makes links of keep their places', () => {
    for (const [text, source] of prose('see www.example.com/a, (a_b@example.org) or x@y.z_ 5 mm')) {
      expect(text).toBe(source);
    }
    expect(
      prose('see a@b.example 5 mm')
        .map(([text]) => text)
        .join(''),
    ).toBe('see a@b.example 5 mm');
  });

  test('a source that does not fit its value still keeps its length', () => {
    expect(maskedSource('abc', 'xy')).toHaveLength(3);
    expect(maskedSource('', 'xy')).toHaveLength(0);
  });
});
