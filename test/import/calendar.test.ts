import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { dayIn, dayOfSerial, typedBefore } from '../../src/import/calendar.ts';

describe('a day', () => {
  it.each([
    ['2026-08-03', { year: 2026, month: 8, day: 3 }],
    ['3-Aug', { year: null, month: 8, day: 3 }],
    ['Aug 3', { year: null, month: 8, day: 3 }],
    ['03-Aug-26', { year: 2026, month: 8, day: 3 }],
    ['Sep-64', { year: 1964, month: 9, day: 1 }],
    ['8/3/2026', { year: 2026, month: 8, day: 3 }],
    ['13/8/2026', { year: 2026, month: 8, day: 13 }],
    ['3.8.2026', { year: 2026, month: 8, day: 3 }],
  ])('is read in %s', (text, day) => {
    expect(dayIn(text)).toEqual(day);
  });

  it.each(['3-8', '3/8', '13/64', '1-7/16', '5.16', 'marked', 'May be', '10-32 UNF', 'T71-104'])(
    'is none in %s',
    (text) => expect(dayIn(text)).toBeNull(),
  );

  it('leads back to every size of which a spreadsheet makes one, by month and day either way', () => {
    const months = fc.integer({ min: 1, max: 12 });
    fc.assert(
      fc.property(months, fc.constantFrom(2, 4, 8, 16), (month, bottom) => {
        fc.pre(month % 2 === 1 && month < bottom);
        const typed = `${month}/${bottom}`;
        expect(typedBefore({ year: null, month, day: bottom })).toContain(typed);
        if (bottom <= 12) {
          expect(typedBefore({ year: null, month: bottom, day: month })).toContain(typed);
        }
      }),
    );
    expect(typedBefore({ year: 1964, month: 9, day: 1 })[0]).toBe('9/64');
  });

  // Both from memory: 60 is the day that 1900 did not have, 25569 is 1 January 1970.
  it('of a serial number counts from both beginnings', () => {
    expect(dayOfSerial(25_569, false)).toBe('1970-01-01');
    expect(dayOfSerial(25_569 - 1462, true)).toBe('1970-01-01');
    expect(dayOfSerial(25_569.5, false)).toBe('1970-01-01 12:00');
    expect(dayOfSerial(0.25, false)).toBe('06:00');
    expect(dayOfSerial(1e12, false)).toBe('1000000000000');
  });
});
