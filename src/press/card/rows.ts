import { AS_WRITTEN, type GaugeTold, type SettingRow, type ValueLine } from '../matter/index.ts';
import type { CardReading, CardReadings } from '../orders/index.ts';

/** A size with its limits on a line of their own. */
export interface StackedSize {
  readonly nominal: string;
  /** Null where there are none, or where they are all there is. */
  readonly limits: string | null;
}

/** One value as the card prints it. */
export interface CardValue extends ValueLine {
  /** Decimal inches and millimeters without their unit, which the head of the column says; null for none. */
  readonly inches: StackedSize | null;
  readonly millimeters: StackedSize | null;
  /** What no length comes to in other units, two at most. */
  readonly others: readonly StackedSize[];
  /** Whether it may run on into the columns beside it, which hold little or nothing. */
  readonly runsOn: boolean;
  /** Whether what it comes to takes more than one line. */
  readonly hasLimits: boolean;
  /** What a bench record says of it; null without a record. */
  readonly reading: CardReading | null;
  /** Rows of the table that its other columns run over: the last value's take the datum's in. */
  readonly rows: 1 | 2;
}

/** One setting as the card prints it. */
export interface CardRow extends Omit<SettingRow, 'values'> {
  readonly values: readonly CardValue[];
  /** Rows of the table that its number runs over: its values, and one for its datum. */
  readonly rows: number;
  /** Whether a line stands below: its datum, or where the source read it. */
  readonly hasDatum: boolean;
  /** Whether that line may run on below what the value comes to. */
  readonly datumIsWide: boolean;
  /** Whether the row above is made by the same task. */
  readonly sameTask: boolean;
  /** What one takes, a line each; empty for no gauge. */
  readonly gaugeLines: readonly string[];
  /** Whether anything is said of it behind the work: sources, notes, further figures. */
  readonly hasMore: boolean;
}

/** Letters of a value that leave room for one equivalent on the same line. */
const longestBeside = 22;

/** The rows of a card's table, filled in where there is a bench record. */
export function cardRows(rows: readonly SettingRow[], readings: CardReadings | null): CardRow[] {
  return rows.map((row, index) => {
    const read = readings?.settings.get(row.name) ?? [];
    const hasDatum =
      row.datum !== null || row.values.some(({ club, house }) => club !== null || house !== null);
    const values = row.values.map((value, at): CardValue => {
      const inches = stacked(value.inch, ' in');
      const millimeters = stacked(value.mm, ' mm');
      const others = (value.other ?? '')
        .split(', ')
        .slice(0, 2)
        .flatMap((text) => stacked(text, '') ?? []);
      return {
        ...value,
        inches,
        millimeters,
        others,
        // Beside a short equivalent a long value would touch it.
        runsOn:
          inches === null &&
          (others.length === 0 || (others.length === 1 && value.large.length <= longestBeside)),
        hasLimits: others.length > 1 || [inches, millimeters].some((size) => size?.limits != null),
        reading: read.find(({ place }) => place === value.place) ?? null,
        rows: hasDatum && at === row.values.length - 1 ? 2 : 1,
      };
    });
    return {
      ...row,
      values,
      rows: values.length + (hasDatum ? 1 : 0),
      hasDatum,
      datumIsWide: values.at(-1)?.hasLimits === false,
      sameTask: row.task !== null && rows[index - 1]?.task === row.task,
      gaugeLines: row.gauges.flatMap(gaugeLines),
      hasMore:
        row.from.length > 0 ||
        row.note !== null ||
        row.further !== null ||
        row.dissents.length > 0 ||
        row.worked.length > 0,
    };
  });
}

/** `0.2031 in (0.1875–0.2187 in)` as two lines; without the unit where the column has it at its head. */
function stacked(text: string | null, unit: string): StackedSize | null {
  if (text === null || text === '' || text === AS_WRITTEN) return null;
  // Without its unit behind it a `min` would be minutes: a bound goes before the figure.
  const plain =
    unit === '' ? text : text.replaceAll(unit, '').replace(/^(.*\S) (min|max)$/i, '$2 $1');
  const [, nominal = plain, limits = null] = /^(.*?) \((.*)\)$/.exec(plain) ?? [];
  return { nominal, limits };
}

function gaugeLines({ place, take, go, noGo, held, isSize }: GaugeTold): string[] {
  if (isSize) return [];
  const said = [
    ...(take === null ? [] : [take]),
    ...(held === null ? [] : [held]),
    ...(go === null ? [] : [`go ${go}`]),
    ...(noGo === null ? [] : [`no-go ${noGo}`]),
  ];
  const [first = '', ...rest] = said;
  return place === null || first === ''
    ? said
    : [`${place.replaceAll('-', ' ')} ${first}`, ...rest];
}
