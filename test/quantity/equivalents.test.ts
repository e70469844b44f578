import { describe, expect, test } from 'vitest';
import { equivalents } from '../../src/quantity/index.ts';
import { size } from './reading.ts';

describe('equivalents, for printing beside what the source wrote', () => {
  test.each([
    // A fraction, a gauge: both inches and millimeters.
    ['13/64 in', '0.2031 in', '5.16 mm'],
    ['1-7/16 in', '1.4375 in', '36.51 mm'],
    ['No. 29 drill', '0.1360 in', '3.45 mm'],
    ['drill E', '0.2500 in', '6.35 mm'],
    ['9/64 drill', '0.1406 in', '3.57 mm'],
    ['No. 20 AWG', '0.0320 in', '0.813 mm'],
    // A decimal is not repeated in its own unit.
    ['.203 in', null, '5.16 mm'],
    ['5.16 mm', '0.2031 in', null],
    ['3.5 mm drill', '0.1378 in', null],
    ['0.026 in wire', null, '0.660 mm'],
    ['18 to 22 thou', '0.0180–0.0220 in', '0.458–0.558 mm'],
    // Limits inward: 4.7625/5.55625 mm.
    ['13/64 ± 1/64 in', '0.2031 in (0.1875–0.2187 in)', '5.16 mm (4.77–5.55 mm)'],
    ['0.018–0.022 in', null, '0.458–0.558 mm'],
    ['5.16 ± 0.40 mm', '0.2031 in (0.1875–0.2188 in)', null],
    ['0.020 in min', null, '0.508 mm min'],
    // 0.019685 in: the nearest, 0.0197, would let more pass.
    ['0.5 mm max', '0.0196 in max', null],
  ])('%s: %s, %s', (text, inch, mm) => {
    expect(equivalents(size(text))).toEqual({ inch, mm, other: [] });
  });

  test('a single limit is rounded inward too', () => {
    // 0.0201 in is 0.51054 mm; 0.51 mm would let smaller gaps pass.
    expect(equivalents(size('0.0201 in min')).mm).toBe('0.511 mm min');
    // 0.6 mm is 0.0236220 in, 0.55 mm 0.0216535 in: the nearest of the second lies outside.
    expect(equivalents(size('0.6 mm max')).inch).toBe('0.0236 in max');
    expect(equivalents(size('0.55 mm max')).inch).toBe('0.0216 in max');
    expect(equivalents(size('0.6 mm min')).inch).toBe('0.0237 in min');
  });

  test.each([
    ['12 flats down', ['2 turns']],
    ['1 flat down', ['1/6 turn']],
    ['1-1/2 turns out', ['9 flats']],
    ['1-1/4 turns out', []],
    ['19 inHg', ['64.3 kPa']],
    ['4.5 psi', ['31.0 kPa']],
    ['4.5 to 5 psi', ['31.1–34.4 kPa']],
    ['0.3 bar', ['4.4 psi', '30.0 kPa']],
    ['12 ft-lb', ['16.3 N·m']],
    ['16 N·m', ['11.8 ft-lb']],
    // 100 mL in 36.5 s: 9863.01 mL and 9863.01/3785.411784 US gal an hour.
    ['36-1/2 s per 100 ml', ['9.86 L/h', '2.61 US gal/h']],
    // The longer time is the smaller flow: 3600/35 and 3600/30 mL an hour, each inward.
    ['30 to 35 s per 100 ml', ['10.29–12.00 L/h', '2.72–3.17 US gal/h']],
    ['18 L/h', ['4.76 US gal/h']],
    ['10 lb/h', ['4.54 kg/h']],
    ['20 ozf', ['5.56 N', '1.25 lbf']],
    ['475 rpm', []],
    ['parallel', []],
    ['1 notch rich', []],
  ])('%s: %j', (text, other) => {
    expect(equivalents(size(text))).toEqual({ inch: null, mm: null, other });
  });
});
