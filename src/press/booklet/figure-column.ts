import { type LengthFigures, lengthFigures } from '../../quantity/index.ts';
import type { PlacedSize } from '../../sheet/model.ts';

/** A length as a column prints it that is aligned on the point, its limits one above the other. */
export interface FigureColumn {
  /** What stands before the point, and what behind it with the point: `27`, `.78`. */
  readonly whole: string;
  readonly part: string;
  readonly high: string | null;
  readonly low: string | null;
  /** Which of two limits the figure itself is, where there is but one. */
  readonly bound: 'min' | 'max' | null;
}

/** The column of a size in inches or millimeters; null where it is no length. */
export function figureColumn(size: PlacedSize | null, unit: 'in' | 'mm'): FigureColumn | null {
  const figures = size?.reading.ok ? lengthFigures(size.reading.statement, unit) : null;
  return figures === null ? null : columnOf(figures);
}

function columnOf({ nominal, low, high }: LengthFigures): FigureColumn {
  const both = low !== null && high !== null;
  const figure = nominal ?? (both ? '' : (low ?? high ?? ''));
  const [whole = '', part = ''] = figure.split(/(?=\.)/);
  const alone = nominal === null && !both;
  return {
    whole,
    part,
    high: both || nominal !== null ? high : null,
    low: both || nominal !== null ? low : null,
    bound: alone ? (low === null ? 'max' : 'min') : null,
  };
}
