import { describe, expect, test } from 'vitest';
import lip from '../../../src/relations/formulas/nozzle-lip.ts';
import { expectEnclosed, middle, refusal, work } from '../sampling.ts';

describe('fuel below the lip of the nozzle', () => {
  test('is the one depth less the other', () => {
    expect(middle(lip, 'lift', { level: 18.5, nozzle: 12.5 })).toBeCloseTo(6, 12);
    expectEnclosed(lip, 'lift', { level: [5, 40], nozzle: [0, 30] }, ({ level = 0, nozzle = 0 }) =>
      level > nozzle ? level - nozzle : null,
    );
  });

  test('fuel at the lip or above it runs out', () => {
    for (const level of [12.5, 10]) {
      expect(refusal(lip, 'lift', { level, nozzle: 12.5 })).toBe(
        'fuel at {level} below the rim stands no lower than the nozzle at {nozzle}: it runs out by itself',
      );
    }
    expect(work(lip, 'lift', { level: [12, 13], nozzle: 12.5 })).toMatchObject({ lo: 0 });
  });
});
