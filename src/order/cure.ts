import type { Operation } from '../sheet/model.ts';
import { faultKey } from './fault-key.ts';
import type { OrderFault } from './model.ts';
import { type Move, movesFor, type Reversal } from './sequence.ts';

/** A heading to move, and whether that is proven to put everything right that it is about. */
export interface OrderMove extends Move {
  readonly certain: boolean;
}

/** How many moves that keep the order are walked before the best so far is taken. */
const MOST_WALKS = 24;

/** How many moves are tried at all: a sheet of thousands of headings is no sheet to cure. */
const MOST_TRIES = 2000;

/**
 * The shortest move that puts all of some pairs right, the nearest place first, and of places as
 * near the one that leaves the fewest other faults; upward before downward. `judge` gives the faults
 * of an order, or null where an order keeps not even `after`. Where no one move does it, the moves
 * that `movesFor` names.
 */
export function shortestMoves(
  all: readonly Operation[],
  working: readonly Operation[],
  pairs: readonly Reversal[],
  faults: readonly OrderFault[],
  judge: (order: readonly Operation[]) => readonly OrderFault[] | null,
): { readonly moves: readonly OrderMove[]; readonly faults: readonly OrderFault[] | null } {
  const before = new Set(faults.map(faultKey));
  let best: { from: number; to: number; faults: readonly OrderFault[]; fresh: number } | null =
    null;
  let walks = 0;
  let tries = 0;
  for (const { from, to } of candidates(all, working, pairs)) {
    if (walks >= MOST_WALKS || tries >= MOST_TRIES) break;
    tries++;
    const left = judge(moved(all, from, to));
    if (left === null) continue;
    walks++;
    if (left.some(({ kind }) => kind === 'stage')) continue;
    const fresh = left.filter((fault) => !before.has(faultKey(fault))).length;
    if (
      best === null ||
      fresh < best.fresh ||
      (fresh === best.fresh && left.length < best.faults.length)
    )
      best = { from, to, faults: left, fresh };
    if (left.length === 0) break;
  }
  if (best === null) {
    const moves = movesFor(pairs).map((move) => ({ ...move, certain: false }));
    return { moves, faults: judge(allMoved(all, moves)) };
  }
  const { from, to } = best;
  const operation = all[from] as Operation;
  const beside = all[to] as Operation;
  const move: OrderMove = {
    operation,
    side: to < from ? 'above' : 'below',
    beside,
    reversals: pairs,
    certain: best.fresh === 0,
  };
  return { moves: [move], faults: best.faults };
}

/** Every move of one operation that has to do with the pairs, the shortest first, upward before downward. */
function candidates(
  operations: readonly Operation[],
  working: readonly Operation[],
  pairs: readonly Reversal[],
): readonly { readonly from: number; readonly to: number }[] {
  const concerned = new Set(pairs.flatMap(({ before, after }) => [before, after]));
  const all: { from: number; to: number }[] = [];
  const places = new Set(working);
  operations.forEach((operation, from) => {
    // The one move has to set every pair right, so it moves what all pairs share.
    if (!concerned.has(operation)) return;
    if (!pairs.every(({ before, after }) => before === operation || after === operation)) return;
    operations.forEach((beside, to) => {
      if (to !== from && places.has(beside)) all.push({ from, to });
    });
  });
  return all.sort(
    (a, b) => Math.abs(a.to - a.from) - Math.abs(b.to - b.from) || a.to - a.from - (b.to - b.from),
  );
}

function moved(working: readonly Operation[], from: number, to: number): readonly Operation[] {
  const order = [...working];
  const [operation] = order.splice(from, 1);
  if (operation) order.splice(to, 0, operation);
  return order;
}

/** The order after all of some moves, one after the other. */
function allMoved(working: readonly Operation[], moves: readonly Move[]): readonly Operation[] {
  const order = [...working];
  for (const { operation, side, beside } of moves) {
    order.splice(order.indexOf(operation), 1);
    order.splice(order.indexOf(beside) + (side === 'below' ? 1 : 0), 0, operation);
  }
  return order;
}
