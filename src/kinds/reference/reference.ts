import type { Kind, KindFeature, KindHazard, KindOperation, KindPart } from '../model.ts';
import { stateOf, whenAsked, whereSaid } from '../rule-words.ts';
import type {
  FeatureEntry,
  HazardEntry,
  KindReference,
  OperationEntry,
  PartEntry,
  ToldRule,
  UnitEntry,
} from './model.ts';
import { drawingsOf, settingEntry } from './settings.ts';

/** All that a kind of unit knows, as plain data: for people, programs, pages and editors. */
export function kindReference(kind: Kind): KindReference {
  return {
    kind: kind.name,
    title: kind.title,
    settings: [...kind.settings.values()].map((setting) => settingEntry(setting, kind)),
    operations: [...kind.operations.values()].map((operation) => operationEntry(operation, kind)),
    parts: [...kind.parts.values()].map((part) => partEntry(part, kind)),
    hazards: [...kind.hazards.values()].map((hazard) => hazardEntry(hazard, kind)),
    features: [...kind.features.values()].map((feature) => featureEntry(feature, kind)),
    oneOf: kind.oneOf,
    always: kind.always,
    unit: unitEntries(kind),
  };
}

function operationEntry(operation: KindOperation, kind: Kind): OperationEntry {
  const { name, label, aliases, explain, stage, settings, alsoMeasures, hazards } = operation;
  return {
    section: 'operation',
    name,
    label,
    aliases,
    explain,
    stage,
    settings,
    measures: alsoMeasures,
    hazards,
    rules: rulesOf(operation, kind),
    leaves: operation.leaves.map(({ part, condition }) => `${part} ${condition}`),
    steps: operation.steps.map((step) => asOnSheet(step, settings)),
    drawings: drawingsOf(operation),
    askedBy: [...kind.features.values()]
      .filter(({ operations }) => operations.flat().includes(name))
      .map((feature) => feature.name),
    always: kind.always.operations.flat().includes(name),
  };
}

function rulesOf(
  { after, needs, disturbs, disturbsSaid }: KindOperation,
  kind: Kind,
): readonly ToldRule[] {
  const told = (says: string, rule: Omit<ToldRule, 'says'>): ToldRule => ({
    says,
    strength: rule.strength,
    because: rule.because,
  });
  return [
    ...after.map((rule) =>
      told(`after ${kind.operations.get(rule.name)?.label ?? rule.name}`, rule),
    ),
    ...needs.map((need) => told(`needs ${stateOf(need, kind)}${whenAsked(need)}`, need)),
    ...disturbs.map((rule) => {
      const moved = kind.settings.get(rule.name)?.label ?? rule.name;
      return told(`moves ${moved}${whereSaid(disturbsSaid.get(rule.name))}`, rule);
    }),
  ];
}

/** A model step as a sheet has it: `{setting}` is the mark of the operation's one setting. */
function asOnSheet(step: string, settings: readonly string[]): string {
  return step.replace(
    /\{([a-z0-9-]+)\}/g,
    (_, name: string) => `:value[${name === 'setting' ? (settings[0] ?? name) : name}]`,
  );
}

function partEntry(part: KindPart, kind: Kind): PartEntry {
  const { name, label, aliases, starts, ifFeature, home, conditions } = part;
  return {
    section: 'part',
    name,
    label,
    aliases,
    conditions: [...conditions.values()].map((each) => ({
      name: each.name,
      aliases: each.aliases,
      says: each.says,
      instruction: each.instruction,
    })),
    starts,
    ifFeature,
    home,
    neededBy: [...kind.operations.values()]
      .filter(({ needs }) => needs.some((need) => need.part === name))
      .map((operation) => operation.name),
  };
}

function hazardEntry(
  { name, label, aliases, signal, message }: KindHazard,
  kind: Kind,
): HazardEntry {
  return {
    section: 'hazard',
    name,
    label,
    aliases,
    signal,
    message,
    metBy: [...kind.operations.values()]
      .filter(({ hazards }) => hazards.includes(name))
      .map((operation) => operation.name),
  };
}

function featureEntry(feature: KindFeature, kind: Kind): FeatureEntry {
  const { name, label, aliases, explain, excludes, settings, operations } = feature;
  return {
    section: 'feature',
    name,
    label,
    aliases,
    explain,
    excludes,
    settings,
    operations,
    parts: [...kind.parts.values()]
      .filter(({ ifFeature }) => ifFeature.includes(name))
      .map((part) => part.name),
  };
}

function unitEntries(kind: Kind): readonly UnitEntry[] {
  const sizes = [...kind.dimensionsOfUnit].map(([name, dimensions]): UnitEntry => {
    const usual = kind.usualOfUnit.get(name);
    return {
      section: 'unit',
      name,
      dimensions,
      usual: usual === undefined ? null : { low: usual.low.text, high: usual.high.text },
    };
  });
  const threads = [...kind.threadsOfUnit].map(
    (name): UnitEntry => ({ section: 'unit', name, dimensions: ['thread'], usual: null }),
  );
  return [...sizes.filter(({ name }) => !kind.threadsOfUnit.has(name)), ...threads];
}
