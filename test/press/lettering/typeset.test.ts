import { describe, expect, test } from 'vitest';
import { typesetSize, typesetWords } from '../../../src/press/lettering/typeset.ts';

/** The text a reader of the page copies: tags taken away, entities resolved. */
function plain(html: string): string {
  return html
    .replace(/<[^>]+>/g, '')
    .replaceAll('\u202f', ' ')
    .replaceAll('&lt;', '<')
    .replaceAll('&gt;', '>')
    .replaceAll('&amp;', '&')
    .replaceAll('&quot;', '"')
    .replaceAll('&#39;', "'");
}

describe('a size', () => {
  test.each([
    ['13/64 in', '13⁄64 in'],
    ['1-7/16 in', '1 7⁄16 in'],
    ['1 7/16"', '1 7⁄16″'],
    ['.203 in', '.203 in'],
    ['0.203"', '0.203″'],
    ['5,16 mm', '5,16 mm'],
    ['0.203 +0.010/-0 in', '0.203 +0.010 −0 in'],
    ['13/64 ± 1/64 in', '13⁄64 ± 1⁄64 in'],
    ['0.018–0.022 in', '0.018–0.022 in'],
    ['12 cm3 per 10 strokes', '12 cm3 per 10 strokes'],
    ['12 cc/10 strokes', '12 cc/10 strokes'],
    ['11/32 +1/32/-1/64 in', '11⁄32 +1⁄32 −1⁄64 in'],
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

  test('a narrow space that no line ends at joins a mixed number, however it was written', () => {
    for (const written of ['1-7/16 in', '1 7/16 in']) {
      const [, whole = ''] =
        /^<span class="size short">(.*)<\/span>$/.exec(typesetSize(written)) ?? [];
      expect(whole).toMatch(/^<span class="together">1\u202f<span class="fraction">/);
    }
  });

  test.each([
    ['164.38 cm3/min', 'cm<sup class="power">3</sup>/min'],
    ['0.0679 mm2', 'mm<sup class="power">2</sup>'],
    ['1.03 in2', 'in<sup class="power">2</sup>'],
    ['745 kg/m3', 'kg/m<sup class="power">3</sup>'],
    ['3/4 in2', 'in<sup class="power">2</sup>'],
    ['12 inH2O', 'inH<sub>2</sub>O'],
    ['80.0 ± 2.2 %', '2.2\u202f%'],
    ['80%', '80\u202f%'],
    ['7/8 in min', '<span class="bound">min</span>'],
    ['.018 in. min., .022 in. max.', '<span class="bound">max</span>'],
    ['4-1/2 thou max', '<span class="bound">max</span>'],
    ['max 1/64 in', '<span class="bound">max</span>'],
    ['17.1 inHg min', '<span class="bound">min</span>'],
    ['18-1/2 inHg min', '<span class="bound">min</span>'],
    ['63 kPa min', '<span class="bound">min</span>'],
    ['20 N·m max', '<span class="bound">max</span>'],
    ['500 rpm distributor min', '<span class="bound">min</span>'],
    ['29/32 +1/32/-1/64 in', '<span class="limits"><span>+<span class="fraction">'],
    ['0.0670 +0.0005/-0 in', '<span class="limits"><span>+0.0005</span> <span>−0</span></span> in'],
    [
      '0.0670 +.0005 -.0010 in',
      '<span class="limits"><span>+.0005</span> <span>−.0010</span></span> in',
    ],
  ])('%s has %s', (written, html) => {
    expect(typesetSize(written)).toContain(html);
  });

  test.each([
    ['5 min'],
    ['30 s to 2 min'],
    ['164 cc/min'],
    ['164 cc per min'],
    ['M3'],
    ['in 3 turns'],
    ['10-32 UNF'],
    ['2 m'],
    ['+/- 1/64 in'],
  ])('%s has none of that', (written) => {
    expect(typesetSize(written)).not.toMatch(/bound|<sup|limits/);
  });

  test('a zero is slashed only where it may stand beside an O', () => {
    expect(typesetWords('part N63-2201C, or T71-104')).toBe(
      'part N63-22<span class="slashed">0</span>1C, or T71-1<span class="slashed">0</span>4',
    );
    for (const plainZero of ['0.0160 in', '10-32 UNF', 'page 120', 'in 1950', 'No. 20 drill']) {
      expect(typesetSize(plainZero)).not.toContain('slashed');
      expect(typesetWords(plainZero)).not.toContain('slashed');
    }
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
    ['a tag that says "T64-70" is another', 'a tag that says “T64-70” is another'],
    ['a 3/4" pipe and a 5/8" bolt', 'a 3⁄4″ pipe and a 5⁄8″ bolt'],
    ['in 1948-1950', 'in 1948–1950'],
    ['of 1948-50 and 10-32', 'of 1948-50 and 10-32'],
  ])('%s', (written, printed) => {
    expect(plain(typesetWords(written))).toBe(printed);
  });

  test.each([
    ['a 5/16 in wrench', '5⁄16 in'],
    ['1-1/4 turns out', '1 1⁄4 turns'],
    ['a gap of ± 1/64 in, no more', '± 1⁄64 in'],
    ['turn to ≥ 5 mm', '≥ 5 mm'],
    ['travel 0.5782 in min of it', '0.5782 in min'],
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
