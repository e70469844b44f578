import { textBeside, textOf } from './input-text.ts';
import { type Instance, unsaidOf } from './instances.ts';
import type { Derived } from './propagate.ts';
import type { Verdict } from './verdicts.ts';
import type { WorkedNumbers } from './worked-numbers.ts';
import type { WorkedText } from './worked-text.ts';

/** A quantity of a relation with what stands for it on the sheet. */
export interface WorkQuantity {
  readonly name: string;
  readonly label: string;
  readonly symbol: string;
  /** As written, as worked, or in words what was taken; null where there is nothing. */
  readonly figure: string | null;
  /** `other` is said in words or as another kind of size, and takes no part. */
  readonly from: 'stated' | 'worked' | 'unsaid' | 'missing' | 'unread' | 'other';
  /** Why a fixed figure holds; null for any other. */
  readonly because: string | null;
}

/** A figure that a relation gives on the sheet. */
export interface WorkResult {
  readonly label: string;
  readonly worked: string;
  /** All that the rounding of the inputs allows; null where it cannot be seen. */
  readonly stretch: string | null;
  /** Whether it is a bound of the stated figure and not the figure. */
  readonly hold: 'equals' | 'at-most' | 'at-least';
  readonly stated: string | null;
  /** `offered` where nobody states it. */
  readonly verdict: Verdict['kind'] | 'offered';
  /** By how much the stated figure misses; null where it does not. */
  readonly difference: string | null;
  /** For `limits`, which one it is; null otherwise. */
  readonly side: string | null;
}

/** A relation as it stands on one sheet, for a table. */
export interface WorkEntry {
  readonly relation: string;
  readonly title: string;
  readonly formula: string;
  readonly source: string;
  readonly assumptions: readonly string[];
  readonly range: string;
  /** The setting that it belongs to, and its barrel or place. */
  readonly of: string;
  readonly at: string | null;
  readonly quantities: readonly WorkQuantity[];
  readonly results: readonly WorkResult[];
  readonly refusals: readonly { readonly message: string; readonly fix: string }[];
  /** Labels of the quantities that keep it from being worked; empty where it is. */
  readonly lacks: readonly string[];
}

/** Every relation that a sheet says anything of, with what it gives there. */
export function workTable(numbers: WorkedNumbers): readonly WorkEntry[] {
  return numbers.instances.map((instance) => {
    const { relation, binding, at } = instance;
    const { id, title, formula, source, assumptions, range } = relation;
    const own = numbers.derived.filter((each) => each.instance === instance);
    const results = [
      ...numbers.verdicts.filter(({ proof }) => proof.instance === instance).map(judged),
      ...own.filter(({ solution }) => solution.offer).map(offered),
    ];
    const refusals = numbers.unworkable
      .filter((each) => each.instance === instance)
      .map(({ message, fix }) => ({ message, fix }));
    return {
      relation: id,
      title,
      formula,
      source,
      assumptions,
      range,
      of: binding.of,
      at,
      quantities: quantitiesOf(instance, numbers),
      results,
      refusals,
      lacks: results.length > 0 || refusals.length > 0 ? [] : lacking(instance, numbers.derived),
    };
  });
}

function quantitiesOf(instance: Instance, numbers: WorkedNumbers): readonly WorkQuantity[] {
  return [...instance.quantities.values()].map((bound) => {
    const { quantity, place } = bound;
    const { name, label, symbol } = quantity;
    const because = place?.bound.is === 'fixed' ? place.bound.because : null;
    const shown = { name, label, symbol, because };
    const derived = place && wayTo(place.id, numbers.derived);
    if (derived) return { ...shown, figure: textOf(derived).text, from: 'worked' };
    const unsaid = unsaidOf(bound);
    if (unsaid) return { ...shown, figure: unsaid.words, from: 'unsaid' };
    if (!place || place.status === 'absent') return { ...shown, figure: null, from: 'missing' };
    return { ...shown, figure: place.text, from: place.status };
  });
}

function wayTo(id: string, derived: readonly Derived[]): Derived | null {
  const found = derived.find(
    ({ instance, solution }) => instance.quantities.get(solution.for)?.place?.id === id,
  );
  return found ?? null;
}

function judged({ proof, place, kind, disparity }: Verdict): WorkResult {
  const text = place.statement ? textBeside(proof, place.statement) : textOf(proof);
  const { quantity } = proof.instance.quantities.get(proof.solution.for) ?? {};
  return {
    label: quantity?.label ?? proof.solution.for,
    worked: workedWords(proof, kind, disparity?.worked ?? null, text),
    stretch: text.stretch,
    hold: proof.solution.hold,
    stated: place.text,
    verdict: kind,
    difference: disparity?.difference ?? null,
    side: kind === 'limits' ? (disparity?.side ?? null) : null,
  };
}

/** The worked figure beside a verdict: of a bound its end, of a figure that is apart what it missed. */
function workedWords(
  { solution }: Derived,
  kind: Verdict['kind'],
  missed: string | null,
  { text, nominal }: WorkedText,
): string {
  if (kind !== 'agrees' && kind !== 'limits' && missed !== null) return missed;
  return solution.hold === 'equals' ? text : (nominal ?? text);
}

function offered(derived: Derived): WorkResult {
  const { text, stretch } = textOf(derived);
  const { quantity } = derived.instance.quantities.get(derived.solution.for) ?? {};
  return {
    label: quantity?.label ?? derived.solution.for,
    worked: text,
    stretch,
    hold: 'equals',
    stated: null,
    verdict: 'offered',
    difference: null,
    side: null,
  };
}

/** What the solution that lacks least still needs. */
function lacking({ relation, quantities }: Instance, derived: readonly Derived[]): string[] {
  const missing = relation.solutions.map(({ from }) =>
    from.flatMap((name) => {
      const bound = quantities.get(name);
      if (!bound) return [name];
      const { place, quantity } = bound;
      const isKnown = place?.figure || unsaidOf(bound) || (place && wayTo(place.id, derived));
      return isKnown ? [] : [quantity.label];
    }),
  );
  const [least = []] = missing
    .filter((labels) => labels.length > 0)
    .sort((one, two) => one.length - two.length);
  return least;
}

/** Whether anything in a table is wrong and not just unstated. */
export function isWrong({ results, refusals }: WorkEntry): boolean {
  return (
    refusals.length > 0 ||
    results.some(({ verdict }) => !['agrees', 'offered', 'loose'].includes(verdict))
  );
}
