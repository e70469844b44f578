import { levelName, orderBefore, withParts } from '../kinds/index.ts';
import type { Kind, KindOperation, OrderRule, ReasonedNeed, Stage } from '../kinds/model.ts';
import { ownOperation } from '../sheet/index.ts';
import type { Sheet, WorkRule } from '../sheet/model.ts';
import type { Placed } from '../text/index.ts';
import { ownParts } from './own-parts.ts';
import { RuleNames } from './rule-names.ts';

/** Something in a sheet's own rules that cannot be kept as it is written. */
export type RuleFault =
  | {
      readonly kind: 'unknown';
      readonly what: 'operation' | 'part' | 'condition' | 'setting' | 'hazard';
      readonly name: Placed<string>;
    }
  /** A rule of the kind is overruled that the kind does not have. */
  | { readonly kind: 'idle'; readonly rule: WorkRule; readonly name: Placed<string> }
  /** What overrules the kind, or is the sheet's own, without a reason. */
  | {
      readonly kind: 'unreasoned';
      readonly rule: WorkRule;
      readonly what: 'without' | 'stage' | 'hazards' | 'own';
    }
  /** The first operation of the circle stands again at its end; each comes after the next. */
  | {
      readonly kind: 'circle';
      readonly circle: readonly string[];
      readonly name: Placed<string>;
    };

/** The kind as it holds for one sheet, and what is wrong with the sheet's own rules. */
export interface OwnRules {
  readonly kind: Kind;
  readonly faults: readonly RuleFault[];
}

const made = new WeakMap<Sheet, { readonly usual: Kind; readonly own: OwnRules }>();

/**
 * A kind with the rules, operations and parts that a sheet adds under `work:`, and without those that it
 * overrules, nor what follows from them. A rule that cannot be kept (an unknown name, one end of a
 * circle) is left out and told. The kind itself where the sheet has no rules of its own.
 */
export function ownRules(sheet: Sheet, kind: Kind): OwnRules {
  if (sheet.work.length === 0) return { kind, faults: [] };
  const known = made.get(sheet);
  if (known && (known.usual === kind || known.own.kind === kind)) return known.own;
  const own = ruled(sheet, kind);
  made.set(sheet, { usual: kind, own });
  return own;
}

function ruled(sheet: Sheet, usual: Kind): OwnRules {
  const faults: RuleFault[] = [];
  const parts = ownParts(sheet.work, usual);
  const parted = withParts(usual, parts);
  const operations = new Map(usual.operations);
  for (const rule of sheet.work) {
    if (rule.conditions.length > 0) {
      if (rule.because === null) faults.push({ kind: 'unreasoned', rule, what: 'own' });
      continue;
    }
    const { label } = rule;
    if (usual.operationNamed(rule.operation.value) !== null || label === null) continue;
    const own = ownOperation(rule, label.value, usual);
    operations.set(own.name, own);
    if (rule.because === null) faults.push({ kind: 'unreasoned', rule, what: 'own' });
  }
  const find = (text: string): string | null =>
    operations.get(usual.operationNamed(text)?.name ?? levelName(text))?.name ?? null;
  const names = new RuleNames(parted, find, faults);
  const added: {
    readonly late: string;
    readonly rule: OrderRule;
    readonly name: Placed<string>;
  }[] = [];
  const not = new Map<string, ReadonlySet<string>>();
  for (const rule of sheet.work) {
    if (rule.conditions.length > 0) continue;
    const known = operations.get(find(rule.operation.value) ?? '');
    if (known === undefined) {
      faults.push({ kind: 'unknown', what: 'operation', name: rule.operation });
      continue;
    }
    for (const name of rule.after) {
      const early = names.operation(name);
      if (early !== null) added.push({ late: known.name, rule: reasoned(early, rule), name });
    }
    const dropped = withoutRules(rule, known, names, faults);
    not.set(known.name, dropped.after);
    operations.set(known.name, changed(known, rule, dropped, names, faults));
  }
  let before = orderBefore(operations, not);
  for (const { late, rule, name } of added) {
    // What a sheet says for its unit goes before what is only custom.
    if (before.get(rule.name)?.before.get(late)?.strength === 'usual') {
      not.set(rule.name, new Set([...(not.get(rule.name) ?? []), late]));
      before = orderBefore(before, not);
    }
    const circle = pathTo(late, rule.name, before);
    if (circle !== null) {
      faults.push({ kind: 'circle', circle: [late, ...circle], name });
      continue;
    }
    const operation = before.get(late);
    if (operation === undefined) continue;
    before = orderBefore(
      new Map(before).set(late, {
        ...operation,
        after: [...operation.after.filter(({ name: each }) => each !== rule.name), rule],
      }),
      not,
    );
  }
  const kind: Kind = {
    ...parted,
    operations: before,
    operationNamed: (text) => before.get(find(text) ?? '') ?? null,
  };
  return { kind, faults };
}

function changed(
  known: KindOperation,
  rule: WorkRule,
  dropped: Dropped,
  names: RuleNames,
  faults: RuleFault[],
): KindOperation {
  const needs = names.needs(rule.needs).map((need) => ownNeed(need, rule, known));
  const ruledParts = new Set(needs.map(({ part }) => part));
  const isOwn = rule.label !== null;
  for (const what of ['stage', 'hazards'] as const)
    if (rule[what] !== null && rule.because === null && !isOwn)
      faults.push({ kind: 'unreasoned', rule, what });
  return {
    ...known,
    stage: (rule.stage?.value ?? known.stage) as Stage,
    hazards:
      rule.hazards === null
        ? known.hazards
        : rule.hazards.flatMap((name) => names.hazard(name) ?? []),
    after: known.after.filter(({ name }) => !dropped.after.has(name)),
    needs: [
      ...known.needs.filter(({ part }) => !dropped.needs.has(part) && !ruledParts.has(part)),
      ...needs,
    ],
    needsSaid: new Map(
      [...known.needsSaid].filter(([part]) => !dropped.needs.has(part) && !ruledParts.has(part)),
    ),
    leaves: [
      ...known.leaves,
      ...names.terms(rule.leaves).map((term) => ({ ...term, own: true as const })),
    ],
    disturbs: [
      ...known.disturbs.filter(({ name }) => !dropped.disturbs.has(name)),
      ...rule.disturbs.flatMap((name) => {
        const setting = names.setting(name);
        return setting === null ? [] : [reasoned(setting, rule)];
      }),
    ],
    without: dropped.needs,
  };
}

function reasoned(name: string, rule: WorkRule): OrderRule {
  return { name, because: rule.because?.value ?? 'the sheet says so', strength: 'hard', own: true };
}

function ownNeed(
  { part, anyOf }: { readonly part: string; readonly anyOf: readonly string[] },
  rule: WorkRule,
  known: KindOperation,
): ReasonedNeed {
  const because = rule.because?.value ?? 'the sheet says so';
  return {
    part,
    anyOf,
    noneOf: [],
    because,
    strength: 'hard',
    unless: [],
    whileIn: [],
    ifSaid: new Map(),
    unlessStated: [],
    ifWords: [],
    begins: known.needs.some((each) => each.part === part && each.begins),
  };
}

interface Dropped {
  readonly after: ReadonlySet<string>;
  readonly needs: ReadonlySet<string>;
  readonly disturbs: ReadonlySet<string>;
}

function withoutRules(
  rule: WorkRule,
  known: KindOperation,
  names: RuleNames,
  faults: RuleFault[],
): Dropped {
  const { without } = rule;
  const drop = (
    given: readonly Placed<string>[],
    find: (name: Placed<string>) => string | null,
    has: (name: string) => boolean,
  ): ReadonlySet<string> => {
    const dropped = new Set<string>();
    for (const name of given) {
      const found = find(name);
      if (found === null) continue;
      if (has(found)) dropped.add(found);
      else faults.push({ kind: 'idle', rule, name });
    }
    return dropped;
  };
  if ([...without.after, ...without.needs, ...without.disturbs].length > 0 && !rule.because)
    faults.push({ kind: 'unreasoned', rule, what: 'without' });
  return {
    after: drop(
      without.after,
      (name) => names.operation(name),
      (each) => known.before.has(each),
    ),
    needs: drop(
      without.needs,
      (name) => names.part(name)?.name ?? null,
      (each) =>
        known.needsSaid.has(each) ||
        known.needs.some(({ part }) => part === each) ||
        names.isNeeded(each, known),
    ),
    disturbs: drop(
      without.disturbs,
      (name) => names.setting(name),
      (each) => known.disturbs.some(({ name }) => name === each),
    ),
  };
}

/** How `to` comes after `from` already, name by name from `from` on; null where it need not. */
function pathTo(
  to: string,
  from: string,
  operations: ReadonlyMap<string, KindOperation>,
): readonly string[] | null {
  if (from === to) return [to];
  // `before` holds everything that comes before, also by way of others: one look is enough.
  return operations.get(from)?.before.has(to) ? [from, to] : null;
}
