import { describe, expect, it } from 'vitest';
import barrels from '../../../src/relations/formulas/throttle-barrels.ts';
import relation from '../../../src/relations/formulas/throttle-opening.ts';
import { middle, refusal, work } from '../sampling.ts';

describe('the angle of a throttle plate from closed', () => {
  it('adds, and comes back both ways', () => {
    expect(middle(relation, 'angle', { 'closed-angle': 12, opening: 7.5 })).toBeCloseTo(19.5, 12);
    expect(middle(relation, 'opening', { 'closed-angle': 12, angle: 19.5 })).toBeCloseTo(7.5, 12);
    expect(middle(relation, 'closed-angle', { opening: 7.5, angle: 19.5 })).toBeCloseTo(12, 12);
  });

  it('reaches from shut to along the bore, and no farther', () => {
    expect(middle(relation, 'angle', { 'closed-angle': 12, opening: 0 })).toBeCloseTo(12, 12);
    expect(middle(relation, 'angle', { 'closed-angle': 12, opening: 78 })).toBeCloseTo(90, 12);
    expect(work(relation, 'angle', { 'closed-angle': [11.5, 12.5], opening: 78 }).hi).toBe(90);
    expect(work(relation, 'opening', { 'closed-angle': [11.5, 12.5], angle: 12 }).lo).toBe(0);
  });

  it.each([
    [
      'angle',
      { 'closed-angle': 12, opening: 79 },
      '{opening} from a closed angle of {closed-angle} is past 90°, where the plate stands along the bore',
    ],
    [
      'angle',
      { 'closed-angle': 90, opening: 0 },
      'a plate can not close at {closed-angle}: at 90° it stands along the bore',
    ],
    [
      'opening',
      { 'closed-angle': 12, angle: 11 },
      '{angle} is below the {closed-angle} at which the plate closes',
    ],
    [
      'opening',
      { 'closed-angle': 12, angle: 95 },
      '{angle} is past 90°, where the plate stands along the bore',
    ],
    [
      'closed-angle',
      { opening: 20, angle: 19 },
      '{opening} of opening is more than the whole {angle}',
    ],
    [
      'closed-angle',
      { opening: 1, angle: 95 },
      '{angle} is past 90°, where the plate stands along the bore',
    ],
  ])('refuses the %s of %o', (wanted, figures, message) => {
    expect(refusal(relation, wanted, figures)).toBe(message);
  });
});

describe('the area of barrels that open alike', () => {
  it('is counted, and shared out again', () => {
    expect(middle(barrels, 'area-together', { area: 19.420921, barrels: 2 })).toBeCloseTo(
      38.841842,
      9,
    );
    expect(middle(barrels, 'area', { 'area-together': 38.841842, barrels: 2 })).toBeCloseTo(
      19.420921,
      9,
    );
  });

  it('wants a barrel', () => {
    expect(refusal(barrels, 'area-together', { area: 19, barrels: 0 })).toBe(
      'the number of barrels, {barrels}, is too close to nothing to work with',
    );
  });
});
