import type { Operation } from '../sheet/model.ts';
import { faultKey } from './fault-key.ts';
import type { OrderFault, Weight } from './model.ts';
import type { Reversal } from './sequence.ts';

/** A heading to move, what that mends, and whether it is the one place that mends it. */
export interface OrderMove {
  readonly operation: Operation;
  readonly side: 'above' | 'below';
  readonly beside: Operation;
  /** Hard rules that this keeps again. */
  readonly reversals: readonly Reversal[];
  /** What was found in the work as it stands, and is not found after the move. */
  readonly mends: readonly OrderFault[];
  /** Whether no other place is as good, and nothing new is found after it. */
  readonly certain: boolean;
}

/** How an order of headings is judged: the hard rules that it breaks, and what a walk through it finds. */
export type Judge = (order: readonly Operation[]) => {
  readonly broken: readonly Reversal[];
  readonly faults: () => readonly OrderFault[];
};

/** How many orders are walked before the best so far is taken. */
const MOST_WALKS = 40;

/** A sheet of thousands of headings is no sheet to cure. */
const MOST_PAIRS = 300;

/** How many headings are moved at most; what is left is told where it is found. */
const MOST_MOVES = 3;

const weights: Readonly<Record<Weight, number>> = { error: 100, warning: 10, note: 1 };

/**
 * Moves of headings that mend what was found, one after the other: of all moves that keep a broken hard
 * rule again and break none, the one that leaves least, and of these the shortest, upward before
 * downward. A move that mends nothing is none. `left` is what they do not mend, as it was found at first.
 */
export function mendingMoves(
  all: readonly Operation[],
  working: readonly Operation[],
  pairs: readonly Reversal[],
  faults: readonly OrderFault[],
  judge: Judge,
): { readonly moves: readonly OrderMove[]; readonly left: readonly OrderFault[] } {
  const moves: OrderMove[] = [];
  let order = all;
  let found = faults;
  let broken = pairs;
  let walks = 0;
  while (moves.length < MOST_MOVES && broken.length > 0 && found.length > 0) {
    const before = new Map(found.map((fault) => [faultKey(fault), fault]));
    const seen = new Set<string>();
    let best: Candidate | null = null;
    let isAlone = true;
    for (const { from, to } of candidates(order, working, broken)) {
      if (walks >= MOST_WALKS) {
        isAlone = false;
        break;
      }
      const changed = moved(order, from, to);
      const key = changed.map(({ index }) => index).join(' ');
      if (seen.has(key)) continue;
      seen.add(key);
      const judged = judge(changed);
      const rest = judged.broken;
      if (rest.length >= broken.length) continue;
      walks++;
      const left = judged.faults();
      const fresh = left.some((fault) => !before.has(faultKey(fault)));
      const score = scoreOf(left) + (fresh ? 0.5 : 0);
      if (score >= scoreOf(found)) continue;
      if (best === null || score < best.score) {
        best = { from, to, left, fresh, score, order: changed, rest };
        isAlone = true;
      } else if (score === best.score) isAlone = false;
    }
    if (best === null) break;
    const after = new Set(best.left.map(faultKey));
    const kept = new Set(best.rest.map(pairKey));
    moves.push({
      operation: order[best.from] as Operation,
      side: best.to < best.from ? 'above' : 'below',
      beside: order[best.to] as Operation,
      reversals: pairs.filter(
        (pair) =>
          broken.some((each) => pairKey(each) === pairKey(pair)) && !kept.has(pairKey(pair)),
      ),
      mends: found.filter((fault) => !after.has(faultKey(fault))),
      certain: isAlone && !best.fresh,
    });
    order = best.order;
    found = best.left;
    broken = best.rest;
  }
  const remaining = new Set(found.map(faultKey));
  return { moves, left: faults.filter((fault) => remaining.has(faultKey(fault))) };
}

interface Candidate {
  readonly from: number;
  readonly to: number;
  readonly left: readonly OrderFault[];
  readonly fresh: boolean;
  readonly score: number;
  readonly order: readonly Operation[];
  readonly rest: readonly Reversal[];
}

function scoreOf(faults: readonly OrderFault[]): number {
  return faults.reduce((sum, { weight }) => sum + weights[weight], 0);
}

function pairKey({ before, after }: Reversal): string {
  return `${before.index} ${after.index}`;
}

/** Every move of one operation that has to do with the pairs, the shortest first, upward before downward. */
function candidates(
  operations: readonly Operation[],
  working: readonly Operation[],
  pairs: readonly Reversal[],
): readonly { readonly from: number; readonly to: number }[] {
  const concerned = new Set(
    pairs.slice(0, MOST_PAIRS).flatMap(({ before, after }) => [before, after]),
  );
  const places = new Set(working);
  const all: { from: number; to: number }[] = [];
  operations.forEach((operation, from) => {
    if (!concerned.has(operation)) return;
    // A place that puts none of its own pairs right mends nothing.
    const others = new Set(
      pairs.flatMap(({ before, after }) =>
        before === operation ? [after] : after === operation ? [before] : [],
      ),
    );
    const at = operations.flatMap((each, i) => (others.has(each) ? [i] : []));
    operations.forEach((beside, to) => {
      if (to === from || !places.has(beside)) return;
      if (at.some((i) => (i < from ? to <= i : to >= i))) all.push({ from, to });
    });
  });
  return all.sort(
    (a, b) => Math.abs(a.to - a.from) - Math.abs(b.to - b.from) || a.to - a.from - (b.to - b.from),
  );
}

function moved(operations: readonly Operation[], from: number, to: number): readonly Operation[] {
  const order = [...operations];
  const [operation] = order.splice(from, 1);
  if (operation) order.splice(to, 0, operation);
  return order;
}
