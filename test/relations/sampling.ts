import fc from 'fast-check';
import { expect } from 'vitest';
import { type Interval, isUnworkable, type Relation } from '../../src/relations/model.ts';
import { runs } from '../suite/part.ts';

/** Figures by quantity: a number, or the two ends of a stretch. */
export type Figures = Readonly<Record<string, number | readonly [lo: number, hi: number]>>;

function solve(relation: Relation, target: string, figures: Figures) {
  const taken = relation.quantities.flatMap(({ name, unsaid }): [string, Interval][] =>
    unsaid && !Object.hasOwn(figures, name) ? [[name, unsaid.value]] : [],
  );
  const names = new Set([...Object.keys(figures), ...taken.map(([name]) => name)]);
  const solution = relation.solutions.find(
    (each) => each.for === target && each.from.every((name) => names.has(name)),
  );
  if (!solution) throw new Error(`${relation.id} has no way to ${target} from ${[...names]}`);
  const known = Object.entries(figures).map(([name, figure]): [string, Interval] => {
    const [lo, hi] = typeof figure === 'number' ? [figure, figure] : figure;
    return [name, { lo, hi }];
  });
  return solution.solve(new Map([...taken, ...known]));
}

/** What a relation's first fitting solution works; fails where it refuses. */
export function work(relation: Relation, target: string, figures: Figures): Interval {
  const worked = solve(relation, target, figures);
  if (isUnworkable(worked)) throw new Error(worked.unworkable.message);
  return worked;
}

/** The middle of what is worked from exact figures, whose ends must lie within a billionth of it. */
export function middle(relation: Relation, target: string, figures: Figures): number {
  const { lo, hi } = work(relation, target, figures);
  const half = (lo + hi) / 2;
  expect(hi - lo).toBeLessThanOrEqual(1e-9 * Math.max(1, Math.abs(half)));
  return half;
}

/** The refusal of figures that leave a formula's range; fails where it works. */
export function refusal(relation: Relation, target: string, figures: Figures): string {
  const worked = solve(relation, target, figures);
  if (!isUnworkable(worked)) throw new Error(`${relation.id} works ${worked.lo} to ${worked.hi}`);
  return worked.unworkable.message;
}

/**
 * Holds that no point sampled inside random stretches falls outside of what is worked from them.
 * `formula` is the plain one in doubles, which may be off by a few units in its last place, or by
 * `precision` of the value, and gives null where it does not hold.
 */
export function expectEnclosed(
  relation: Relation,
  target: string,
  within: Readonly<Record<string, readonly [least: number, most: number]>>,
  formula: (values: Readonly<Record<string, number>>) => number | null,
  precision = 1e-12,
): void {
  const names = Object.keys(within);
  const unit = fc.double({ min: 0, max: 1, noNaN: true });
  const places = fc.array(fc.tuple(unit, unit, unit), {
    minLength: names.length,
    maxLength: names.length,
  });
  const property = fc.property(places, (drawn) => {
    const stretches: Record<string, [number, number]> = {};
    const sample: Record<string, number> = {};
    names.forEach((name, i) => {
      const [least = 0, most = 0] = within[name] ?? [];
      const [a = 0, b = 0, t = 0] = drawn[i] ?? [];
      const at = (share: number) => Math.min(most, least + share * (most - least));
      const [lo, hi] = [Math.min(at(a), at(b)), Math.max(at(a), at(b))];
      stretches[name] = [lo, hi];
      sample[name] = Math.min(hi, Math.max(lo, lo + t * (hi - lo)));
    });
    const value = formula(sample);
    const worked = solve(relation, target, stretches);
    if (value === null) return;
    if (isUnworkable(worked)) throw new Error(worked.unworkable.message);
    const slack = precision * Math.max(1, Math.abs(value));
    expect(value).toBeGreaterThanOrEqual(worked.lo - slack);
    expect(value).toBeLessThanOrEqual(worked.hi + slack);
  });
  fc.assert(property, { numRuns: runs(2000) });
}

/** Holds that a quantity worked forward, and back from what that gave, comes back to where it began. */
export function expectThereAndBack(
  relation: Relation,
  target: string,
  back: string,
  within: Readonly<Record<string, readonly [least: number, most: number]>>,
): void {
  const names = Object.keys(within);
  const drawn = fc.tuple(
    ...names.map((name) => {
      const [min = 0, max = 1] = within[name] ?? [];
      return fc.double({ min, max, noNaN: true });
    }),
  );
  const property = fc.property(drawn, (values) => {
    const figures: Record<string, number> = Object.fromEntries(
      names.map((name, i) => [name, values[i] ?? 0]),
    );
    const { lo, hi } = work(relation, target, figures);
    const { [back]: began = 0, ...others } = figures;
    const returned = work(relation, back, { ...others, [target]: [lo, hi] });
    expect(returned.lo).toBeLessThanOrEqual(began);
    expect(returned.hi).toBeGreaterThanOrEqual(began);
    expect(returned.hi - returned.lo).toBeLessThan(1e-6 * Math.max(1, Math.abs(began)));
  });
  fc.assert(property, { numRuns: runs(300) });
}
