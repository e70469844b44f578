import type { Kind, KindOperation, Stage } from '../kinds/model.ts';
import type { Operation } from '../sheet/model.ts';

const STAGES: readonly Stage[] = ['strip', 'bench', 'before-start', 'running', 'road'];

/** The place of a stage in the work, from 0; -1 for headings that stand anywhere. */
export function stageRank(stage: Stage): number {
  return STAGES.indexOf(stage);
}

/** Two operations of which the first named must come before the other, and does not. */
export interface Reversal {
  readonly before: Operation;
  readonly after: Operation;
  /** Whether only their stages say so, and no `after`. */
  readonly byStage?: true;
}

/** An operation to move, and the operation next to which its place is. */
export interface Move {
  readonly operation: Operation;
  readonly side: 'above' | 'below';
  readonly beside: Operation;
  /** Every pair that this move puts right. */
  readonly reversals: readonly Reversal[];
}

/**
 * The pairs of a sheet's operations that stand the wrong way round by the kind's `after`. Only the
 * first standing of an operation counts: a repeat later is a check, not the setting.
 */
export function reversals(operations: readonly Operation[], kind: Kind): readonly Reversal[] {
  const first = new Map<string, readonly [Operation, number]>();
  operations.forEach((operation, place) => {
    if (operation.known && !first.has(operation.known.name))
      first.set(operation.known.name, [operation, place]);
  });
  const pairs: Reversal[] = [];
  for (const [name, [operation, place]] of first) {
    for (const needed of kind.operations.get(name)?.after ?? []) {
      const before = first.get(needed);
      if (before && before[1] > place) pairs.push({ before: before[0], after: operation });
    }
  }
  return pairs;
}

/**
 * The fewest headings to move, found greedily: the operation that most of the pairs share is the
 * one out of place. It goes above the first that waits for it, or below the last it waits for.
 */
export function movesFor(pairs: readonly Reversal[]): readonly Move[] {
  const moves: Move[] = [];
  let rest = [...pairs];
  while (rest.length > 0) {
    const counts = new Map<Operation, Reversal[]>();
    for (const pair of rest) {
      for (const each of [pair.before, pair.after]) {
        const own = counts.get(each);
        if (own) own.push(pair);
        else counts.set(each, [pair]);
      }
    }
    // Among equals the later operation is the one that was put off, or the earlier one rushed: the
    // one that waits is named, since it is the one that cannot be done where it stands.
    const [operation, shared] = [...counts].sort(
      ([a, one], [b, two]) =>
        two.length - one.length ||
        Number(isWaiting(b, two)) - Number(isWaiting(a, one)) ||
        a.index - b.index,
    )[0] as [Operation, Reversal[]];
    const waits = shared.filter(({ after }) => after === operation);
    const waitedFor = shared.filter(({ before }) => before === operation);
    const [side, chosen] =
      waits.length >= waitedFor.length
        ? (['below', waits] as const)
        : (['above', waitedFor] as const);
    const beside =
      side === 'below'
        ? chosen.reduce(
            (last, { before }) => (before.index > last.index ? before : last),
            chosen[0]?.before as Operation,
          )
        : chosen.reduce(
            (first, { after }) => (after.index < first.index ? after : first),
            chosen[0]?.after as Operation,
          );
    moves.push({ operation, side, beside, reversals: chosen });
    rest = rest.filter((pair) => !chosen.includes(pair));
  }
  return moves.sort((a, b) => a.operation.index - b.operation.index);
}

function isWaiting(operation: Operation, pairs: readonly Reversal[]): boolean {
  return pairs.some(({ after }) => after === operation);
}

/** Operations of a kind in an order that keeps every `after`, stage by stage, as the kind lists them. */
export function orderedOperations(operations: readonly KindOperation[]): readonly KindOperation[] {
  const left = [...operations].sort((a, b) => stageRank(a.stage) - stageRank(b.stage));
  const names = new Set(left.map(({ name }) => name));
  const done = new Set<string>();
  const ordered: KindOperation[] = [];
  while (left.length > 0) {
    const next = left.findIndex(({ after }) =>
      after.every((each) => done.has(each) || !names.has(each)),
    );
    // A circle has no order; the loader refuses kinds that have one, so this only keeps the loop finite.
    const [taken] = left.splice(Math.max(next, 0), 1);
    if (!taken) break;
    done.add(taken.name);
    ordered.push(taken);
  }
  return ordered;
}

/** Pairs of operations that may stand either way round: neither waits for the other. */
export function freePairs(
  operations: readonly KindOperation[],
): readonly (readonly [string, string])[] {
  const pairs: [string, string][] = [];
  operations.forEach((one, i) => {
    for (const two of operations.slice(i + 1)) {
      if (
        one.stage === two.stage &&
        !one.after.includes(two.name) &&
        !two.after.includes(one.name)
      ) {
        pairs.push([one.name, two.name]);
      }
    }
  });
  return pairs;
}
