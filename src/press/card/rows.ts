import { AS_WRITTEN, type SettingRow, type ValueLine } from '../matter/index.ts';
import type { CardReading, CardReadings } from '../orders/index.ts';

/** One value as the card prints it. */
export interface CardValue extends ValueLine {
  /** What it comes to in other units, a string a line; without what is as written. */
  readonly equivalents: readonly string[];
  /** What a bench record says of it; null without a record. */
  readonly reading: CardReading | null;
  /** Rows of the table that its columns to write in run over: the last value's take the details in. */
  readonly rows: 1 | 2;
}

/** One setting as the card prints it. */
export interface CardRow extends Omit<SettingRow, 'values'> {
  readonly values: readonly CardValue[];
  /** Rows of the table that its number runs over: its values, and one for where and how. */
  readonly rows: number;
  /** Whether a line of details stands below: where and how it is measured, and what others say. */
  readonly hasDetails: boolean;
  /** Whether its equivalents stand among the details: on small paper, where one value serves all. */
  readonly equalsBelow: boolean;
}

/**
 * The rows of a card's table, filled in where there is a bench record. `isSmall`: for paper that has no
 * room for columns of equivalents and gauges.
 */
export function cardRows(
  rows: readonly SettingRow[],
  readings: CardReadings | null,
  isSmall: boolean,
): CardRow[] {
  return rows.map((row) => {
    const read = readings?.settings.get(row.name) ?? [];
    const equals = row.values.map(equivalentsOf);
    const equalsBelow = isSmall && equals.length === 1 && equals[0]?.length !== 0;
    const hasDetails =
      row.where !== null ||
      row.note !== null ||
      row.dissents.length > 0 ||
      row.worked.length > 0 ||
      equalsBelow ||
      (isSmall && row.gauge !== null);
    return {
      ...row,
      hasDetails,
      equalsBelow,
      rows: row.values.length + (hasDetails ? 1 : 0),
      values: row.values.map((value, index) => ({
        ...value,
        equivalents: equals[index] ?? [],
        reading: read.find(({ place }) => place === value.place) ?? null,
        rows: hasDetails && index === row.values.length - 1 ? 2 : 1,
      })),
    };
  });
}

function equivalentsOf({ inch, mm, other }: ValueLine): string[] {
  return [inch, mm, other].filter((text): text is string => text !== null && text !== AS_WRITTEN);
}
