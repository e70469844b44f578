import { defineRelation, refuse } from '../define-relation.ts';
import { closingForce, seatArea } from '../float-lift.ts';
import { divide, fromNothing, multiply, subtract } from '../interval.ts';
import type { Interval, Unworkable } from '../model.ts';
import { squareRoot } from '../squares.ts';

const FLOAT = ['volume', 'weight', 'density', 'arm', 'short-arm'] as const;
type FloatSizes = Readonly<Record<(typeof FLOAT)[number], Interval>>;

const HUNDRED = { lo: 100, hi: 100 };

/** Whether a float shuts its needle against the pressure of the fuel, and with which margin. */
export default defineRelation({
  id: 'needle-shut',
  title: 'Float against fuel pressure at the needle',
  formula: 'p ≤ p max, p max = (ρ V − m) g (a / b) ÷ (π d² / 4), margin = 100 % × (p max / p − 1)',
  quantities: {
    pressure: { label: 'fuel pressure', symbol: 'p', dimension: 'pressure' },
    seat: { label: 'bore of the seat', symbol: 'd', dimension: 'length' },
    volume: { label: 'volume of the float', symbol: 'V', dimension: 'volume' },
    weight: { label: 'weight of the float', symbol: 'm', dimension: 'mass' },
    density: { label: 'density of the fuel', symbol: 'ρ', dimension: 'density' },
    arm: { label: 'arm of the float', symbol: 'a', dimension: 'length' },
    'short-arm': { label: 'arm of the needle', symbol: 'b', dimension: 'length' },
    holds: { label: 'highest pressure held', symbol: 'p max', dimension: 'pressure' },
    margin: { label: 'margin of the float', symbol: 'margin', dimension: 'percent', places: 0 },
  },
  source:
    'derived: moments about the hinge, of a float wholly under the fuel and of the pressure on the bore of the seat; g = 9.80665 m/s²',
  assumptions: [
    'It is a bound: the float is taken as wholly under the fuel, which is the most that it can lift.',
    'The pressure acts on the bore of the seat, and the bowl is at ambient.',
    'The needle has no spring, and its own weight is left out.',
    'The arms are measured from the hinge, to the middle of the float and to the needle; the weight of the float with its arm is taken at its middle.',
  ],
  range: 'ρ V > m, p > 0, d > 0, b > 0',
  solutions: [
    {
      for: 'holds',
      from: ['seat', ...FLOAT],
      above: ['seat', 'density', 'short-arm'],
      told: 'the float, wholly under the fuel, shuts a seat of {seat} against {worked} at most',
      solve: (known) => sinks(known) ?? highest(known),
    },
    {
      for: 'margin',
      from: ['pressure', 'seat', ...FLOAT],
      above: ['pressure', 'seat', 'density', 'short-arm'],
      told: 'the float, wholly under the fuel, shuts a seat of {seat} against {pressure} with {worked} to spare',
      solve: (known) =>
        sinks(known) ??
        subtract(divide(multiply(HUNDRED, highest(known)), known.pressure), HUNDRED),
    },
    {
      for: 'pressure',
      from: ['seat', ...FLOAT],
      above: ['seat', 'density', 'short-arm'],
      hold: 'at-most',
      offer: false,
      told: 'the float, wholly under the fuel, shuts a seat of {seat} against {worked}',
      solve: (known) => sinks(known) ?? highest(known),
    },
    {
      for: 'seat',
      from: ['pressure', ...FLOAT],
      above: ['pressure', 'density', 'short-arm'],
      hold: 'at-most',
      offer: false,
      told: 'the float, wholly under the fuel, shuts a seat of {worked} against {pressure}',
      solve: (known) =>
        sinks(known) ??
        squareRoot(divide(lift(known), multiply(seatArea({ lo: 1, hi: 1 }), known.pressure))),
    },
  ],
});

function sinks(known: FloatSizes): Unworkable | null {
  if (lift(known).hi > 0) return null;
  return refuse(
    'a float of {volume} that weighs {weight} sinks in fuel of {density}, and shuts nothing',
    'correct the weight or the volume of the float, or the density of the fuel',
    'weight',
    'volume',
    'density',
  );
}

function lift(known: FloatSizes): Interval {
  return closingForce(known.volume, known.weight, known.density, known.arm, known['short-arm']);
}

function highest(known: FloatSizes & Readonly<Record<'seat', Interval>>): Interval {
  const held = divide(lift(known), seatArea(known.seat));
  return fromNothing(held);
}
