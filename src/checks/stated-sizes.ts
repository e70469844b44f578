import type { Dimension, SizeProblem, Statement } from '../quantity/model.ts';
import { settingNamed } from '../sheet/index.ts';
import type { PlacedSize, Setting, Sheet } from '../sheet/model.ts';
import { isBlank } from './blank.ts';

/** What a size on a sheet is for. */
export type SizeRole =
  | 'value'
  | 'also'
  | 'gauge'
  | 'go'
  | 'no-go'
  | 'travel'
  | 'place'
  | 'but'
  | 'unit'
  | 'reading';

/** A size of a sheet with what it belongs to. */
export interface StatedSize {
  readonly size: PlacedSize;
  readonly role: SizeRole;
  /** The key that holds it, for people: `value`, `also`, `gauge`, `places › left`, `throttle-bore`. */
  readonly key: string;
  /** Null for a size of the unit itself. */
  readonly setting: Setting | null;
  /** The name an acceptance calls it by. */
  readonly subject: string;
}

/**
 * Every size of the front matter, read or not, in the order of the sheet's settings. A blank that
 * is still to be filled in is no size yet: `blank-to-fill` speaks of it.
 */
export function* statedSizes(sheet: Sheet): Generator<StatedSize> {
  for (const [key, size] of sheet.unit.sizes)
    yield { size, role: 'unit', key, setting: null, subject: key };
  for (const setting of sheet.figures) {
    for (const stated of sizesOfSetting(setting)) if (!isBlank(stated.size.text)) yield stated;
  }
  for (const stated of readingsOf(sheet)) if (!isBlank(stated.size.text)) yield stated;
}

/** What measured units read of the sheet's settings: each reading a size of its setting like any other. */
export function* readingsOf(sheet: Sheet): Generator<StatedSize> {
  for (const { readings } of sheet.sources.values()) {
    for (const { name, id, sizes } of readings) {
      const setting = settingNamed(name.value, sheet) ?? settingNamed(id, sheet);
      if (setting === null) continue;
      for (const size of sizes)
        yield { size, role: 'reading', key: 'readings', setting, subject: setting.id };
    }
  }
}

/** The sizes that could not be read for one of some reasons, each with what is wrong with it. */
export function* unreadSizes(
  sheet: Sheet,
  isWanted: (code: SizeProblem['code']) => boolean,
): Generator<StatedSize & { readonly problem: SizeProblem }> {
  for (const stated of statedSizes(sheet)) {
    const { reading } = stated.size;
    if (!reading.ok && isWanted(reading.problem.code))
      yield { ...stated, problem: reading.problem };
  }
}

/** Every size of one setting: the value first, then `also`, the gauges, the travel and the rest. */
export function* sizesOfSetting(setting: Setting): Generator<StatedSize> {
  const subject = setting.id;
  const as = (size: PlacedSize, role: SizeRole, key: string): StatedSize => ({
    size,
    role,
    key,
    setting,
    subject,
  });
  if (setting.value) yield as(setting.value, 'value', 'value');
  for (const size of setting.also) yield as(size, 'also', 'also');
  if (setting.gauge) yield as(setting.gauge, 'gauge', 'gauge');
  if (setting.go) yield as(setting.go, 'go', 'gauge › go');
  if (setting.noGo) yield as(setting.noGo, 'no-go', 'gauge › no-go');
  if (setting.travel) yield as(setting.travel, 'travel', 'travel');
  for (const [place, size] of setting.places) yield as(size, 'place', `places › ${place}`);
  for (const { value } of setting.but) if (value) yield as(value, 'but', 'but › value');
}

/** The statement of a size that could be read; null otherwise (another check speaks of it). */
export function readOf(size: PlacedSize | null): Statement | null {
  return size?.reading.ok ? size.reading.statement : null;
}

/** What a dimension is called in a sentence. */
export function dimensionNoun(dimension: Dimension): string {
  return NOUNS[dimension];
}

const NOUNS: Readonly<Record<Dimension, string>> = {
  length: 'a length',
  turns: 'a number of turns or flats',
  angle: 'an angle',
  speed: 'a speed',
  vacuum: 'a vacuum',
  pressure: 'a pressure',
  volume: 'a volume',
  delivery: 'a volume per strokes',
  flow: 'a timed flow',
  'mass-flow': 'a weight of fuel over a time',
  torque: 'a torque',
  notches: 'a number of notches',
  time: 'a time',
  mass: 'a weight',
  force: 'a force',
  density: 'a density',
  temperature: 'a temperature',
  area: 'an area',
  percent: 'a percentage',
  capacitance: 'a capacity of a condenser',
  resistance: 'a resistance',
  voltage: 'a voltage',
  current: 'a current',
  'spring-rate': 'a load over a length of spring',
  sequence: 'numbers in their order',
  condition: 'a condition in words',
};
