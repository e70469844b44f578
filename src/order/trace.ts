import type { Kind, Stage } from '../kinds/model.ts';
import { operationIn } from '../sheet/index.ts';
import type { PartState, StateChange, UnitState, Walk } from './model.ts';

/** One line of a trace: what a step changes and what is different after it. */
export interface TraceRow {
  readonly kind: 'step';
  /** Where the step starts, as an offset into the sheet. */
  readonly offset: number;
  readonly operation: string;
  /** As the sheet numbers it; null for what stands outside the numbered steps. */
  readonly number: number | null;
  readonly changes: readonly StateChange[];
  /** Parts whose condition differs from the step before, in the kind's order. */
  readonly after: readonly (readonly [string, PartState])[];
}

/** The whole state as a stage of the work begins. */
export interface TraceStage {
  readonly kind: 'stage';
  readonly stage: Stage;
  readonly state: readonly (readonly [string, PartState])[];
}

/** A walk as lines to read: one a step, and the whole state before the first step of each stage. */
export function traceOf(walk: Walk, kind: Kind): readonly (TraceRow | TraceStage)[] {
  const rows: (TraceRow | TraceStage)[] = [];
  // A part that the unit has not got is in no state of the walk either.
  const known = walk.steps[0]?.after;
  const starts = [...kind.parts.values()].flatMap(({ name, starts: condition }) =>
    condition === null || known?.has(name) === false
      ? []
      : [[name, { condition, by: 'start', span: null }] as const],
  );
  let before: UnitState = new Map(starts);
  let stage: Stage | null = null;
  for (const { step, after } of walk.steps) {
    const own = operationIn(kind, step.operation)?.stage ?? 'any';
    if (own !== 'any' && own !== stage) {
      stage = own;
      rows.push({ kind: 'stage', stage, state: inOrder(before, kind) });
    }
    const was = before;
    rows.push({
      kind: 'step',
      offset: step.span.start,
      operation: step.operation.heading.value,
      number: step.operation.steps[step.index]?.number ?? null,
      changes: step.changes,
      after: inOrder(after, kind).filter(
        ([part, { condition }]) => was.get(part)?.condition !== condition,
      ),
    });
    before = after;
  }
  return rows;
}

function inOrder(state: UnitState, kind: Kind): readonly (readonly [string, PartState])[] {
  return [...kind.parts.keys()].flatMap((part) => {
    const now = state.get(part);
    return now === undefined ? [] : [[part, now] as const];
  });
}
