import { describe, expect, test } from 'vitest';
import { typesetSize, typesetWords } from '../../src/press/typeset.ts';

/** The text a reader of the page copies: tags taken away, entities resolved. */
function plain(html: string): string {
  return html
    .replace(/<[^>]+>/g, '')
    .replaceAll('&lt;', '<')
    .replaceAll('&gt;', '>')
    .replaceAll('&amp;', '&')
    .replaceAll('&quot;', '"')
    .replaceAll('&#39;', "'");
}

describe('a size', () => {
  test.each([
    ['13/64 in', '13⁄64 in'],
    ['1-7/16 in', '1-7⁄16 in'],
    ['1 7/16"', '1 7⁄16″'],
    ['.203 in', '.203 in'],
    ['0.203"', '0.203″'],
    ['5,16 mm', '5,16 mm'],
    ['0.203 +0.010/-0 in', '0.203 +0.010/−0 in'],
    ['13/64 ± 1/64 in', '13⁄64 ± 1⁄64 in'],
    ['0.018–0.022 in', '0.018–0.022 in'],
    ['12 cm3 per 10 strokes', '12 cm3 per 10 strokes'],
    ['12 cc/10 strokes', '12 cc/10 strokes'],
    ['11/32 +1/32/-1/64 in', '11⁄32 +1⁄32/−1⁄64 in'],
    ['-1/64 in', '−1⁄64 in'],
    ['1/2/3', '1/2/3'],
    ['10-32 UNF', '10-32 UNF'],
    ["12° 3'", '12° 3′'],
  ])('%s keeps every figure and word', (written, printed) => {
    expect(plain(typesetSize(written))).toBe(printed);
  });

  test('a mixed number never loses what keeps it from being read as another', () => {
    expect(plain(typesetSize('1-7/16 in'))).not.toContain('17⁄16');
  });

  test('a number and its unit are held together, and a tolerance may go to the next line', () => {
    expect(typesetSize('475 ± 25 rpm')).toBe(
      '<span class="size"><span class="together">475</span> <span class="together">± 25 rpm</span></span>',
    );
  });

  test('upper and lower figures are told apart for their fonts', () => {
    expect(typesetSize('13/64 drill')).toContain(
      '<span class="upper">13⁄</span><span class="lower">64</span>',
    );
  });

  test('HTML in a value is text', () => {
    expect(typesetSize('<img src=x> & "1"')).toBe(
      '<span class="size"><span class="together">&lt;img src=x&gt; &amp; “1″</span></span>',
    );
  });
});

describe('a line of words', () => {
  test.each([
    ['part 2B-71/A', 'part 2B-71/A'],
    ['in 1948/49', 'in 1948/49'],
    ['7/17 is no size', '7/17 is no size'],
    ['a 5/16 in wrench', 'a 5⁄16 in wrench'],
    ['the driver\'s "own" manual', 'the driver’s “own” manual'],
  ])('%s', (written, printed) => {
    expect(plain(typesetWords(written))).toBe(printed);
  });
});
