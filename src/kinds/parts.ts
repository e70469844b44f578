import type { ConditionData, PartData, StatesData } from './data.ts';
import type { KindPart, PartCondition, StateNeed, StateTerm } from './model.ts';

/** Parts with any of some conditions each, in the order of the data. */
export function needsFrom(states: StatesData | undefined): readonly StateNeed[] {
  return Object.entries(states ?? {}).map(([part, any]) => ({
    part,
    anyOf: typeof any === 'string' ? [any] : any,
  }));
}

/** Parts with one condition each; of a list the first. */
export function termsFrom(states: StatesData | undefined): readonly StateTerm[] {
  return needsFrom(states).map(({ part, anyOf }) => ({ part, condition: anyOf[0] ?? '' }));
}

/** The parts of a kind from its data, in its order. */
export function buildParts(
  data: Readonly<Record<string, PartData>>,
): ReadonlyMap<string, KindPart> {
  return new Map(Object.entries(data).map(([name, part]) => [name, buildPart(name, part)]));
}

function buildPart(name: string, data: PartData): KindPart {
  return {
    name,
    label: data.label,
    aliases: data.aliases ?? [],
    starts: data.starts ?? null,
    ifFeature: data['if-feature'] ?? [],
    home: data.home ?? [],
    reads: new Map(Object.entries(data.reads ?? {})),
    conditions: new Map(
      Object.entries(data.conditions).map(([each, condition]) => [
        each,
        buildCondition(each, condition),
      ]),
    ),
  };
}

function buildCondition(name: string, data: ConditionData): PartCondition {
  return {
    name,
    aliases: data.aliases ?? [],
    countsAs: data['counts-as'] ?? [],
    needs: needsFrom(data.needs),
    after: data.after ?? [],
    disturbs: data.disturbs ?? [],
    leaves: termsFrom(data.leaves),
    forbids: needsFrom(data.forbids),
    startsUp: data['starts-up'] ?? false,
  };
}
