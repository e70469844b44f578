import { describe, expect, it } from 'vitest';
import { shownNumber } from '../../src/import/number-format.ts';

/**
 * What a spreadsheet shows, by ECMA-376 part 1, 18.8.31. Of each two libraries (ssf 0.11.2, numfmt 4.0.1)
 * say the same but for blanks, unless it stands otherwise beside it.
 */
describe('a number by its format', () => {
  it.each([
    ['0.000', 0.203125, '0.203'],
    ['0.00', -0.203125, '-0.20'],
    ['#,##0', 4500, '4,500'],
    ['0%', 0.125, '13%'],
    ['0.0;(0.0)', -1.25, '(1.3)'],
    ['0.000" in"', 0.125, '0.125 in'],
    ['#.000', 0.125, '.125'],
  ])('%s of %s', (format, value, shown) => {
    expect(shownNumber(value, format, false)).toEqual({ text: shown, type: 'number' });
  });

  // Of those nearest below a whole numfmt adds the whole once more: `1 63/64`.
  it.each([
    ['# ?/64', 63 / 64, '63/64'],
    ['# ??/??', 63 / 64, '63/64'],
    ['# ??/??', 31 / 32, '31/32'],
    ['# ???/???', 127 / 128, '127/128'],
    ['# ??/??', 1 + 63 / 64, '1 63/64'],
    ['# ?/8', 0.999, '1'],
    ['# ?/?', 1.9999, '2'],
    ['# ?/64', -13 / 64, '-13/64'],
    ['# ?/8', 0.25, '2/8'],
    ['??/??', 5 / 4, '5/4'],
  ])('a fraction by %s of %s', (format, value, shown) => {
    expect(shownNumber(value, format, false).text).toBe(shown);
  });

  it.each([
    ['#" "??/16', 1.25, '1 4/16'],
    ['#" "??/16', 5.1875, '5 3/16'],
    ['#\\ ?/8', 2.5, '2 4/8'],
    ['#"-"?/4', 1.75, '1-3/4'],
    ['#"-"?/4', 0.75, '3/4'],
    ['#"-"?/4', 2, '2'],
  ])(
    'a whole that is parted from its fraction by words or a sign: %s of %s',
    (format, value, shown) => {
      expect(shownNumber(value, format, false).text).toBe(shown);
    },
  );

  it.each([
    ['[>=1]0.0;0.000', 0.125, '0.125'],
    ['[>=1]0.0;0.000', 1.25, '1.3'],
    ['[<1]0.000;0.0', 5.16, '5.2'],
    ['[<1]0.000;0.0', 0.125, '0.125'],
    ['[<0.1]0.0000;[<1]0.000;0.00', 0.0625, '0.0625'],
    ['[<0.1]0.0000;[<1]0.000;0.00', 0.125, '0.125'],
    ['[<0.1]0.0000;[<1]0.000;0.00', 5.16, '5.16'],
    ['[=0]"none";0.00', 0, 'none'],
    ['[Red][>100]0;0.0', 5.16, '5.2'],
  ])('a section for some numbers: %s of %s', (format, value, shown) => {
    expect(shownNumber(value, format, false).text).toBe(shown);
  });

  it.each([
    ['0;0;"nil"', 0, 'nil'],
    ['0.00;-0.00;"-"', 0, '-'],
    ['0.00;-0.00;"n/a"', 0, 'n/a'],
    ['"see note"', 3, 'see note'],
    ['0.00;;', 0, ''],
    ['0.00;-0.00;"-"', 1.25, '1.25'],
  ])('a section of words shows them and no number: %s of %s', (format, value, shown) => {
    expect(shownNumber(value, format, false).text).toBe(shown);
  });

  it('shows a number that a format hides: nothing of a list is lost', () => {
    expect(shownNumber(0.203, ';;;', false).text).toBe('0.203');
  });

  it.each([
    ['0,', 4500, '5'],
    ['0,', 12345.678, '12'],
    ['0.0,', 4500, '4.5'],
    ['#,##0,', 1234567, '1,235'],
    ['0.00,,', 2_500_000, '2.50'],
  ])('a comma behind the digits counts thousands: %s of %s', (format, value, shown) => {
    expect(shownNumber(value, format, false).text).toBe(shown);
  });

  it.each([
    ['"No. "0', -1, '-No. 1'],
    ['$0.00', -1.25, '-$1.25'],
    ['[$$-409]0.00', -0.203125, '-$0.20'],
    ['?/?', -0.001, '0'],
    ['0.00', -0.001, '0.00'],
  ])('the sign stands first, and before nothing at all not: %s of %s', (format, value, shown) => {
    expect(shownNumber(value, format, false).text).toBe(shown);
  });
});
