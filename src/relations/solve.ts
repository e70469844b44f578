import type { Figure } from './figure.ts';
import { reachOf } from './figure.ts';
import type { Interval, Known, Solution, Unworkable } from './model.ts';
import { isUnworkable } from './model.ts';

/** What a solution comes to: a figure, the reasons why there is none, or both where only limits fail. */
export interface Solved {
  /** Null where nothing can be said. */
  readonly figure: Figure | null;
  /** Everything that the inputs' limits and roundings allow together; null where it was not worked. */
  readonly reach: Interval | null;
  readonly unworkable: Unworkable['unworkable'] | null;
}

/** How far a figure is moved to see whether the result rises with it. */
const NUDGE = 1e-3;

/**
 * Works a solution from figures: from the figures themselves, from all that they may be roundings of,
 * and from their limits (the others then standing at their own figure).
 */
export function solve(solution: Solution, inputs: ReadonlyMap<string, Figure>): Solved {
  const figures = [...inputs.values()];
  const work = (take: (figure: Figure) => Interval | null) => {
    const known = new Map<string, Interval>();
    for (const [name, figure] of inputs) {
      const stretch = take(figure);
      if (!stretch) return null;
      known.set(name, stretch);
    }
    return solution.solve(known);
  };
  const nominal = work((figure) => figure.nominal);
  const isLimited = figures.some(({ limits }) => limits);
  const isOneSided = figures.some(({ side }) => side);
  const whole = isOneSided || !isLimited ? null : work((figure) => reachOf(figure));
  const unworkable = [nominal, whole].flatMap((worked) =>
    worked && isUnworkable(worked) ? [worked.unworkable] : [],
  )[0];
  const refused = unworkable ?? null;
  if ((nominal && isUnworkable(nominal)) || (!nominal && whole && isUnworkable(whole))) {
    return { figure: null, reach: null, unworkable: refused };
  }
  const point = work((figure) => figure.point);
  const limits =
    isLimited && !isOneSided
      ? work(({ limits, point, nominal }) => limits ?? point ?? nominal)
      : null;
  const side = isOneSided ? sideOf(solution, inputs) : null;
  if (side === 'unclear') return { figure: null, reach: null, unworkable: refused };
  const figure: Figure = {
    point: stretchOf(point),
    nominal: stretchOf(nominal),
    limits: stretchOf(limits),
    side,
  };
  if (!figure.nominal && !figure.limits) return { figure: null, reach: null, unworkable: refused };
  return { figure, reach: stretchOf(whole) ?? figure.nominal, unworkable: refused };
}

function stretchOf(worked: ReturnType<Solution['solve']> | null): Interval | null {
  return worked && !isUnworkable(worked) ? worked : null;
}

/** Whether the result of lone limits is itself a lower or an upper one; `unclear` where they pull apart. */
function sideOf(
  solution: Solution,
  inputs: ReadonlyMap<string, Figure>,
): 'min' | 'max' | 'unclear' {
  const sides = new Set<'min' | 'max'>();
  for (const [name, { side, point }] of inputs) {
    if (!side || !point) continue;
    const rises = risesIn(solution, inputs, name, point);
    if (rises === null) return 'unclear';
    sides.add(rises === (side === 'min') ? 'min' : 'max');
  }
  const [only] = sides;
  return only && sides.size === 1 ? only : 'unclear';
}

/** Whether a solution rises in one of its figures; null where it cannot be seen. */
function risesIn(
  solution: Solution,
  inputs: ReadonlyMap<string, Figure>,
  name: string,
  at: Interval,
): boolean | null {
  const known = (value: Interval): Known | null => {
    const map = new Map<string, Interval>();
    for (const [other, figure] of inputs) {
      const stretch = other === name ? value : figure.point;
      if (!stretch) return null;
      map.set(other, stretch);
    }
    return map;
  };
  const step = Math.max(Math.abs(at.hi) * NUDGE, Number.MIN_VALUE);
  const [here, above] = [known(at), known({ lo: at.lo + step, hi: at.hi + step })];
  if (!here || !above) return null;
  const [one, two] = [stretchOf(solution.solve(here)), stretchOf(solution.solve(above))];
  if (!one || !two || (one.lo <= two.hi && two.lo <= one.hi)) return null;
  return two.lo > one.hi;
}
