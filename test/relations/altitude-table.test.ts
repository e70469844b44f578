import { describe, expect, test } from 'vitest';
import { unitById } from '../../src/quantity/index.ts';
import { rational } from '../../src/quantity/rational.ts';
import { usualAltitudes, vacuumByAltitude } from '../../src/relations/altitude-table.ts';
import { size } from '../quantity/reading.ts';

const feet = (number: number) => ({
  text: `${number} ft`,
  mm: unitById('ft').factor.mul(rational(number)),
});
const readings = (text: string, from: number | null, ...at: readonly number[]) =>
  vacuumByAltitude(size(text), from === null ? null : feet(from), at.map(feet)).map(
    ({ reading }) => reading,
  );

describe('a table of vacuum by altitude', () => {
  test('every thousand feet, in the unit of the sheet', () => {
    // References.md, Atmosphere: 29.9213, 28.8557, 24.8959 inHg at 0, 1000, 5000 ft.
    const rows = vacuumByAltitude(size('19 inHg'), null, usualAltitudes('ft'));
    expect(rows.map(({ altitude, reading }) => `${altitude}: ${reading}`)).toEqual([
      'sea level: 19.0 inHg',
      '1000 ft: 17.9 inHg',
      '2000 ft: 16.9 inHg',
      '3000 ft: 15.9 inHg',
      '4000 ft: 14.9 inHg',
      '5000 ft: 14.0 inHg',
      '6000 ft: 13.1 inHg',
      '7000 ft: 12.2 inHg',
      '8000 ft: 11.3 inHg',
    ]);
  });

  test('the form of the setting stays, and its limits are rounded inward', () => {
    // 18.5 less 1.0655 is 17.4345; 17-1/2 and 19-1/2 less the same are 16.4345 and 18.4345.
    expect(readings('18-1/2 inHg', null, 1000)).toEqual(['17.4 inHg']);
    expect(readings('18-1/2 inHg min', null, 1000)).toEqual(['17.5 inHg min']);
    expect(readings('18-1/2 inHg max', null, 1000)).toEqual(['17.4 inHg max']);
    expect(readings('17-1/2 to 19-1/2 inHg', null, 1000)).toEqual(['16.5–18.4 inHg']);
    expect(readings('about 18-1/2 inHg', null, 1000)).toEqual(['about 17.4 inHg']);
    expect(readings('63 kPa min', null, 1000)).toEqual(['59.4 kPa min']);
    expect(readings('470 mmHg', null, 1000)).toEqual(['443 mmHg']);
  });

  test('from the altitude that the source stood at', () => {
    // 28.8557 less 24.8959 is 3.9598.
    expect(readings('18-1/2 inHg', 1000, 5000, 1000, 0)).toEqual([
      '14.5 inHg',
      '18.5 inHg',
      '19.6 inHg',
    ]);
  });

  test('in meters for a club that counts so', () => {
    expect(usualAltitudes('m').map(({ text }) => text)).toEqual([
      'sea level',
      '250 m',
      '500 m',
      '750 m',
      '1000 m',
      '1500 m',
      '2000 m',
      '2500 m',
    ]);
    // References.md: 101.3250 and 89.8746 kPa.
    const rows = vacuumByAltitude(size('64 kPa'), null, usualAltitudes('m'));
    expect(rows[4]?.reading).toBe('52.5 kPa');
  });

  test('what cannot be has a reason and no figure', () => {
    const [high] = vacuumByAltitude(size('4 inHg'), null, [feet(6000)]);
    expect(high).toEqual({
      altitude: '6000 ft',
      reading: null,
      why: 'the barometer falls by more than 4 inHg between the two altitudes, so no vacuum is left',
    });
    expect(vacuumByAltitude(size('31 inHg'), null, [feet(0)])[0]?.why).toBe(
      '31 inHg is more than the whole barometer, and no vacuum goes below nothing',
    );
    expect(vacuumByAltitude(size('19 inHg'), null, [feet(40_000)])[0]?.why).toBe(
      'the formula for the barometer holds from 5000 m below the sea to 11000 m above it, and 40000 ft is outside',
    );
    expect(vacuumByAltitude(size('1/4 in'), null, [feet(0)])[0]?.why).toBe(
      '1/4 in is no reading of a vacuum gauge',
    );
    expect(vacuumByAltitude(size('3 to 20 inHg'), null, [feet(5000)])[0]?.reading).toBeNull();
  });
});
