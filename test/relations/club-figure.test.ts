import { describe, expect, test } from 'vitest';
import { gaugeBook } from '../../src/gauges/index.ts';
import { builtInKinds } from '../../src/kinds/index.ts';
import { clubFigure } from '../../src/relations/club-figure.ts';
import { readSheet } from '../../src/sheet/index.ts';

function figure(vacuum: string, altitude: string | null, place: string | null = null) {
  const text = `---
gaugeleaf: 1
sheet: orlo-p29
unit: { kind: carburetor, maker: Orlo, model: P29, features: [two-barrel, downdraft] }
settings:
  idle-vacuum: ${vacuum}
  idle-speed: 500 rpm
---
`;
  const sheet = readSheet(text, 'orlo-p29.md', {
    kinds: builtInKinds(),
    gauges: gaugeBook(),
    wireGauge: null,
  });
  const setting = sheet.settings.get('idle-vacuum');
  if (!setting) throw new Error('no vacuum');
  return clubFigure(setting, sheet, place, altitude);
}

describe('a reading at the club', () => {
  test('is the sheet’s own figure, to the letter, where it has one', () => {
    expect(
      figure('{ value: 17-1/2 to 19-1/2 inHg, at-club: 16.1 to 18.0 inHg }', '1350 ft'),
    ).toEqual({
      text: '16.1 to 18.0 inHg',
      stated: true,
      altitude: '1350 ft',
      readAt: 'sea level',
    });
  });

  test('is worked where the sheet has none, and says so', () => {
    // US Standard Atmosphere 1976: the barometer falls from 29.921 inHg to 28.494 inHg at 1350 ft, 1.427 inHg.
    expect(figure('19-1/2 inHg min', '1350 ft')).toMatchObject({
      text: '18.1 inHg min',
      stated: false,
    });
  });

  test('is worked from the altitude of the reading', () => {
    expect(figure('{ value: 18.1 inHg min, altitude: 1350 ft }', '0 ft')).toMatchObject({
      readAt: '1350 ft',
      altitude: '0 ft',
    });
  });

  test('is none where the club says no altitude, or the source read it there', () => {
    expect(figure('18 inHg', null)).toBe(null);
    expect(figure('{ value: 18 inHg, altitude: 1350 ft }', '1350 ft')).toBe(null);
    expect(figure('18 inHg', '0 ft')).toBe(null);
  });

  test('is none of what is no reading of altitude, or of a place that the sheet has not', () => {
    expect(figure('18 inHg', '1350 ft', 'left')).toBe(null);
  });

  test('of several places is each its own, worked', () => {
    const twice = '{ places: { left: 18 inHg, right: 19 inHg } }';
    expect(figure(twice, '1350 ft', 'left')?.text).toBe('16.6 inHg');
    expect(figure(twice, '1350 ft', 'right')?.text).toBe('17.6 inHg');
  });
});
