import { describe, expect, test } from 'vitest';
import { rational } from '../../../src/quantity/index.ts';
import { inUnit } from '../../../src/quantity/units.ts';
import flow from '../../../src/relations/formulas/timed-flow.ts';
import { expectEnclosed, expectThereAndBack, middle, refusal } from '../sampling.ts';

/** References.md, Conversions. */
const US_PINT = 473.176473;

describe('timed flow', () => {
  test('a pint in a minute, a half or two of one', () => {
    // 60 US pints an hour are 7.5 US gallons.
    const worked = middle(flow, 'flow', { volume: US_PINT, time: 60 });
    expect(inUnit(rational(worked), 'flow', 'US gal/h').valueOf()).toBeCloseTo(7.5, 9);
    expect(middle(flow, 'time', { volume: 100, flow: 20 / 7 })).toBeCloseTo(35, 12);
    expect(middle(flow, 'volume', { time: 35, flow: 20 / 7 })).toBeCloseTo(100, 12);
  });

  test('holds every point of its stretches, and comes back', () => {
    const within = { volume: [0, 2000], time: [1, 300] } as const;
    expectEnclosed(flow, 'flow', within, ({ volume = 0, time = 1 }) => volume / time);
    expectThereAndBack(flow, 'flow', 'volume', within);
    expectThereAndBack(flow, 'flow', 'time', { volume: [10, 2000], time: [1, 300] });
  });

  test('no time, or no flow, is refused', () => {
    expect(refusal(flow, 'flow', { volume: 100, time: 0 })).toBe(
      'the time, {time}, is too close to nothing to work with',
    );
    expect(refusal(flow, 'flow', { volume: 100, time: [-0.5, 0.5] })).toContain('{time}');
    expect(refusal(flow, 'time', { volume: 100, flow: 0 })).toContain('{flow}');
  });
});
