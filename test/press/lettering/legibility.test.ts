import { describe, expect, test } from 'vitest';
import { capHeightsByFamily } from '../../../src/press/html/font-faces.ts';
import { densitiesFor } from '../../../src/press/lettering/densities.ts';
import { capHeightMm } from '../../../src/press/lettering/legibility.ts';
import { builtInTemplates } from '../stand.ts';

describe('a height of capitals', () => {
  // NUREG-0700's formula, with the figures that references.md works from it.
  test.each([
    [700, 16, 3.26],
    [700, 20, 4.07],
    [500, 16, 2.33],
    [500, 20, 2.91],
  ])('read at %i mm under %i minutes is %f mm', (distance, minutes, height) => {
    expect(capHeightMm(distance, minutes)).toBeCloseTo(height, 2);
  });
});

describe('the densities', () => {
  const templates = builtInTemplates();
  const heights = capHeightsByFamily(templates);

  test('take the height of capitals from the fonts', () => {
    // IBM Plex Sans has capitals of .698 em; the figures of fractions are .77 of that.
    expect([...heights]).toEqual([
      ['Gaugeleaf Sans', 0.698],
      ['Gaugeleaf Condensed', 0.698],
      ['Gaugeleaf Upper', 0.537],
      ['Gaugeleaf Lower', 0.537],
      ['Gaugeleaf Slashed', 0.698],
    ]);
  });

  test.each([500, 700])('at %i mm go from what is preferred to the least', (distance) => {
    const densities = densitiesFor(distance, heights);
    const angle = (mm: number, em: number) => (mm * em * 21600) / (6.283 * distance);
    const roomy = densities.at(0);
    const tight = densities.at(-1);
    expect(angle(roomy?.textMm ?? 0, 0.698)).toBeCloseTo(20, 1);
    expect(angle(roomy?.labelMm ?? 0, 0.698)).toBeCloseTo(20, 1);
    expect(angle(tight?.textMm ?? 0, 0.698)).toBeCloseTo(16, 1);
    expect(angle(tight?.labelMm ?? 0, 0.698)).toBeCloseTo(15, 1);
    expect(angle(tight?.fractionMm ?? 0, 0.537)).toBeCloseTo(15, 1);
    for (const { textMm, labelMm, fractionMm } of densities) {
      expect(angle(textMm, 0.698)).toBeGreaterThanOrEqual(16);
      expect(angle(labelMm, 0.698)).toBeGreaterThanOrEqual(15);
      expect(angle(fractionMm, 0.537)).toBeGreaterThanOrEqual(15);
    }
  });

  test('of a club whose font has lower capitals are larger', () => {
    const [roomy] = densitiesFor(500, new Map([...heights, ['Gaugeleaf Condensed', 0.6]]));
    const [built] = densitiesFor(500, heights);
    expect((roomy?.textMm ?? 0) / (built?.textMm ?? 1)).toBeCloseTo(0.698 / 0.6, 2);
  });
});
