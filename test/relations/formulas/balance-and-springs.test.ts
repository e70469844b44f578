import { describe, expect, test } from 'vitest';
import ratio from '../../../src/relations/formulas/jet-ratio.ts';
import depression from '../../../src/relations/formulas/pair-depression.ts';
import flow from '../../../src/relations/formulas/pair-flow.ts';
import shot from '../../../src/relations/formulas/shot-duration.ts';
import rate from '../../../src/relations/formulas/spring-rate.ts';
import byWeight from '../../../src/relations/formulas/spring-rate-by-weight.ts';
import { expectEnclosed, expectThereAndBack, middle, refusal, work } from '../sampling.ts';

describe('two jets on one rig', () => {
  test('a number beside another', () => {
    expect(middle(ratio, 'share', { flow: 4.2, other: 4 })).toBeCloseTo(105, 9);
    expect(middle(ratio, 'flow', { share: 105, other: 4 })).toBeCloseTo(4.2, 12);
    expect(middle(ratio, 'other', { share: 105, flow: 4.2 })).toBeCloseTo(4, 12);
    expectThereAndBack(ratio, 'share', 'flow', { flow: [1, 10], other: [1, 10] });
  });
});

describe('balance', () => {
  test('by flow: nine of ten is a tenth out', () => {
    expect(middle(flow, 'out', { strongest: 10, weakest: 9 })).toBeCloseTo(10, 9);
    expect(middle(flow, 'weakest', { strongest: 10, out: 10 })).toBeCloseTo(9, 9);
    expect(middle(flow, 'strongest', { weakest: 9, out: 10 })).toBeCloseTo(10, 9);
  });

  test('by depression: a fifth less depression is a tenth less air', () => {
    // 0.9² = 0.81: Bernoulli, the flow as the root.
    expect(middle(depression, 'out', { strongest: 1000, weakest: 810 })).toBeCloseTo(10, 9);
    expect(middle(depression, 'weakest', { strongest: 1000, out: 10 })).toBeCloseTo(810, 9);
    expect(middle(depression, 'strongest', { weakest: 810, out: 10 })).toBeCloseTo(1000, 9);
  });

  test('equal readings are in balance, and none is out by less than nothing', () => {
    expect(middle(flow, 'out', { strongest: 10, weakest: 10 })).toBeCloseTo(0, 12);
    const near = work(depression, 'out', { strongest: [990, 1010], weakest: [990, 1010] });
    expect(near.lo).toBe(0);
    expect(near.hi).toBeGreaterThan(0.9);
  });

  test('the weakest that reads the most is refused, and one that does not draw has no end', () => {
    expect(refusal(flow, 'out', { strongest: 9, weakest: 10 })).toBe(
      '{weakest} is more than {strongest}, and called the weakest',
    );
    expect(refusal(depression, 'out', { strongest: 900, weakest: 1000 })).toContain('{weakest}');
    expect(middle(flow, 'out', { strongest: 10, weakest: 0 })).toBeCloseTo(100, 9);
    expect(Number.isFinite(work(flow, 'strongest', { weakest: 9, out: 100 }).hi)).toBe(true);
  });

  test('holds every point of its stretches', () => {
    const within = { strongest: [500, 1000], weakest: [10, 500] } as const;
    expectEnclosed(
      depression,
      'out',
      within,
      ({ strongest = 1, weakest = 0 }) => 100 * (1 - Math.sqrt(weakest / strongest)),
      1e-9,
    );
    expectEnclosed(
      flow,
      'out',
      within,
      ({ strongest = 1, weakest = 0 }) => (100 * (strongest - weakest)) / strongest,
      1e-9,
    );
  });
});

describe('a pump shot', () => {
  test('a milliliter through a millimeter, under the head that gives ten meters a second', () => {
    // v² = 2 p / ρ: 100 = 2 × 37 500 Pa / 750 kg/m³; area π/4 mm², so 1000 mm³ / 7853.98 mm³/s.
    const of = { volume: 1, bore: 1, pressure: 37_500, density: 750 };
    expect(middle(shot, 'time', of)).toBeCloseTo(0.127_323_954, 9);
    expect(middle(shot, 'volume', { ...of, time: 0.127_323_954_473_516 })).toBeCloseTo(1, 9);
    expect(middle(shot, 'bore', { ...of, time: 0.127_323_954_473_516 })).toBeCloseTo(1, 9);
  });

  test('is a bound: at least so long', () => {
    expect(shot.solutions.map(({ for: name, hold }) => `${name} ${hold}`)).toEqual([
      'time at-least',
      'volume at-most',
      'bore at-least',
    ]);
  });

  test('no pressure, no shot', () => {
    const of = { volume: 1, bore: 1, pressure: 0, density: 750 };
    expect(refusal(shot, 'time', of)).toContain('{pressure}');
  });
});

describe('spring rate', () => {
  test('two loads and two lengths', () => {
    const of = { load: 2, 'more-load': 5, length: 40, 'less-length': 30 };
    expect(middle(rate, 'rate', of)).toBeCloseTo(0.3, 12);
    expect(
      middle(rate, 'more-load', { rate: 0.3, load: 2, length: 40, 'less-length': 30 }),
    ).toBeCloseTo(5, 9);
    expect(
      middle(rate, 'load', { rate: 0.3, 'more-load': 5, length: 40, 'less-length': 30 }),
    ).toBeCloseTo(2, 9);
    expect(
      middle(rate, 'less-length', { rate: 0.3, load: 2, 'more-load': 5, length: 40 }),
    ).toBeCloseTo(30, 9);
  });

  test('a pound an inch, by weights', () => {
    // NIST SP 811: lbf/in = 1.751268 E+02 N/m. One pound is 453.59237 g.
    const of = { load: 453.592_37, 'more-load': 2 * 453.592_37, length: 50.8, 'less-length': 25.4 };
    expect(middle(byWeight, 'rate', of)).toBeCloseTo(0.175_126_8, 6);
  });

  test('lengths or loads the wrong way about are refused', () => {
    const of = { load: 2, 'more-load': 5, length: 40, 'less-length': 30 };
    expect(refusal(rate, 'rate', { ...of, 'less-length': 40 })).toContain(
      '{less-length} is not less',
    );
    expect(refusal(rate, 'rate', { ...of, 'more-load': 2 })).toContain('no more than {load}');
    expect(
      refusal(rate, 'load', { rate: 9, 'more-load': 5, length: 40, 'less-length': 30 }),
    ).toContain('is loose before {length}');
    expect(
      refusal(rate, 'less-length', { rate: 0.01, load: 2, 'more-load': 5, length: 40 }),
    ).toContain('shorter than nothing');
  });

  test('holds every point of its stretches', () => {
    const within = {
      load: [1, 4],
      'more-load': [5, 9],
      length: [40, 60],
      'less-length': [20, 30],
    } as const;
    expectEnclosed(
      rate,
      'rate',
      within,
      (of) =>
        ((of['more-load'] ?? 0) - (of.load ?? 0)) / ((of.length ?? 0) - (of['less-length'] ?? 0)),
      1e-9,
    );
  });
});
