import { describe, expect, it } from 'vitest';
import flow from '../../../src/relations/formulas/jet-flow.ts';
import number from '../../../src/relations/formulas/jet-number.ts';
import displacement from '../../../src/relations/formulas/pump-displacement.ts';
import strokes from '../../../src/relations/formulas/pump-strokes.ts';
import { expectEnclosed, expectThereAndBack, middle, refusal, work } from '../sampling.ts';

describe('a pump', () => {
  // references.md, "Metering": .500 × .375 in is 1.206597 mL; ten strokes 12.06597 mL.
  const pump = { bore: 12.7, stroke: 9.525 };

  it('sweeps its bore times its stroke', () => {
    expect(middle(displacement, 'displacement', pump)).toBeCloseTo(1.206597, 6);
    const ten = { delivery: middle(displacement, 'displacement', pump), strokes: 10 };
    expect(middle(strokes, 'volume', ten)).toBeCloseTo(12.06597, 5);
  });

  it('delivers no more than that', () => {
    const bound = displacement.solutions.find((solution) => solution.for === 'delivery');
    expect(bound).toMatchObject({ from: ['displacement'], hold: 'at-most', offer: false });
    expect(work(displacement, 'delivery', { displacement: [1.2, 1.21] })).toEqual({
      lo: 1.2,
      hi: 1.21,
    });
  });

  it('comes back to bore, stroke, strokes and delivery', () => {
    const within = { bore: [5, 30], stroke: [1, 20] } as const;
    expectThereAndBack(displacement, 'displacement', 'bore', within);
    expectThereAndBack(displacement, 'displacement', 'stroke', within);
    const counted = { strokes: [1, 50], delivery: [0.1, 3] } as const;
    expectThereAndBack(strokes, 'volume', 'strokes', counted);
    expectThereAndBack(strokes, 'volume', 'delivery', counted);
  });

  it('holds whatever lies within limits', () => {
    expectEnclosed(
      displacement,
      'displacement',
      { bore: [0.1, 30], stroke: [0.1, 20] },
      ({ bore = 0, stroke = 0 }) => ((Math.PI / 4) * bore * bore * stroke) / 1000,
    );
    expectEnclosed(
      strokes,
      'volume',
      { strokes: [1, 50], delivery: [0, 3] },
      ({ strokes: n = 0, delivery = 0 }) => n * delivery,
    );
    expectEnclosed(
      strokes,
      'strokes',
      { volume: [0, 50], delivery: [0.1, 3] },
      ({ volume = 0, delivery = 1 }) => volume / delivery,
    );
  });

  it.each([
    [
      displacement,
      'displacement',
      { bore: 0, stroke: 9 },
      'the bore of the pump, {bore}, is too close to nothing to work with',
    ],
    [
      displacement,
      'displacement',
      { bore: 9, stroke: 0 },
      'the stroke of the plunger, {stroke}, is too close to nothing to work with',
    ],
    [
      displacement,
      'displacement',
      { bore: 1e20, stroke: 9 },
      '{bore} is beyond anything that the bore of the pump can be',
    ],
    [
      strokes,
      'volume',
      { strokes: 0, delivery: 1 },
      'the number of strokes, {strokes}, is too close to nothing to work with',
    ],
    [
      strokes,
      'volume',
      { strokes: 10, delivery: -1 },
      'the delivery in a stroke, {delivery}, is less than nothing',
    ],
  ])('refuses %#', (relation, wanted, figures, message) => {
    expect(refusal(relation, wanted, figures)).toBe(message);
  });
});

describe('a jet', () => {
  it('has the bore that its number says', () => {
    expect(work(number, 'bore', { marked: [1.295, 1.305] })).toEqual({ lo: 1.295, hi: 1.305 });
    expect(refusal(number, 'bore', { marked: 0 })).toBe(
      'the number on the jet, {marked}, is too close to nothing to work with',
    );
  });

  it('passes no more than a frictionless one under the same head', () => {
    // By hand: 1 mm² (bore 1.128379 mm) under 500 mm: √(2 × 9806.65 × 500) = 3131.5571 mm/s.
    const jet = { bore: Math.sqrt(4 / Math.PI), head: 500 };
    expect(middle(flow, 'flow', jet)).toBeCloseTo(3.1315571, 6);
    expect(middle(flow, 'bore', { flow: 3.1315571, head: 500 })).toBeCloseTo(1.128379, 6);
    expect(flow.solutions.map(({ for: wanted, hold, offer }) => [wanted, hold, offer])).toEqual([
      ['flow', 'at-most', false],
      ['bore', 'at-least', false],
    ]);
  });

  it('is not worked from a flow without its head', () => {
    expect(flow.solutions.every((solution) => solution.from.includes('head'))).toBe(true);
    expect(flow.range).toContain('without the head a flow says nothing of the bore');
    expect(refusal(flow, 'bore', { flow: 3, head: 0 })).toBe(
      'the head of the test rig, {head}, is too close to nothing to work with',
    );
  });

  it('holds whatever lies within limits', () => {
    const rig = { bore: [0.2, 5], head: [10, 2000] } as const;
    expectEnclosed(
      flow,
      'flow',
      rig,
      ({ bore = 0, head = 0 }) =>
        ((Math.PI / 4) * bore * bore * Math.sqrt(2 * 9806.65 * head)) / 1000,
    );
    expectThereAndBack(flow, 'flow', 'bore', rig);
  });
});
