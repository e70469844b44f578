import { describe, expect, test } from 'vitest';
import { typesetSize, typesetWords } from '../../../src/press/lettering/typeset.ts';

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
      '<span class="size short"><span class="together">475</span> <span class="together">± 25 rpm</span></span>',
    );
  });

  test('one that would fill a line by itself may part', () => {
    const long = '1/2 turn in after first contact with the cam';
    expect(typesetSize(long)).toMatch(/^<span class="size"><span class="together">/);
  });

  test('upper and lower figures are told apart for their fonts', () => {
    expect(typesetSize('13/64 drill')).toContain(
      '<span class="upper">13⁄</span><span class="lower">64</span>',
    );
  });

  test('HTML in a value is text', () => {
    expect(typesetSize('<img src=x> & "1"')).toBe(
      '<span class="size short"><span class="together">&lt;img src=x&gt; &amp; “1″</span></span>',
    );
  });
});

describe('a line of words', () => {
  test.each([
    ['part T64-71/A', 'part T64-71/A'],
    ['in 1948/49', 'in 1948/49'],
    ['7/17 is no size', '7/17 is no size'],
    ['a 5/16 in wrench', 'a 5⁄16 in wrench'],
    ['the driver\'s "own" manual', 'the driver’s “own” manual'],
    ['marked "5 mm", or 3/4" wide', 'marked “5 mm”, or 3⁄4″ wide'],
    ['in 1948-1950', 'in 1948–1950'],
    ['of 1948-50 and 10-32', 'of 1948-50 and 10-32'],
  ])('%s', (written, printed) => {
    expect(plain(typesetWords(written))).toBe(printed);
  });

  test.each([
    ['a 5/16 in wrench', '5⁄16 in'],
    ['1-1/4 turns out', '1-1⁄4 turns'],
    ['Wexcombe Six, 1948-1950', '1948–1950'],
    ['see p. 31 there', 'p. 31'],
    ['thread 10-32 UNF', '10-32'],
    ['at 12.5 ft-lb, dry', '12.5 ft-lb'],
  ])('in %s nothing parts %s', (written, whole) => {
    const kept = typesetWords(written).split('<span class="together">').slice(1);
    expect(kept.map((html) => plain(html)).some((text) => text.startsWith(whole))).toBe(true);
  });

  test.each(['part T71-104, or T71-104A', 'a 20-pound weight', '1948/49', 'no more'])(
    '%s has nothing to keep whole',
    (written) => {
      expect(typesetWords(written)).not.toContain('together');
    },
  );
});
