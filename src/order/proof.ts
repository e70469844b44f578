import type { Kind } from '../kinds/model.ts';
import type { Operation, Sheet } from '../sheet/model.ts';
import { type OrderMove, shortestMoves } from './cure.ts';
import { faultKey } from './fault-key.ts';
import type { OrderFault, Walk } from './model.ts';
import { ownRules, type RuleFault } from './own-rules.ts';
import { type Reversal, reversals, stageRank } from './sequence.ts';
import { workingOperations, workOf } from './steps.ts';
import { walkWork } from './walk.ts';

/** Everything that is wrong with the order of a sheet's work, each fault once. */
export interface Proof {
  /** The kind with the sheet's own rules. */
  readonly kind: Kind;
  readonly ruleFaults: readonly RuleFault[];
  readonly walk: Walk;
  /** Headings to move; each tells all the pairs that it puts right. */
  readonly moves: readonly OrderMove[];
  /** What the moves do not cure. */
  readonly faults: readonly OrderFault[];
}

/**
 * Proves the order of a sheet's work: walks it, and where headings stand the wrong way round finds
 * the fewest to move. What is only a consequence of a misplaced heading (a setting disturbed, a need
 * not met) is not told again: the work is walked once more with the headings moved.
 */
export function proveOrder(
  sheet: Sheet,
  usual: Kind,
  options: { readonly ignoreMarks?: boolean } = {},
): Proof {
  // Words and marks mean the same under a sheet's own rules; only those read are kept a kind.
  const work = workOf(sheet, usual, options.ignoreMarks ?? false);
  const { kind, faults: ruleFaults } = ownRules(sheet, usual);
  const walk = walkWork(work, sheet, kind);
  const working = workingOperations(sheet, kind);
  const pairs = [...reversals(working, kind), ...stagePairs(walk.faults, working, kind)];
  if (pairs.length === 0) return { kind, ruleFaults, walk, moves: [], faults: walk.faults };
  const judge = (order: readonly Operation[]): readonly OrderFault[] | null =>
    reversals(order, kind).length > 0 ? null : walkWork(work, sheet, kind, order).faults;
  const { moves, faults: left } = shortestMoves(
    sheet.operations,
    working,
    unique(pairs),
    walk.faults,
    judge,
  );
  const remaining = new Set((left ?? walk.faults).map(faultKey));
  const faults = walk.faults.filter(
    (fault) => fault.kind !== 'stage' && remaining.has(faultKey(fault)),
  );
  return { kind, ruleFaults, walk, moves, faults };
}

/** More pairs than this tell nothing more of which heading is out of place. */
const MOST_PAIRS = 300;

/** For work of an earlier stage that stands too late: each operation of a later stage before it. */
function stagePairs(
  faults: readonly OrderFault[],
  working: readonly Operation[],
  kind: Kind,
): readonly Reversal[] {
  const rank = ({ known }: Operation): number =>
    stageRank(kind.operations.get(known?.name ?? '')?.stage ?? 'any');
  const pairs: Reversal[] = [];
  for (const fault of faults) {
    if (fault.kind !== 'stage') continue;
    const before = fault.operation;
    for (const after of working) {
      if (after.index >= before.index || pairs.length >= MOST_PAIRS) break;
      if (rank(after) > rank(before)) pairs.push({ before, after, byStage: true });
    }
  }
  return pairs;
}

/** A pair that both the kind's `after` and its stages name counts by `after`. */
function unique(pairs: readonly Reversal[]): readonly Reversal[] {
  const known = new Map<string, Reversal>();
  for (const pair of pairs) {
    const key = `${pair.before.index} ${pair.after.index}`;
    if (!known.has(key)) known.set(key, pair);
  }
  return [...known.values()];
}
