import type { Kind, KindOperation, ReasonedNeed } from '../kinds/model.ts';
import type { Setting, Sheet } from '../sheet/model.ts';
import { saidNeeds } from './said-needs.ts';

const nothing: ReadonlyMap<string, string> = new Map();

/** What the operations and settings of one sheet need, with what its settings say in place of the kind's. */
export class NeedsOf {
  readonly #kind: Kind;
  readonly #settings = new Map<string, Setting>();
  readonly #operations = new Map<KindOperation, readonly ReasonedNeed[]>();
  readonly #makers = new Map<string, readonly KindOperation[]>();

  constructor(sheet: Sheet, kind: Kind) {
    this.#kind = kind;
    for (const setting of sheet.settings.values())
      if (!this.#settings.has(setting.id)) this.#settings.set(setting.id, setting);
  }

  operation(known: KindOperation): readonly ReasonedNeed[] {
    const before = this.#operations.get(known);
    if (before) return before;
    const needs = this.#needs(known);
    this.#operations.set(known, needs);
    return needs;
  }

  /** The operations of the kind that make a setting. */
  makers(setting: string): readonly KindOperation[] {
    const before = this.#makers.get(setting);
    if (before) return before;
    const makers = [...this.#kind.operations.values()].filter(({ settings }) =>
      settings.includes(setting),
    );
    this.#makers.set(setting, makers);
    return makers;
  }

  #needs(known: KindOperation): readonly ReasonedNeed[] {
    const own = known.settings.flatMap((name) => this.#settings.get(name) ?? []);
    const said = saidNeeds(own, known.needsSaid, this.#kind);
    return [...known.needs.filter((need) => holds(need, own, said)), ...said];
  }

  /** What a setting needs whichever operation measures it. */
  setting(name: string): readonly ReasonedNeed[] {
    const needs = this.#kind.settings.get(name)?.needs ?? [];
    if (needs.length === 0) return needs;
    const setting = this.#settings.get(name);
    const own = setting ? [setting] : [];
    const said = saidNeeds(own, nothing, this.#kind);
    return needs.filter((need) => holds(need, own, said));
  }
}

function holds(
  need: ReasonedNeed,
  own: readonly Setting[],
  said: readonly ReasonedNeed[],
): boolean {
  if (said.some(({ part }) => part === need.part)) return false;
  for (const [key, words] of need.ifSaid)
    if (!own.some((setting) => words.includes(setting.said.get(key)?.value.toLowerCase() ?? '')))
      return false;
  return !own.some(
    ({ value }) =>
      value?.reading.ok && need.unlessStated.includes(value.reading.statement.dimension),
  );
}
