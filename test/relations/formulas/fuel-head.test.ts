import { describe, expect, test } from 'vitest';
import head from '../../../src/relations/formulas/fuel-head.ts';
import { expectEnclosed, expectThereAndBack, middle, refusal } from '../sampling.ts';

describe('the head of fuel', () => {
  test('a millimeter of water is 9.80665 Pa, as the notation has it', () => {
    // NIST SP 811, appendix B: conventional column of water.
    expect(middle(head, 'head', { height: 1, density: 1000 })).toBeCloseTo(9.80665, 12);
  });

  test('at both ends of the density that EN 228 allows', () => {
    // References.md, Metering: 720-775 kg/m³ at 15 °C. 6 mm of each, worked by hand.
    expect(middle(head, 'head', { height: 6, density: 720 })).toBeCloseTo(42.364728, 6);
    expect(middle(head, 'head', { height: 6, density: 775 })).toBeCloseTo(45.6009225, 6);
  });

  test('holds every point of its stretches, and comes back', () => {
    const within = { height: [0, 100], density: [650, 850] } as const;
    expectEnclosed(
      head,
      'head',
      within,
      ({ height = 0, density = 0 }) => (density * 9.80665 * height) / 1000,
    );
    expectThereAndBack(head, 'head', 'height', within);
    expectThereAndBack(head, 'head', 'density', { height: [1, 100], density: [650, 850] });
  });

  test('fuel without a density is refused', () => {
    expect(refusal(head, 'head', { height: 6, density: 0 })).toBe(
      'the density of the fuel, {density}, is too close to nothing to work with',
    );
    expect(refusal(head, 'height', { head: 40, density: 0 })).toContain('{density}');
    expect(refusal(head, 'density', { head: 40, height: 0 })).toContain('{height}');
  });
});
