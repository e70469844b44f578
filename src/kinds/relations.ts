import type { RelationsData } from './data.ts';
import type { KindRelations } from './model.ts';

/** Which settings of a kind are worked from one another, from its data; empty where it says nothing. */
export function buildRelations(data: RelationsData): KindRelations {
  return {
    lobes: new Map(Object.entries(data.lobes ?? {})),
    spacing: data.spacing ?? null,
    dwell: (data.dwell ?? []).map(({ angle, percent }) => ({ angle, percent: percent ?? null })),
    crank: {
      settings: data.crank?.settings ?? [],
      keys: new Map(Object.entries(data.crank?.keys ?? {})),
    },
  };
}
