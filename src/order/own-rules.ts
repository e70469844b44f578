import type { Kind, KindOperation, KindPart, StateNeed, StateTerm } from '../kinds/model.ts';
import type { RuledState, Sheet, WorkRule } from '../sheet/model.ts';
import type { Placed } from '../text/span.ts';
import { plainWords, stateNamed } from './marks.ts';

/** Something in a sheet's own rules that cannot be kept as it is written. */
export type RuleFault =
  | {
      readonly kind: 'unknown';
      readonly what: 'operation' | 'part' | 'condition' | 'setting';
      readonly name: Placed<string>;
    }
  /** A rule of the kind is overruled that the kind does not have. */
  | { readonly kind: 'idle'; readonly rule: WorkRule; readonly name: Placed<string> }
  | { readonly kind: 'unreasoned'; readonly rule: WorkRule }
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

/**
 * A kind with the rules that a sheet adds under `work:`, and without those that it overrules. A rule
 * that cannot be kept (an unknown name, one end of a circle) is left out and told. The kind itself
 * where the sheet has no rules of its own.
 */
export function ownRules(sheet: Sheet, kind: Kind): OwnRules {
  if (sheet.work.length === 0) return { kind, faults: [] };
  const faults: RuleFault[] = [];
  const operations = new Map(kind.operations);
  const added: { readonly late: string; readonly early: string; readonly name: Placed<string> }[] =
    [];
  for (const rule of sheet.work) {
    const known = kind.operationNamed(rule.operation.value);
    if (known === null) {
      faults.push({ kind: 'unknown', what: 'operation', name: rule.operation });
      continue;
    }
    const names = new Names(kind, faults);
    const dropped = withoutRules(rule, known, names, faults);
    for (const name of rule.after) {
      const early = names.operation(name);
      if (early !== null) added.push({ late: known.name, early, name });
    }
    const needs = names.needs(rule.needs);
    const ruled = new Set(needs.map(({ part }) => part));
    operations.set(known.name, {
      ...known,
      after: known.after.filter((each) => !dropped.after.has(each)),
      needs: [
        ...known.needs.filter(({ part }) => !dropped.needs.has(part) && !ruled.has(part)),
        ...needs,
      ],
      needsSaid: new Map(
        [...known.needsSaid].filter(([part]) => !dropped.needs.has(part) && !ruled.has(part)),
      ),
      leaves: [...known.leaves, ...names.terms(rule.leaves)],
      disturbs: [
        ...known.disturbs.filter((each) => !dropped.disturbs.has(each)),
        ...rule.disturbs.flatMap((name) => names.setting(name) ?? []),
      ],
    });
  }
  for (const { late, early, name } of added) {
    const circle = pathTo(late, early, operations);
    if (circle !== null) {
      faults.push({ kind: 'circle', circle: [late, ...circle], name });
      continue;
    }
    follow(late, early, operations);
  }
  const find = kind.operationNamed.bind(kind);
  return {
    kind: {
      ...kind,
      operations,
      operationNamed: (text) => operations.get(find(text)?.name ?? '') ?? null,
    },
    faults,
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
  names: Names,
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
    faults.push({ kind: 'unreasoned', rule });
  return {
    after: drop(
      without.after,
      (name) => names.operation(name),
      (each) => known.after.includes(each),
    ),
    needs: drop(
      without.needs,
      (name) => names.part(name)?.name ?? null,
      (each) => known.needsSaid.has(each) || known.needs.some(({ part }) => part === each),
    ),
    disturbs: drop(
      without.disturbs,
      (name) => names.setting(name),
      (each) => known.disturbs.includes(each),
    ),
  };
}

/** Looks names up in a kind, and tells those that it does not know. */
class Names {
  readonly #kind: Kind;
  readonly #faults: RuleFault[];

  constructor(kind: Kind, faults: RuleFault[]) {
    this.#kind = kind;
    this.#faults = faults;
  }

  operation(name: Placed<string>): string | null {
    return this.#kind.operationNamed(name.value)?.name ?? this.#miss('operation', name);
  }

  setting(name: Placed<string>): string | null {
    return this.#kind.settingNamed(name.value)?.name ?? this.#miss('setting', name);
  }

  part(name: Placed<string>): KindPart | null {
    const plain = plainWords(name.value);
    const parts = [...this.#kind.parts.values()];
    const found =
      parts.find((part) => plainWords(part.name) === plain) ??
      parts.find(({ label, aliases }) =>
        [label, ...aliases].some((each) => plainWords(each) === plain),
      );
    return found ?? this.#miss('part', name);
  }

  needs(states: readonly RuledState[]): readonly StateNeed[] {
    return states.flatMap(({ part, conditions }) => {
      const known = this.part(part);
      if (known === null) return [];
      const anyOf = conditions.flatMap((each) => {
        const term = stateNamed(`${known.name} ${each.value}`, this.#kind);
        return term?.part === known.name ? term.condition : (this.#miss('condition', each) ?? []);
      });
      return anyOf.length > 0 ? [{ part: known.name, anyOf }] : [];
    });
  }

  terms(states: readonly RuledState[]): readonly StateTerm[] {
    return this.needs(states).map(({ part, anyOf }) => ({ part, condition: anyOf[0] ?? '' }));
  }

  #miss(what: 'operation' | 'part' | 'condition' | 'setting', name: Placed<string>): null {
    this.#faults.push({ kind: 'unknown', what, name });
    return null;
  }
}

/** How `to` comes after `from` already, name by name from `from` on; null where it need not. */
function pathTo(
  to: string,
  from: string,
  operations: ReadonlyMap<string, KindOperation>,
): readonly string[] | null {
  if (from === to) return [to];
  // `after` holds everything that comes before, also by way of others: one look is enough.
  return operations.get(from)?.after.includes(to) ? [from, to] : null;
}

/** Lets `late`, and all that comes after it, come after `early` and all that comes before that. */
function follow(late: string, early: string, operations: Map<string, KindOperation>): void {
  const before = [early, ...(operations.get(early)?.after ?? [])];
  for (const [name, operation] of operations) {
    if (name !== late && !operation.after.includes(late)) continue;
    const fresh = before.filter((each) => each !== name && !operation.after.includes(each));
    if (fresh.length > 0)
      operations.set(name, { ...operation, after: [...operation.after, ...fresh] });
  }
}
