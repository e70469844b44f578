import type { KindOrder } from '../kinds/model.ts';
import type { Sheet } from '../sheet/model.ts';
import type { Figure } from './figure.ts';
import { Places, type RelationFacts, type StatedPlace } from './stated-place.ts';
import type { WorkedNumbers } from './worked-numbers.ts';

/** Two figures of a sheet that stand the wrong way round. */
export interface PairOutOfOrder {
  readonly order: KindOrder;
  /** The one that should be the lesser. At least one of the two is stated. */
  readonly less: StatedPlace;
  readonly more: StatedPlace;
  /** Whether their limits still have room for both, so that only the figures themselves are reversed. */
  readonly overlaps: boolean;
}

/**
 * The pairs of a sheet's figures that its kind knows the order of and that stand otherwise. A figure
 * that nobody states is taken from what the others come to; `supposed` is what one place would say instead.
 */
export function pairsOutOfOrder(
  sheet: Sheet,
  facts: RelationFacts,
  numbers: WorkedNumbers,
  supposed: { readonly id: string; readonly figure: Figure } | null = null,
): readonly PairOutOfOrder[] {
  const { kind } = sheet;
  if (!kind || kind.relations.orders.length === 0) return [];
  const features = new Set(sheet.unit.features.map(({ id }) => id));
  const places = new Places(sheet, kind, facts);
  const worked = new Map(
    numbers.derived.flatMap(({ instance, solution, figure }) => {
      const id = instance.quantities.get(solution.for)?.place?.id;
      return id === undefined ? [] : [[id, figure] as const];
    }),
  );
  return kind.relations.orders.flatMap((order) => {
    const { ifFeature, dimension } = order;
    if (ifFeature.length > 0 && !ifFeature.some((name) => features.has(name))) return [];
    const [less, more] = [order.less, order.more].map((bound) => {
      const place = places.find(bound, dimension, null);
      if (place.id === supposed?.id) return { ...place, figure: supposed.figure };
      const figure = place.status === 'absent' ? (worked.get(place.id) ?? null) : place.figure;
      return { ...place, figure };
    }) as [StatedPlace, StatedPlace];
    if (!less.figure || !more.figure || (!less.span && !more.span)) return [];
    const found = compare(less.figure, more.figure, order.strictly);
    return found ? [{ order, less, more, overlaps: found === 'overlaps' }] : [];
  });
}

/** How two figures stand that should be the lesser and the greater; null where they do. */
function compare(less: Figure, more: Figure, strictly: boolean): 'apart' | 'overlaps' | null {
  const isPast = (one: number, other: number): boolean => (strictly ? one >= other : one > other);
  const lowest = less.side === 'max' ? Number.NEGATIVE_INFINITY : end(less, 'lo');
  const highest = more.side === 'min' ? Number.POSITIVE_INFINITY : end(more, 'hi');
  if (!Number.isFinite(lowest) || !Number.isFinite(highest)) return null;
  if (isPast(lowest, highest)) return 'apart';
  if (less.side || more.side) return null;
  const [one, two] = [middle(less), middle(more)];
  const isRounded = !strictly && meets(less, more);
  return isPast(one, two) && !isRounded ? 'overlaps' : null;
}

/** A limit where there are limits, the figure itself where there are none. */
function end({ limits, point, nominal }: Figure, side: 'lo' | 'hi'): number {
  return (limits ?? point ?? nominal)?.[side] ?? Number.NaN;
}

function middle({ limits, point, nominal }: Figure): number {
  const stretch = point ?? limits ?? nominal;
  return stretch ? (stretch.lo + stretch.hi) / 2 : Number.NaN;
}

/** Whether two figures may be roundings of one. */
function meets(one: Figure, other: Figure): boolean {
  const [a, b] = [one.nominal, other.nominal];
  return a !== null && b !== null && a.lo <= b.hi && b.lo <= a.hi;
}
