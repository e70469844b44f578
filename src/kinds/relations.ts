import type { Dimension } from '../quantity/model.ts';
import type { KindData, OrderData, PlaceData, RelationData } from './data.ts';
import type { BoundPlace, KindBinding, KindOrder, KindRelations } from './model.ts';

/** The relations of a kind from its data: one binding for each setting that has one. */
export function buildRelations({ counts, relations, orders }: KindData): KindRelations {
  return {
    counts: new Map(
      Object.entries(counts ?? {}).map(([name, features]) => [
        name,
        new Map(Object.entries(features)),
      ]),
    ),
    bindings: (relations ?? []).flatMap(bindingsOf),
    orders: (orders ?? []).flatMap(orderOf),
  };
}

/** What stands for the setting itself in a relation that several settings have. */
export const EACH = '{each}';

function bindingsOf(data: RelationData): readonly KindBinding[] {
  return (data.each ?? [data.of ?? '']).map((of) => ({
    relation: data.relation,
    of,
    ifFeature: data['if-feature'] ?? [],
    unlessFeature: data['unless-feature'] ?? [],
    same: data.same ?? [],
    silent: data.silent ?? [],
    quantities: new Map(
      Object.entries(data.quantities).flatMap(([name, place]) => {
        const bound = placeOf(place, of);
        return bound ? [[name, bound] as const] : [];
      }),
    ),
  }));
}

function orderOf(data: OrderData): readonly KindOrder[] {
  const [less, more] = [placeOf(data.less, ''), placeOf(data.more, '')];
  if (!less || !more) return [];
  return [
    {
      less,
      more,
      dimension: data.dimension as Dimension,
      because: data.because,
      strictly: data.strictly ?? false,
      usually: data.usually ?? false,
      ifFeature: data['if-feature'] ?? [],
    },
  ];
}

/** Null where the data names no place, which `kindFaults` has told of. */
function placeOf(data: PlaceData, of: string): BoundPlace | null {
  const named = (name: string): string => name.replaceAll(EACH, of);
  if (data.setting !== undefined) {
    return {
      is: 'setting',
      setting: named(data.setting),
      key: data.key ?? null,
      atPlace: data['at-place'] ?? null,
      only: data.only ?? [],
      unless: data.unless ?? [],
    };
  }
  if (data.unit !== undefined) return { is: 'unit', name: data.unit };
  if (data.thread !== undefined) return { is: 'thread', name: named(data.thread) };
  if (data.count !== undefined) return { is: 'count', name: data.count };
  if (data.edition === 'altitude') return { is: 'edition', name: data.edition };
  if (data.fixed !== undefined) {
    return { is: 'fixed', text: data.fixed, because: data.because ?? '' };
  }
  return data.worked === undefined ? null : { is: 'worked', name: named(data.worked) };
}
