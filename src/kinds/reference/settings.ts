import { inside } from '../../gauges/index.ts';
import { GAUGE_FAMILIES, systemRecord } from '../../quantity/index.ts';
import { keysBeside } from '../keys-beside.ts';
import type { Kind, KindOperation, KindSetting } from '../model.ts';
import { stateOf, whenAsked, whereSaid } from '../rule-words.ts';
import type { Disturber, GaugeRange, SettingEntry, ToldDrawing, ToldRule } from './model.ts';

/** A setting of a kind with what the rest of the kind says of it. */
export function settingEntry(setting: KindSetting, kind: Kind): SettingEntry {
  const { name, label, aliases, explain, dimensions, conditions, mustSay, measured } = setting;
  const operations = [...kind.operations.values()];
  const names = (those: readonly KindOperation[]) => those.map((operation) => operation.name);
  const making = operations.filter((each) => each.settings.includes(name));
  return {
    section: 'setting',
    name,
    label,
    aliases,
    explain,
    dimensions,
    conditions,
    usual: setting.usual.map(({ dimension, low, high }) => ({
      dimension,
      low: low.text,
      high: high.text,
    })),
    mustSay,
    maySay: keysBeside(kind, setting).flatMap(({ key, needed }) => (needed ? [] : [key])),
    saidBy: [...setting.saidBy].map(([key, words]) => ({ key, words })),
    symptoms: [...setting.symptoms].map(([way, noticed]) => ({ way, noticed })),
    measured,
    thread: setting.thread,
    bore: setting.bore,
    gauges: gaugesFor(setting),
    setBy: names(making),
    measuredBy: names(operations.filter((each) => each.alsoMeasures.includes(name))),
    needs: needsOf(setting, making, kind),
    disturbedBy: [...byOperations(name, operations), ...byParts(name, kind)],
    askedBy: [...kind.features.values()]
      .filter(({ settings }) => settings.flat().includes(name))
      .map((feature) => feature.name),
    always: kind.always.settings.flat().includes(name),
    drawings: operations
      .flatMap((operation) => drawingsOf(operation))
      .filter(({ from }) => from.includes(name)),
  };
}

/** The drawings beside an operation's steps. */
export function drawingsOf({ name, drawings }: KindOperation): readonly ToldDrawing[] {
  return drawings.map(({ shows, sizes, threads }) => ({
    shows,
    operation: name,
    from: [...sizes.values(), ...threads.values()],
  }));
}

/** The state in which it is measured: its own needs, and those of the operations that make it. */
function needsOf(
  { needs, countedFrom }: KindSetting,
  making: readonly KindOperation[],
  kind: Kind,
): readonly ToldRule[] {
  const all = [...needs, ...making.flatMap((operation) => operation.needs)];
  const told = new Map<string, ToldRule>();
  for (const need of all) {
    const says = `${stateOf(need, kind)}${whenAsked(need)}`;
    if (!told.has(says)) told.set(says, { says, strength: need.strength, because: need.because });
  }
  for (const need of countedFrom) {
    const says = `counted from ${stateOf(need, kind)}`;
    told.set(says, { says, strength: need.strength, because: need.because });
  }
  return [...told.values()];
}

function byOperations(name: string, operations: readonly KindOperation[]): readonly Disturber[] {
  return operations.flatMap(({ name: operation, label, disturbs, disturbsSaid }) =>
    disturbs
      .filter((rule) => rule.name === name)
      .map(({ strength, because }) => ({
        operation,
        says: `${label}${whereSaid(disturbsSaid.get(name))}`,
        strength,
        because,
      })),
  );
}

function byParts(name: string, kind: Kind): readonly Disturber[] {
  return [...kind.parts.values()].flatMap(({ label, conditions }) =>
    [...conditions.values()].flatMap(({ says, disturbs }) =>
      disturbs
        .filter((rule) => rule.name === name)
        .map(({ strength, because }) => ({
          operation: null,
          says: `${label} ${says}`,
          strength,
          because,
        })),
    ),
  );
}

/** By family, the smallest and the largest gauge of the bench within what is usual in length. */
function gaugesFor({ usual, measured, jet }: KindSetting): readonly GaugeRange[] {
  const range = usual.find(({ dimension }) => dimension === 'length');
  const [low, high] = [range?.low.nominal?.base, range?.high.nominal?.base];
  if ((measured === null && !jet) || !low || !high) return [];
  const fit = inside(low, high);
  return GAUGE_FAMILIES.flatMap(([family, { title }]) => {
    const those = fit.filter(({ system }) => systemRecord(system).family === family);
    const [first, last] = [those[0], those.at(-1)];
    return first && last ? [{ family: title, from: first.label, to: last.label }] : [];
  });
}
