import type { Kind, ReasonedNeed } from '../kinds/model.ts';
import { operationIn } from '../sheet/index.ts';
import type { Operation, Sheet } from '../sheet/model.ts';
import { meets } from './meets.ts';
import type { OrderFault, UnitState, Walk, WorkStep } from './model.ts';
import { NeedsOf } from './needs-of.ts';

type LeftOpen = Extract<OrderFault, { kind: 'left-open' }>;
type Disturbed = Extract<OrderFault, { kind: 'disturbed' }>;

/** The step before which a part goes back that an earlier step of the same operation opened; null elsewhere. */
export function stepToRestoreBefore({ state, at }: LeftOpen, walk: Walk): WorkStep | null {
  const { span } = state;
  if (at === null || span === null) return null;
  const opened = walk.steps.find(({ step }) => step.changes.some((each) => each.span === span));
  return opened?.step.operation === at.operation && opened.step !== at ? at : null;
}

/**
 * The operation at whose end a part goes back to its place: the last that moves it, or that cannot do
 * with it in its place (itself, a condition that it brings about, or what its place shuts out), before the engine starts or the work ends.
 * What was freed to take another part away stays free until that one is back: the clamp of a distributor.
 * What covers the part, and the way onto the engine, come later. Null where no operation has steps.
 */
export function placeToRestore(
  { part, home, at }: LeftOpen,
  walk: Walk,
  kind: Kind,
): Operation | null {
  const worked = [...new Set(walk.steps.map(({ step }) => step.operation))].filter(
    ({ steps }) => steps.length > 0,
  );
  const end = at === null ? worked.length : Math.max(worked.indexOf(at.operation), 0);
  const until = worked.slice(0, end);
  const bars = kind.parts.get(part)?.conditions.get(home[0] ?? '')?.bars ?? [];
  const isInTheWay = ({ part: other, anyOf }: ReasonedNeed): boolean =>
    other === part
      ? !anyOf.some((each) => meets(kind, part, each, home))
      : bars.some((bar) => bar.part === other && anyOf.every((each) => bar.anyOf.includes(each)));
  const moved = new Set([part, ...freedFor(part, home, kind)]);
  const last = until.findLast((operation) => {
    const known = operationIn(kind, operation);
    return (
      known?.leaves.some((term) => moved.has(term.part) && term.part !== part) ||
      known?.needs.some(isInTheWay) ||
      known?.settings.some((name) => kind.settings.get(name)?.needs.some(isInTheWay)) ||
      walk.steps.some(
        ({ step }) =>
          step.operation === operation &&
          step.changes.some(
            ({ term }) =>
              moved.has(term.part) ||
              kind.parts.get(term.part)?.conditions.get(term.condition)?.needs.some(isInTheWay),
          ),
      )
    );
  });
  return last ?? until.at(-1) ?? worked[0] ?? null;
}

/** The parts that come out of their places only where another is out of its own. */
function freedFor(part: string, home: readonly string[], kind: Kind): readonly string[] {
  return [...kind.parts.values()]
    .filter(
      (other) =>
        other.name !== part &&
        other.home.length > 0 &&
        [...other.conditions].some(
          ([name, { needs }]) =>
            !other.home.includes(name) &&
            needs.some(
              (need) =>
                need.part === part &&
                need.strength === 'hard' &&
                !need.anyOf.some((each) => meets(kind, part, each, home)),
            ),
        ),
    )
    .map(({ name }) => name);
}

/** What has to be brought about before a disturbed setting is checked at the end of what disturbs it. */
export interface CheckPlace {
  readonly operation: Operation;
  /** Needs that do not hold there; empty where it can be checked as the unit stands. */
  readonly lacking: readonly ReasonedNeed[];
  /** Whether bringing them about would open what has been closed: then the whole operation is repeated. */
  readonly isClosed: boolean;
}

/** Where and how a disturbed setting is checked again. */
export function placeToCheck(
  { setting, by }: Disturbed,
  sheet: Sheet,
  walk: Walk,
  kind: Kind,
  isThere: (part: string) => boolean,
): CheckPlace {
  const after: UnitState =
    walk.steps.findLast(({ step }) => step.operation === by)?.after ?? new Map();
  const maker = [...kind.operations.values()].find(({ settings }) => settings.includes(setting));
  const of = new NeedsOf(sheet, kind);
  const needs = [...(maker ? of.operation(maker) : []), ...of.setting(setting)];
  const lacking = needs.filter(({ part, anyOf, noneOf, strength, unless }) => {
    const now = after.get(part);
    if (strength === 'usual' || !isThere(part)) return false;
    if (
      unless.some((lifts) =>
        meets(kind, lifts.part, after.get(lifts.part)?.condition ?? '', lifts.anyOf),
      )
    )
      return false;
    return (
      now === undefined ||
      noneOf.includes(now.condition) ||
      !meets(kind, part, now.condition, anyOf)
    );
  });
  const isClosed = lacking.some(({ part, anyOf }) => {
    const known = kind.parts.get(part);
    if (known === undefined) return false;
    if ([...known.conditions.values()].some(({ startsUp }) => startsUp)) return true;
    const now = after.get(part)?.condition ?? '';
    return meets(kind, part, now, known.home) && !anyOf.some((each) => known.home.includes(each));
  });
  return { operation: by, lacking, isClosed };
}
