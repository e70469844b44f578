import type { Kind, KindOperation, OrderRule, Stage } from '../kinds/model.ts';
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
  /** The rule that says so, with its reason; its name is that of `before`. */
  readonly rule: OrderRule;
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
    for (const rule of kind.operations.get(name)?.before.values() ?? []) {
      const before = first.get(rule.name);
      if (before && before[1] > place) pairs.push({ before: before[0], after: operation, rule });
    }
  }
  return pairs;
}

/** Operations of a kind in an order that keeps every rule, custom too, stage by stage, as the kind lists them. */
export function orderedOperations(operations: readonly KindOperation[]): readonly KindOperation[] {
  const left = [...operations].sort((a, b) => stageRank(a.stage) - stageRank(b.stage));
  const names = new Set(left.map(({ name }) => name));
  const done = new Set<string>();
  const ordered: KindOperation[] = [];
  while (left.length > 0) {
    const next = left.findIndex(({ before }) =>
      [...before.keys()].every((each) => done.has(each) || !names.has(each)),
    );
    // A circle has no order; the loader refuses kinds that have one, so this only keeps the loop finite.
    const [taken] = left.splice(Math.max(next, 0), 1);
    if (!taken) break;
    done.add(taken.name);
    ordered.push(taken);
  }
  return ordered;
}

/** Pairs of operations that may stand either way round: neither waits for the other, not even by custom. */
export function freePairs(
  operations: readonly KindOperation[],
): readonly (readonly [string, string])[] {
  const pairs: [string, string][] = [];
  operations.forEach((one, i) => {
    for (const two of operations.slice(i + 1)) {
      if (one.stage === two.stage && !one.before.has(two.name) && !two.before.has(one.name)) {
        pairs.push([one.name, two.name]);
      }
    }
  });
  return pairs;
}
