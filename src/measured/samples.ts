import { incomparable, inUnit, opposites, rational, ZERO } from '../quantity/index.ts';
import type { Rational, Sense, Statement } from '../quantity/model.ts';
import { settingNamed } from '../sheet/index.ts';
import type { PlacedSize, Setting, Sheet, Source } from '../sheet/model.ts';
import { oncePer } from '../text/index.ts';
import type { PrintedFigure, Sample, SampleReading, UnlikeReading } from './model.ts';
import { statisticsOf } from './statistics.ts';

/** Whether anything was measured for a sheet: most have nothing, and nothing is then worked. */
export function hasReadings({ readings, records }: Source): boolean {
  return readings.length > 0 || records.length > 0;
}

/** What the sources of a sheet read, source by source and setting by setting, where any reading can be summed. */
export const samplesOf = oncePer((sheet: Sheet): readonly Sample[] => {
  return [...sheet.sources.values()].filter(hasReadings).flatMap((source) =>
    listsOf(source).flatMap(({ name, id, sizes }) => {
      const setting = settingNamed(name, sheet) ?? settingNamed(id, sheet);
      return sampleOf(source, { name, id, setting }, sizes) ?? [];
    }),
  );
});

interface Taken {
  readonly size: PlacedSize;
  readonly record: string | null;
}

interface List {
  readonly name: string;
  readonly id: string;
  readonly sizes: readonly Taken[];
}

/** The readings of a source by setting: its own lists, and behind each what its bench records add to it. */
export function listsOf({ readings, records }: Source): readonly List[] {
  const lists = new Map<string, { name: string; id: string; sizes: Taken[] }>();
  for (const { name, id, sizes } of readings) {
    const taken = sizes.map((size) => ({ size, record: null }));
    lists.set(id, { name: name.value, id, sizes: taken });
  }
  for (const record of records) {
    for (const [id, size] of record.sizes) {
      const list = lists.get(id) ?? { name: id, id, sizes: [] };
      list.sizes.push({ size, record: record.name.value });
      lists.set(id, list);
    }
  }
  return [...lists.values()];
}

function sampleOf(
  source: Source,
  of: { readonly name: string; readonly id: string; readonly setting: Setting | null },
  sizes: readonly Taken[],
): Sample | null {
  const read = sizes.flatMap(({ size, record }) =>
    size.reading.ok ? [{ size, record, statement: size.reading.statement }] : [],
  );
  const stated = of.setting?.value?.reading;
  const wanted = stated?.ok ? stated.statement : null;
  const figures = read.flatMap(({ statement }) => (isFigure(statement) ? [statement] : []));
  // What most are told of: one that slipped is then the odd one, though it may stand first.
  const usual = commonest(figures.map(thingOf));
  const first = figures.find((each) => thingOf(each) === usual);
  if (first === undefined) return null;
  const unlike: UnlikeReading[] = [];
  const alike = read.filter(({ size, statement }) => {
    const why = !isFigure(statement) ? 'vague' : isOther(statement, first) ? 'other' : null;
    if (why !== null)
      unlike.push({
        size,
        why,
        dimension: statement.dimension,
        first: why === 'other' ? first.text : null,
      });
    return why === null;
  });
  const unit = commonest(alike.flatMap(({ statement }) => statement.nominal?.unit ?? []));
  const way = wanted?.sense ?? first.sense;
  const readings = alike.map(
    ({ size, statement, record }): SampleReading => ({
      size,
      statement,
      record,
      number: counted(statement, unit, way),
      half: halfPlace(statement, unit),
    }),
  );
  const places = alike.reduce<number | null>((most, { statement: { nominal } }) => {
    if (nominal === null || nominal.unit !== unit || nominal.places === null) return most;
    return Math.max(most ?? 0, nominal.places);
  }, null);
  const statistics = statisticsOf(readings.map(({ number }) => number));
  const { dimension } = first;
  return { source, ...of, dimension, unit, places, readings, unlike, statistics };
}

/** Whether a reading is one figure that can be summed. */
function isFigure({ nominal, form, about }: Statement): boolean {
  return nominal !== null && !about && (form === 'exact' || form === 'tolerance');
}

/** Whether two readings are no readings of one thing: another dimension, or degrees of another shaft. */
function isOther(one: Statement, first: Statement): boolean {
  if (incomparable(one, first) !== null) return true;
  if (one.datum !== null && first.datum !== null && one.datum !== first.datum) return true;
  const [a, b] = [one.qualifier, first.qualifier];
  return (
    a !== null && b !== null && a.toLowerCase() !== b.toLowerCase() && one.nominal?.gauge === null
  );
}

function thingOf({ dimension, qualifier }: Statement): string {
  return `${dimension} ${qualifier?.toLowerCase() ?? ''}`;
}

/** The figure in a unit, counted the way that is given. */
function counted(
  { nominal, dimension, sense }: Statement,
  unit: string,
  way: Sense | null,
): Rational {
  if (nominal === null) return ZERO;
  const number = inUnit(nominal.base, dimension, unit);
  const isTurned =
    dimension !== 'notches' && sense !== null && way !== null && opposites[sense] === way;
  return isTurned ? number.neg() : number;
}

function halfPlace({ nominal, dimension }: Statement, unit: string): Rational {
  if (nominal === null) return ZERO;
  const ends = [nominal.could.low, nominal.could.high].map((end) => inUnit(end, dimension, unit));
  const [low = ZERO, high = ZERO] = ends;
  return high.sub(low).abs().div(2);
}

/** The one that stands there most often, of equals the first. */
function commonest(units: readonly string[]): string {
  const counts = new Map<string, number>();
  for (const unit of units) counts.set(unit, (counts.get(unit) ?? 0) + 1);
  const most = Math.max(...counts.values());
  return [...counts].find(([, count]) => count === most)?.[0] ?? '';
}

/** The sheet's own figure of a setting in the unit of a sample; null where it states none that can be held against it. */
export function printedFigure({
  setting,
  readings,
  unit,
  dimension,
}: Sample): PrintedFigure | null {
  const reading = setting?.value?.reading;
  const [first] = readings;
  if (!reading?.ok || first === undefined) return null;
  const { statement } = reading;
  if (statement.condition !== null || incomparable(statement, first.statement) !== null)
    return null;
  const told = (base: Rational | undefined): Rational | null =>
    base === undefined ? null : inUnit(base, dimension, unit);
  // A time for a volume is the less the greater the flow is.
  const ends = [told(statement.low?.base), told(statement.high?.base)];
  const [one = null, other = null] = ends;
  const isTurned = one !== null && other !== null && one.compare(other) > 0;
  const [low, high] = isTurned ? [other, one] : [one, other];
  const nominal = told(statement.nominal?.base);
  const middle = low !== null && high !== null ? low.add(high).div(2) : null;
  return { value: nominal ?? middle, low, high, statement };
}

/**
 * How far a printed figure may be off what it rounds: half of its last place, of a fraction half of its
 * denominator's step; zero for a gauge. In the unit of the sample.
 */
export function statedHalf({ statement }: PrintedFigure, { unit, dimension }: Sample): Rational {
  const { nominal } = statement;
  if (nominal === null || nominal.gauge !== null) return ZERO;
  if (nominal.places !== null) return halfPlace(statement, unit);
  const step = rational(1, nominal.number.d);
  const size = nominal.number.n === 0n ? ZERO : nominal.base.div(nominal.number).mul(step);
  return inUnit(size, dimension, unit).abs().div(2);
}

/** How many units a source measured: as it says, or else as many as it has readings of any one setting. */
export function unitsOf(source: Source): number | null {
  if (source.units !== null) return source.units.value;
  if (!hasReadings(source)) return null;
  return Math.max(0, ...listsOf(source).map(({ sizes }) => sizes.length));
}

/** A further statement's figure in the unit of a sample and counted its way; null where it is none of its kind. */
export function numberIn(
  statement: Statement,
  { unit, readings, setting }: Sample,
): Rational | null {
  const [first] = readings;
  if (first === undefined || !isFigure(statement) || isOther(statement, first.statement))
    return null;
  const stated = setting?.value?.reading;
  const wanted = stated?.ok ? stated.statement.sense : null;
  return counted(statement, unit, wanted ?? first.statement.sense);
}

/** The readings of several sources as if one had taken them all; null where they can't be added up. */
export function pooled(samples: readonly Sample[]): Sample | null {
  const [first, ...others] = samples;
  if (first === undefined || others.length === 0) return first ?? null;
  const readings: SampleReading[] = [...first.readings];
  for (const { readings: more } of others) {
    for (const reading of more) {
      const number = numberIn(reading.statement, first);
      if (number === null) return null;
      readings.push({ ...reading, number, half: halfPlace(reading.statement, first.unit) });
    }
  }
  return { ...first, readings, statistics: statisticsOf(readings.map(({ number }) => number)) };
}
