import { gaugeBook } from '../gauges/index.ts';
import { readStatement } from '../quantity/index.ts';
import type { Dimension, Sense } from '../quantity/model.ts';
import { buildCurve, buildSum } from './curves.ts';
import type { KindData, OperationData, SettingData } from './data.ts';
import { buildDrawing } from './drawings.ts';
import { wordsOf } from './lexicon.ts';
import type {
  Kind,
  KindFeature,
  KindHazard,
  KindOperation,
  KindSetting,
  SignalWord,
  Stage,
  UsualRange,
} from './model.ts';
import { NameBook } from './name-book.ts';
import { orderBefore } from './order-before.ts';
import { buildParts, needsFrom, rulesFrom, termsFrom } from './parts.ts';
import { buildRelations } from './relations.ts';
import { stateNames } from './state-book.ts';

/**
 * A kind from its data, which the schema and `kindFaults` have passed. Cheap: the usual ranges of a
 * setting are read as sizes when they are first asked for.
 */
export function buildKind(data: KindData): Kind {
  const settings = mapped(data.settings, buildSetting);
  const words = wordsOf(data);
  const parts = buildParts(words.parts, data.states ?? {});
  const operations = orderBefore(
    mapped(data.operations, (name, operation) =>
      buildOperation(name, operation, data.settings[name]),
    ),
  );
  const hazards = mapped(
    data.hazards ?? {},
    (name, hazard): KindHazard => ({
      name,
      label: hazard.label,
      aliases: hazard.aliases ?? [],
      signal: hazard.signal as SignalWord,
      message: {
        ...hazard.message,
        imperative: hazard.message.imperative ?? firstSentence(hazard.message.avoid),
      },
      metBy: hazard['met-by'] ?? [],
    }),
  );
  const features = mapped(
    data.features ?? {},
    (name, feature): KindFeature => ({
      name,
      label: feature.label,
      aliases: feature.aliases ?? [],
      explain: feature.explain,
      excludes: feature.excludes ?? [],
      settings: feature.settings ?? [],
      operations: feature.operations ?? [],
    }),
  );
  const settingOf = finder(settings);
  const operationOf = finder(operations);
  const unit = Object.entries(data.unit ?? {});
  let usualOfUnit: Kind['usualOfUnit'] | null = null;
  return {
    name: data.kind,
    title: data.title,
    features,
    oneOf: data['one-of'] ?? [],
    settings,
    operations,
    hazards,
    always: {
      settings: data.always?.settings ?? [],
      operations: data.always?.operations ?? [],
    },
    interchange: new Set([
      ...(data.interchange?.unit ?? []),
      ...(data.interchange?.settings ?? []),
    ]),
    relations: buildRelations(data),
    stages: new Map(Object.entries(data.stages ?? {})) as Kind['stages'],
    inPassing: data['in-passing'] ?? [],
    seenTo: data['seen-to'] ?? [],
    parts,
    verbs: new Map(Object.entries(words.verbs)),
    phrases: Object.entries(words.phrases).map(([state, says]) => ({
      says,
      state: { part: state.split(' ')[0] ?? '', condition: state.split(' ')[1] ?? '' },
    })),
    notParts: data['not-parts'] ?? [],
    toolWords: data['tool-words'] ?? [],
    incrementWords: data['increment-words'] ?? [],
    dimensionsOfUnit: new Map(
      unit
        .filter(([, is]) => !isThread(is))
        .map(([name, is]) => [name, is as readonly Dimension[]]),
    ),
    countWords: new Map(Object.entries(data['count-words'] ?? {})),
    get usualOfUnit() {
      usualOfUnit ??= new Map(
        usualOfUnitIn(data).flatMap(([name, usual]) =>
          readUsual({ usual }).ranges.map((range) => [name, range] as const),
        ),
      );
      return usualOfUnit;
    },
    threadsOfUnit: new Set(unit.filter(([, is]) => isThread(is)).map(([name]) => name)),
    settingNamed: settingOf,
    operationNamed: (text) => operationOf(text) ?? making(settingOf(text), operations),
    hazardNamed: finder(hazards),
    featureNamed: finder(features),
    ...stateNames(parts),
  };
}

function buildSetting(name: string, data: SettingData): KindSetting {
  let usual: readonly UsualRange[] | null = null;
  return {
    name,
    label: data.label,
    aliases: data.aliases ?? [],
    explain: data.explain,
    symptoms: new Map(Object.entries(data.symptoms ?? {})),
    dimensions: data.dimensions as readonly Dimension[],
    conditions: data.conditions ?? [],
    wordsAndFigure: data['words-and-figure'] ?? false,
    jet: data.jet ?? false,
    get usual() {
      usual ??= readUsual(data).ranges;
      return usual;
    },
    mustSay: data['must-say'] ?? [],
    saidBy: new Map(Object.entries(data['said-by'] ?? {})),
    thread: data.thread ?? null,
    measured: (data.measured ?? null) as KindSetting['measured'],
    bore: data.bore ?? null,
    sense: (data.sense ?? null) as Sense | null,
    withoutFeature: data['without-feature'] ?? false,
    perBarrel: data['per-barrel'] ?? true,
    needs: needsFrom(data.needs),
    countedFrom: needsFrom(data['counted-from']),
    saysState: data['says-state'] ?? null,
    replaces: data.replaces ?? [],
    curve: data.curve ? buildCurve(data.curve) : null,
    sum: data.sum ? buildSum(data.sum) : null,
  };
}

/** A usual range that makes no sense, and why; `end` is 0 for the lowest and 1 for the highest. */
export interface UsualFault {
  readonly dimension: string;
  readonly end: 0 | 1;
  readonly message: string;
}

/** The usual ranges of a setting, and those that cannot be read. */
export function readUsual(data: Pick<SettingData, 'usual'>): {
  readonly ranges: readonly UsualRange[];
  readonly faults: readonly UsualFault[];
} {
  const ranges: UsualRange[] = [];
  const faults: UsualFault[] = [];
  for (const [name, ends] of Object.entries(data.usual ?? {})) {
    const dimension = name as Dimension;
    const options = { gauges: gaugeBook(), expect: [dimension] };
    const [low, high] = [ends[0] ?? '', ends[1] ?? ''].map((text) => readStatement(text, options));
    if (!low?.ok) faults.push({ dimension, end: 0, message: low?.problem.message ?? '' });
    else if (!high?.ok) faults.push({ dimension, end: 1, message: high?.problem.message ?? '' });
    else if (low.statement.dimension !== dimension)
      faults.push({ dimension, end: 0, message: `${ends[0]} is no ${dimension}` });
    else if (high.statement.dimension !== dimension)
      faults.push({ dimension, end: 1, message: `${ends[1]} is no ${dimension}` });
    else ranges.push({ dimension, low: low.statement, high: high.statement });
  }
  return { ranges, faults };
}

/** The usual ranges of sizes under `unit:`, each under the dimension that its size has. */
export function usualOfUnitIn(
  data: KindData,
): readonly (readonly [name: string, usual: NonNullable<SettingData['usual']>])[] {
  return Object.entries(data['usual-of-unit'] ?? {}).map(([name, ends]) => [
    name,
    { [data.unit?.[name]?.[0] ?? 'length']: ends },
  ]);
}

/** An operation that shares a setting's name takes from it whatever it does not say itself. */
function buildOperation(
  name: string,
  data: OperationData,
  setting: SettingData | undefined,
): KindOperation {
  return {
    name,
    label: data.label ?? setting?.label ?? name,
    aliases: data.aliases ?? setting?.aliases ?? [],
    explain: data.explain ?? setting?.explain ?? '',
    stage: data.stage as Stage,
    settings: data.settings ?? (setting ? [name] : []),
    alsoMeasures: data['also-measures'] ?? [],
    optional: data.optional ?? false,
    hazards: data.hazards ?? [],
    after: [...rulesFrom(data.after), ...rulesFrom(data.usual?.after, 'usual')],
    before: new Map(),
    needs: [...needsFrom(data.needs), ...needsFrom(data.usual?.needs, 'usual')],
    needsSaid: new Map(Object.entries(data['needs-said'] ?? {})),
    leaves: termsFrom(data.leaves),
    without: new Set(),
    disturbsSaid: new Map(Object.entries(data['disturbs-said'] ?? {})),
    disturbs: [...rulesFrom(data.disturbs), ...rulesFrom(data.usual?.disturbs, 'usual')],
    steps: data.steps ?? [],
    drawings: (data.drawings ?? []).map(buildDrawing),
  };
}

function isThread(is: readonly string[]): boolean {
  return is[0] === 'thread';
}

function mapped<D, T>(
  section: Readonly<Record<string, D>>,
  make: (name: string, data: D) => T,
): ReadonlyMap<string, T> {
  return new Map(Object.entries(section).map(([name, data]) => [name, make(name, data)]));
}

/** Looks names up in a section; the book of its names is made at the first question. */
/** The one operation that makes a setting, for a heading that names the setting itself; null for none or several. */
function making(
  setting: KindSetting | null,
  operations: ReadonlyMap<string, KindOperation>,
): KindOperation | null {
  if (setting === null) return null;
  const makers = [...operations.values()].filter((each) => each.settings.includes(setting.name));
  return makers.length === 1 ? (makers[0] ?? null) : null;
}

function finder<T extends { readonly label: string; readonly aliases: readonly string[] }>(
  section: ReadonlyMap<string, T>,
): (text: string) => T | null {
  let book: NameBook | null = null;
  return (text) => {
    const direct = section.get(text);
    if (direct) return direct;
    // A label is a name too, as a draft writes it for a heading; an alias of another goes before it.
    book ??= new NameBook([
      ...[...section].map(([name, entry]) => [name, entry.aliases] as const),
      ...[...section].map(([name, entry]) => [name, [entry.label]] as const),
    ]);
    const name = book.find(text);
    return name === null ? null : (section.get(name) ?? null);
  };
}

/** `No flame or spark.` of `No flame or spark. Ventilate.`: a sentence ends where space and a capital follow. */
function firstSentence(text: string): string {
  return text.split(/(?<=[.!?])\s+(?=\p{Lu})/u)[0] ?? text;
}
