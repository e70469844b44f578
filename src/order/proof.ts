import type { Kind } from '../kinds/model.ts';
import type { Sheet } from '../sheet/model.ts';
import { mendingMoves, type OrderMove } from './cure.ts';
import type { OrderFault, Walk } from './model.ts';
import { ownRules, type RuleFault } from './own-rules.ts';
import { type Reversal, reversals } from './sequence.ts';
import { workingOperations, workOf } from './steps.ts';
import { walkWork } from './walk.ts';

/** Everything that is wrong with the order of a sheet's work, each fault once. */
export interface Proof {
  /** The kind with the sheet's own rules. */
  readonly kind: Kind;
  readonly ruleFaults: readonly RuleFault[];
  readonly walk: Walk;
  /** Headings to move; each tells the faults that it mends, and the rules that it keeps again. */
  readonly moves: readonly OrderMove[];
  /** What the moves do not mend. */
  readonly faults: readonly OrderFault[];
  /** Pairs of headings that stand another way round than is usual, or than words alone can prove wrong. */
  readonly unusual: readonly Reversal[];
}

/**
 * Proves the order of a sheet's work: walks it, and where something is found that headings out of place
 * explain, finds the fewest to move. A rule about two headings is no fault by itself: what counts is a
 * part in the way, a state that is not there, a setting that is moved and not made again.
 */
export function proveOrder(
  sheet: Sheet,
  usual: Kind,
  options: { readonly ignoreMarks?: boolean } = {},
): Proof {
  const { kind, faults: ruleFaults } = ownRules(sheet, usual);
  // Words mean the same under a sheet's own rules, and are kept a kind; marks may name its own parts.
  const own = kind.parts === usual.parts ? usual : kind;
  const work = workOf(sheet, usual, options.ignoreMarks ?? false, own);
  const walk = walkWork(work, sheet, kind);
  const working = workingOperations(sheet, kind);
  const pairs = reversals(working, kind);
  const hard = pairs.filter(({ rule }) => rule.strength !== 'usual');
  const found = [...walk.faults, ...misplaced(hard)];
  const { moves, left } =
    hard.length === 0 || found.length === 0
      ? { moves: [], left: found }
      : mendingMoves(sheet.operations, working, hard, found, (order) => {
          const placed = order.filter((each) => working.includes(each));
          const broken = reversals(placed, kind).filter(({ rule }) => rule.strength !== 'usual');
          return {
            broken,
            faults: () => [...walkWork(work, sheet, kind, order).faults, ...misplaced(broken)],
          };
        });
  const told = new Set(moves.flatMap((move) => move.reversals));
  const unusual = pairs.filter((pair) => !told.has(pair));
  return { kind, ruleFaults, walk, moves, faults: left, unusual };
}

/** What the sheet itself says of the order of two headings is kept whatever the walk finds. */
function misplaced(pairs: readonly Reversal[]): readonly OrderFault[] {
  return pairs
    .filter(({ rule }) => rule.own)
    .map(({ before, after, rule }) => ({
      kind: 'misplaced',
      weight: 'error',
      operation: after,
      first: before,
      because: rule.because,
    }));
}
