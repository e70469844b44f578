import equalFlow from './formulas/equal-flow.ts';
import equalGap from './formulas/equal-gap.ts';
import throttleArea from './formulas/throttle-area.ts';
import throttleBarrels from './formulas/throttle-barrels.ts';
import { filled, inputText, textOf } from './input-text.ts';
import { type BoundQuantity, type Instance, unsaidOf } from './instances.ts';
import type { Relation } from './model.ts';
import { type Derived, propagate } from './propagate.ts';
import type { StatedPlace } from './stated-place.ts';
import type { WorkedNumbers } from './worked-numbers.ts';
import type { WorkedText } from './worked-text.ts';

/** A size of two units, side by side: as written, as worked, or what was taken; null where unknown. */
export interface LikeRow {
  readonly label: string;
  readonly own: string | null;
  readonly other: string | null;
}

/** How the throttles of two sheets compare at one setting of the first. */
export interface Likeness {
  /** The setting that gives the gap, by the kind's name. */
  readonly of: string;
  readonly at: string | null;
  readonly rows: readonly LikeRow[];
  /** The gap of the first sheet, as it is told. */
  readonly gap: string;
  /** Open area of the other unit at that gap, in percent of the first; null where it has none. */
  readonly share: WorkedText | null;
  /** Gap that opens the other unit by the same area; null where it has none. */
  readonly otherGap: WorkedText | null;
  /** Why one of the two can't be worked. */
  readonly refusals: readonly string[];
  readonly assumptions: readonly string[];
}

/** One throttle of a sheet: the relation that has its sizes, and the one that counts its barrels. */
interface Throttle {
  readonly numbers: WorkedNumbers;
  readonly area: Instance;
  readonly barrels: Instance | null;
}

/**
 * The throttles of two sheets compared at each gap that the first states or that follows from it:
 * areas at an equal gap, and the gap of an equal area. Empty where a gap or a bore is wanting.
 */
export function likenesses(own: WorkedNumbers, other: WorkedNumbers): readonly Likeness[] {
  const others = throttlesOf(other);
  return throttlesOf(own).flatMap((throttle) => {
    const { binding, at } = throttle.area;
    const same = others.filter(({ area }) => area.binding.of === binding.of);
    const twin = same.find(({ area }) => area.at === at) ?? same[0] ?? others[0];
    const isKnown =
      placeOf(throttle, throttle.area, 'gap') && placeOf(throttle, throttle.area, 'bore');
    return twin && isKnown && placeOf(twin, twin.area, 'bore') ? [likeness(throttle, twin)] : [];
  });
}

function throttlesOf(numbers: WorkedNumbers): readonly Throttle[] {
  const of = ({ id }: Relation) => numbers.instances.filter(({ relation }) => relation.id === id);
  const counted = of(throttleBarrels).filter(
    ({ quantities }) => quantities.get('barrels')?.place?.figure,
  );
  return of(throttleArea).map((area) => ({
    numbers,
    area,
    barrels: counted.find(({ binding }) => binding.of === area.binding.of) ?? counted[0] ?? null,
  }));
}

/** The place of a quantity with its figure, which may have been worked; null where nothing is known. */
function placeOf(
  { numbers }: Throttle,
  instance: Instance | null,
  name: string,
): StatedPlace | null {
  const place = instance?.quantities.get(name)?.place ?? null;
  if (!place || place.figure) return place;
  const worked = numbers.derived.find((each) => targetOf(each)?.id === place.id);
  if (!worked) return null;
  return { ...place, status: 'stated', text: textOf(worked).text, figure: worked.figure };
}

function targetOf({ instance, solution }: Derived): StatedPlace | null {
  return instance.quantities.get(solution.for)?.place ?? null;
}

function likeness(own: Throttle, other: Throttle): Likeness {
  const places = new Map<string, StatedPlace | null>([
    ['gap', placeOf(own, own.area, 'gap')],
    ['bore', placeOf(own, own.area, 'bore')],
    ['shaft', placeOf(own, own.area, 'shaft')],
    ['barrels', placeOf(own, own.barrels, 'barrels')],
    ['other-bore', renamed(placeOf(other, other.area, 'bore'))],
    ['other-shaft', renamed(placeOf(other, other.area, 'shaft'))],
    ['other-barrels', renamed(placeOf(other, other.barrels, 'barrels'))],
  ]);
  const instances = [equalGap, equalFlow].map((relation, index) =>
    bind(relation, index, own, places),
  );
  const { derived, refused } = propagate(instances);
  const result = (name: string) => {
    const found = derived.find(({ solution }) => solution.for === name);
    return found ? textOf(found) : null;
  };
  const [bound] = instances;
  const told = (name: string) => bound && toldOf(bound.quantities.get(name));
  const row = (name: string): LikeRow => ({
    label: bound?.quantities.get(name)?.quantity.label ?? name,
    own: told(name) ?? null,
    other: told(`other-${name}`) ?? null,
  });
  const gap = told('gap') ?? '';
  const otherGap = placeOf(other, other.area, 'gap');
  return {
    of: own.area.binding.of,
    at: own.area.at,
    rows: [
      row('bore'),
      row('shaft'),
      row('barrels'),
      {
        ...row('gap'),
        other: other.area.binding.of === own.area.binding.of ? (otherGap?.text ?? null) : null,
      },
    ],
    gap,
    share: result('share'),
    otherGap: result('other-gap'),
    refusals: refused.map(({ unworkable, inputs }) => filled(unworkable.message, inputs)),
    assumptions: [...new Set([...equalGap.assumptions, ...equalFlow.assumptions])],
  };
}

/** The same place under an id that no place of the first sheet has. */
function renamed(place: StatedPlace | null): StatedPlace | null {
  return place && { ...place, id: `other ${place.id}` };
}

function bind(
  relation: Relation,
  index: number,
  { area }: Throttle,
  places: ReadonlyMap<string, StatedPlace | null>,
): Instance {
  const { binding, at } = area;
  const quantities = new Map(
    relation.quantities.map((quantity): [string, BoundQuantity] => {
      const place = places.get(quantity.name) ?? null;
      const isAsked = relation.solutions.some((solution) => solution.for === quantity.name);
      return [
        quantity.name,
        { quantity, place: place ?? (isAsked ? unstated(quantity.name) : null) },
      ];
    }),
  );
  return { index, relation, binding, at, quantities };
}

/** A place that no sheet has, for a figure that is only worked. */
function unstated(name: string): StatedPlace {
  return {
    id: `worked ${name}`,
    bound: { is: 'worked', name },
    status: 'absent',
    text: null,
    span: null,
    statement: null,
    figure: null,
    key: name,
    setting: null,
  };
}

function toldOf(bound: BoundQuantity | undefined): string | null {
  if (!bound) return null;
  const unsaid = unsaidOf(bound);
  if (unsaid) return unsaid.words;
  const { quantity, place } = bound;
  if (!place?.figure) return null;
  return inputText({
    name: quantity.name,
    quantity,
    place,
    figure: place.figure,
    from: 'stated',
    derived: null,
  });
}
