import type { Kind, KindOperation } from '../kinds/model.ts';
import { freePairs, orderedOperations } from '../order/index.ts';

/** Which settings and operations a new sheet gets, both in working order. */
export interface DraftPlan {
  readonly settings: readonly string[];
  readonly operations: readonly KindOperation[];
}

/** Labels of neighbors in the plan's order that may change places: neither waits for the other. */
export function freeNeighbors({ operations }: DraftPlan): readonly (readonly [string, string])[] {
  return operations.flatMap((operation, i) => {
    const next = operations[i + 1];
    return next && freePairs([operation, next]).length > 0
      ? [[operation.label, next.label] as const]
      : [];
  });
}

/**
 * An operation of more settings than this gathers what may be there (the jets): it gets those that
 * are asked for. A smaller one is not done until all of its settings are made.
 */
const wholeUpTo = 2;

/**
 * Running work that no feature is the condition of is done on every unit: the idle speed. (On the
 * bench such settings are many, and most units have few of them.)
 */
function isForAll(kind: Kind, operation: KindOperation): boolean {
  if (operation.stage !== 'running' || operation.optional) return false;
  if (operation.settings.length === 0) return false;
  const lists = [...kind.features.values()].flatMap((feature) => [
    ...feature.settings,
    ...feature.operations,
  ]);
  return !lists.some((choices) =>
    choices.some((choice) => choice === operation.name || operation.settings.includes(choice)),
  );
}

/**
 * What a unit of these features needs: every setting that the kind or a feature asks for (the first
 * of its choices where none is there yet), the operations that make them, those that features ask
 * for, and the work that every unit goes through (operations that make no setting and have steps).
 * `more` are settings that are there anyhow: they come first where there is a choice.
 */
export function planDraft(
  kind: Kind,
  features: readonly string[],
  more: readonly string[] = [],
): DraftPlan {
  const own = features.map((name) => kind.features.get(name)).filter((each) => each !== undefined);
  const settings = choose([...own.flatMap((each) => each.settings), ...kind.always.settings], more);
  const asked = choose([...own.flatMap((each) => each.operations), ...kind.always.operations]);
  const chosen = [...kind.operations.values()].filter(
    (operation) =>
      operation.stage !== 'any' &&
      (asked.has(operation.name) ||
        operation.settings.some((setting) => settings.has(setting)) ||
        (operation.settings.length === 0 && operation.steps.length > 0) ||
        isForAll(kind, operation) ||
        // The way from the bench to the running engine leads through it.
        (operation.stage === 'before-start' && !operation.optional)),
  );
  const operations = orderedOperations(chosen);
  for (const operation of operations) {
    if (operation.settings.length > wholeUpTo) continue;
    for (const setting of operation.settings) settings.add(setting);
  }
  const inOrder: string[] = [];
  for (const operation of operations) {
    for (const setting of operation.settings) {
      if (settings.has(setting) && !inOrder.includes(setting)) inOrder.push(setting);
    }
  }
  // A setting that no operation of the kind makes still belongs on the sheet.
  for (const setting of settings) if (!inOrder.includes(setting)) inOrder.push(setting);
  return { settings: inOrder, operations };
}

/** One of each list of choices; lists with one choice go first, as they leave none. */
function choose(lists: readonly (readonly string[])[], there: readonly string[] = []): Set<string> {
  const chosen = new Set<string>(there);
  const byNeed = [...lists].sort((first, second) => first.length - second.length);
  for (const choices of byNeed) {
    const [first] = choices;
    if (first !== undefined && !choices.some((choice) => chosen.has(choice))) chosen.add(first);
  }
  return chosen;
}
