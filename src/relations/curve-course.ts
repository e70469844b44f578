import { principal } from '../quantity/index.ts';
import type { Rational } from '../quantity/model.ts';
import { type Band, type CurveRow, inOrder, isBelow, middleOf, rowsOf } from '../sheet/index.ts';
import type { Setting } from '../sheet/model.ts';

/** Rows at one station, the first of them in front. */
export interface StationTwice {
  readonly row: CurveRow;
  readonly first: CurveRow;
}

/** Rows that state the same station a second time. */
export function stationsTwice(setting: Setting): readonly StationTwice[] {
  const rows = rowsOf(setting);
  return rows.flatMap((row, i) => {
    const first = rows.slice(0, i).find(({ station }) => station.equals(row.station));
    return first ? [{ row, first }] : [];
  });
}

/** A row that does not stand where its station belongs. */
export interface OutOfPlace {
  readonly row: CurveRow;
  /** The rows that stand around it on the sheet; null at an end. */
  readonly before: CurveRow | null;
  readonly after: CurveRow | null;
}

/**
 * The fewest rows without which all others rise in their stations: those that stand out of place. Of several
 * ways to choose them the one that leaves the others closest together. Rows at one station are not out of
 * place, nor are those beyond what a station can be: both are told of for themselves.
 */
export function outOfPlace(setting: Setting): readonly OutOfPlace[] {
  const rows = soundRows(setting);
  const kept = longestRise(rows.map(({ station }) => station));
  return rows.flatMap((row, i) =>
    kept.has(i) ? [] : [{ row, before: rows[i - 1] ?? null, after: rows[i + 1] ?? null }],
  );
}

/** The rows that can be read, without those whose station stands there already or is none. */
function soundRows(setting: Setting): readonly CurveRow[] {
  const told = [...stationsBeyond(setting), ...stationsTwice(setting)];
  const unsound = new Set(told.map(({ row }) => row.row));
  return rowsOf(setting).filter(({ row }) => !unsound.has(row));
}

interface Rise {
  readonly length: number;
  /** The squares of the gaps between those that are kept, summed. */
  readonly spread: number;
  /** The place before; -1 for none. */
  readonly from: number;
}

function isBetter(one: Rise, other: Rise | undefined): boolean {
  if (!other || one.length !== other.length) return one.length > (other?.length ?? 0);
  return one.spread < other.spread;
}

/** Places of a longest stretch that never falls; of several the one that lies closest together. */
function longestRise(stations: readonly Rational[]): ReadonlySet<number> {
  const best: Rise[] = [];
  stations.forEach((station, i) => {
    let rise: Rise = { length: 1, spread: 0, from: -1 };
    for (let j = 0; j < i; j++) {
      const [before, earlier] = [best[j], stations[j]];
      if (!before || !earlier || earlier.compare(station) > 0) continue;
      const gap = station.sub(earlier).valueOf();
      const longer = { length: before.length + 1, spread: before.spread + gap * gap, from: j };
      if (isBetter(longer, rise)) rise = longer;
    }
    best.push(rise);
  });
  let at = -1;
  best.forEach((rise, i) => {
    if (isBetter(rise, best[at])) at = i;
  });
  const kept = new Set<number>();
  for (; at !== -1; at = best[at]?.from ?? -1) kept.add(at);
  return kept;
}

/** A row whose station no unit can have. */
export interface StationBeyond {
  readonly row: CurveRow;
  readonly isMore: boolean;
}

/** Rows whose stations lie outside of what the kind says that any can be; the ends count as inside. */
export function stationsBeyond(setting: Setting): readonly StationBeyond[] {
  const within = setting.known?.curve?.within;
  const least = within && principal(within.low)?.base;
  const most = within && principal(within.high)?.base;
  if (!least || !most) return [];
  return rowsOf(setting).flatMap((row) => {
    const isMore = row.station.compare(most) > 0;
    return isMore || row.station.compare(least) < 0 ? [{ row, isMore }] : [];
  });
}

/** Two rows that go against the course of their curve, and which of them is the doubtful one. */
export interface CourseBroken {
  readonly doubtful: CurveRow;
  readonly other: CurveRow;
  /** Whether the doubtful one is too low; too high otherwise. */
  readonly isTooLow: boolean;
}

/**
 * Where a curve that rises or falls goes wholly the other way between two rows. The row is doubted without
 * which the rest keeps its course; of several such the one that is farthest from the line of its neighbors.
 * Nothing where stations are out of place: then it is not known what follows what.
 */
export function courseBroken(setting: Setting): readonly CourseBroken[] {
  const course = setting.known?.curve?.course ?? 'any';
  if (course === 'any' || outOfPlace(setting).length > 0) return [];
  const rows = inOrder(soundRows(setting));
  const goesAgainst = (earlier: Band, later: Band): boolean =>
    course === 'rising' ? isBelow(later, earlier) : isBelow(earlier, later);
  const broken: CourseBroken[] = [];
  let left = rows;
  for (let found = firstBreak(left, goesAgainst); found; found = firstBreak(left, goesAgainst)) {
    const doubtful = mostDoubtful(left, goesAgainst);
    const [earlier, later] = found;
    const at = left.indexOf(doubtful);
    // Of all that it goes against, the nearest.
    const [pair] = left
      .filter((row) => row !== doubtful && breaks(left, row, doubtful, goesAgainst))
      .sort((a, b) => Math.abs(left.indexOf(a) - at) - Math.abs(left.indexOf(b) - at));
    const other = pair ?? (doubtful === earlier ? later : earlier);
    const [low, high] = [middleOf(doubtful), middleOf(other)];
    broken.push({
      doubtful,
      other,
      isTooLow: low !== null && high !== null && low.compare(high) < 0,
    });
    left = left.filter((row) => row !== doubtful);
  }
  return broken;
}

type Against = (earlier: Band, later: Band) => boolean;

function firstBreak(
  rows: readonly CurveRow[],
  goesAgainst: Against,
): readonly [CurveRow, CurveRow] | null {
  for (const [i, earlier] of rows.entries()) {
    const later = rows.slice(i + 1).find((row) => goesAgainst(earlier, row));
    if (later) return [earlier, later];
  }
  return null;
}

function breaks(
  rows: readonly CurveRow[],
  one: CurveRow,
  other: CurveRow,
  goesAgainst: Against,
): boolean {
  const [earlier, later] =
    rows.indexOf(one) < rows.indexOf(other) ? ([one, other] as const) : ([other, one] as const);
  return goesAgainst(earlier, later);
}

/** The row that takes part in the most breaks; of equals the one farthest from its neighbors' line, and then the later. */
function mostDoubtful(rows: readonly CurveRow[], goesAgainst: Against): CurveRow {
  let worst = rows[0] as CurveRow;
  let most = -1;
  let farthest = -1;
  for (const row of rows) {
    const many = rows.filter(
      (other) => other !== row && breaks(rows, row, other, goesAgainst),
    ).length;
    if (many === 0) continue;
    const far = awayFromLine(rows, row)?.abs().valueOf() ?? 0;
    if (many > most || (many === most && far >= farthest)) {
      worst = row;
      most = many;
      farthest = far;
    }
  }
  return worst;
}

/** How far the middle of a row is above the line through those of its neighbors; null at an end. */
function awayFromLine(rows: readonly CurveRow[], row: CurveRow): Rational | null {
  const i = rows.indexOf(row);
  const [before, after] = [rows[i - 1], rows[i + 1]];
  return before && after ? aboveLine(before, row, after) : null;
}

function aboveLine(before: CurveRow, row: CurveRow, after: CurveRow): Rational | null {
  const [a, middle, b] = [middleOf(before), middleOf(row), middleOf(after)];
  const reach = after.station.sub(before.station);
  if (!a || !middle || !b || reach.equals(0)) return null;
  return middle.sub(a.add(b.sub(a).mul(row.station.sub(before.station)).div(reach)));
}

/** A row that leaves the line that its neighbors make, and what that line has there. */
export interface RowOff {
  readonly row: CurveRow;
  readonly line: Rational;
}

/** As many other rows as it takes to say how far rows lie off the lines of their neighbors. */
const OTHERS = 4;
/** How much farther off than any other a row has to be: a bend of the curve is seldom so sharp. */
const FARTHER = 4;

/**
 * The one row that lies farther from the line through its neighbors than any other would without it, four
 * times at least, with that line outside of its band. Null where there is none, or where several are.
 */
export function rowOff(setting: Setting): RowOff | null {
  if (outOfPlace(setting).length > 0 || courseBroken(setting).length > 0) return null;
  const rows = inOrder(soundRows(setting));
  if (rows.length < OTHERS + 1) return null;
  const off = rows.slice(1, -1).flatMap((row) => {
    const away = awayFromLine(rows, row);
    const middle = middleOf(row);
    if (!away || !middle || isWithin(middle.sub(away), row)) return [];
    const others = rows.filter((other) => other !== row);
    const farthest = Math.max(
      ...others.slice(1, -1).map((other) => awayFromLine(others, other)?.abs().valueOf() ?? 0),
      lastPlace(row),
    );
    return away.abs().valueOf() > FARTHER * farthest ? [{ row, line: middle.sub(away) }] : [];
  });
  return off.length === 1 ? (off[0] ?? null) : null;
}

/** The last place that a row's figure is told to, in base units. */
function lastPlace({ row }: CurveRow): number {
  const reading = row.value?.reading;
  const amount = reading?.ok ? (reading.statement.nominal ?? reading.statement.low?.amount) : null;
  return amount ? amount.could.high.sub(amount.could.low).valueOf() : 0;
}

function isWithin(value: Rational, { low, high }: Band): boolean {
  return (low === null || value.compare(low) >= 0) && (high === null || value.compare(high) <= 0);
}
