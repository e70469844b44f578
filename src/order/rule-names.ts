import type { Kind, KindOperation, KindPart, StateNeed, StateTerm } from '../kinds/model.ts';
import type { RuledState } from '../sheet/model.ts';
import type { Placed } from '../text/index.ts';
import type { RuleFault } from './own-rules.ts';

type What = Extract<RuleFault, { kind: 'unknown' }>['what'];

/** Looks up the names of a sheet's own rules in a kind, and tells those that it does not know. */
export class RuleNames {
  readonly #kind: Kind;
  readonly #operationNamed: (text: string) => string | null;
  readonly #faults: RuleFault[];

  constructor(kind: Kind, operationNamed: (text: string) => string | null, faults: RuleFault[]) {
    this.#kind = kind;
    this.#operationNamed = operationNamed;
    this.#faults = faults;
  }

  operation(name: Placed<string>): string | null {
    return this.#operationNamed(name.value) ?? this.#miss('operation', name);
  }

  setting(name: Placed<string>): string | null {
    return this.#kind.settingNamed(name.value)?.name ?? this.#miss('setting', name);
  }

  hazard(name: Placed<string>): string | null {
    return this.#kind.hazardNamed(name.value)?.name ?? this.#miss('hazard', name);
  }

  part(name: Placed<string>): KindPart | null {
    return this.#kind.partNamed(name.value) ?? this.#miss('part', name);
  }

  needs(states: readonly RuledState[]): readonly StateNeed[] {
    return states.flatMap(({ part, conditions }) => {
      const known = this.part(part);
      if (known === null) return [];
      const anyOf = conditions.flatMap((each) => {
        const term = this.#kind.stateNamed(`${known.name} ${each.value}`);
        return term?.part === known.name ? term.condition : (this.#miss('condition', each) ?? []);
      });
      return anyOf.length > 0 ? [{ part: known.name, anyOf }] : [];
    });
  }

  terms(states: readonly RuledState[]): readonly StateTerm[] {
    return this.needs(states).map(({ part, anyOf }) => ({ part, condition: anyOf[0] ?? '' }));
  }

  /** Whether what an operation measures, or what its steps may bring about, asks for a part. */
  isNeeded(part: string, { settings }: KindOperation): boolean {
    const asks = (needs: readonly { readonly part: string }[] = []): boolean =>
      needs.some((need) => need.part === part);
    return (
      settings.some((name) => asks(this.#kind.settings.get(name)?.needs)) ||
      [...this.#kind.parts.values()].some(({ conditions }) =>
        [...conditions.values()].some(({ needs }) => asks(needs)),
      )
    );
  }

  #miss(what: What, name: Placed<string>): null {
    this.#faults.push({ kind: 'unknown', what, name });
    return null;
  }
}
