import { describe, expect, test } from 'vitest';
import weight from '../../../src/relations/formulas/weight-of-flow.ts';
import { expectEnclosed, expectThereAndBack, middle, refusal } from '../sampling.ts';

describe('the weight of fuel in a flow', () => {
  test('a liter an hour of 740 kg/m³ is 0.74 kg an hour', () => {
    expect(middle(weight, 'weight-flow', { flow: 1000 / 3600, density: 740 })).toBeCloseTo(
      740 / 3600,
      12,
    );
  });

  test('holds every point of its stretches, and comes back', () => {
    const within = { flow: [0.1, 100], density: [650, 850] } as const;
    expectEnclosed(
      weight,
      'weight-flow',
      within,
      ({ flow = 0, density = 0 }) => (flow * density) / 1000,
    );
    expectThereAndBack(weight, 'weight-flow', 'flow', within);
    expectThereAndBack(weight, 'weight-flow', 'density', within);
  });

  test('fuel without a density, or no flow to weigh, is refused', () => {
    expect(refusal(weight, 'weight-flow', { flow: 1, density: 0 })).toContain('{density}');
    expect(refusal(weight, 'flow', { 'weight-flow': 1, density: 0 })).toContain('{density}');
    expect(refusal(weight, 'density', { 'weight-flow': 1, flow: 0 })).toContain('{flow}');
  });
});
