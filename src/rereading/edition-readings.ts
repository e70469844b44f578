import type { Sheet } from '../sheet/model.ts';
import { type ErrorEstimate, errorsFound, estimateErrors } from './estimate.ts';
import type { KeptReadings, SecondReading } from './model.ts';
import { provedFigures, readCount } from './standing.ts';

/** How far the second reading of one sheet has come. */
export interface SheetReadCount {
  readonly sheet: string;
  readonly title: string;
  readonly status: string | null;
  /** Figures that stand in papers, and how many of them were read twice. */
  readonly figures: number;
  readonly twice: number;
  readonly measured: number;
  /** Differences that were found so far, and those that somebody settled. */
  readonly differences: number;
  readonly settled: number;
  readonly estimate: ErrorEstimate | null;
}

/** How far the second reading of an edition has come. */
export interface EditionReadCount {
  readonly sheets: readonly SheetReadCount[];
  readonly whole: Omit<SheetReadCount, 'sheet' | 'title' | 'status'>;
}

/** Counts what was read twice, and what came of it, sheet by sheet. */
export function editionReadings(
  sheets: readonly {
    readonly id: string;
    readonly sheet: Sheet;
    readonly kept: KeptReadings | null;
    readonly readings: readonly SecondReading[];
  }[],
): EditionReadCount {
  const rows = sheets.map(({ id, sheet, kept, readings }): SheetReadCount => {
    const proved = provedFigures(sheet, kept);
    return {
      sheet: id,
      title: sheet.title?.value ?? '',
      status: sheet.status?.value ?? null,
      ...readCount(proved),
      measured: proved.filter(({ proof }) => proof === 'measured').length,
      ...differencesOf(readings),
    };
  });
  const sum = (of: (row: SheetReadCount) => number) =>
    rows.reduce((total, row) => total + of(row), 0);
  return {
    sheets: rows,
    whole: {
      figures: sum(({ figures }) => figures),
      twice: sum(({ twice }) => twice),
      measured: sum(({ measured }) => measured),
      ...differencesOf(sheets.flatMap(({ readings }) => readings)),
    },
  };
}

function differencesOf(
  readings: readonly SecondReading[],
): Pick<SheetReadCount, 'differences' | 'settled' | 'estimate'> {
  const settled = readings.flatMap((each) => each.settled);
  const open = readings.flatMap(({ read, settled: done }) =>
    read.filter(
      ({ page, setting, verdict, sheet, answer }) =>
        (verdict === 'differs' || verdict === 'not on that page') &&
        !done.some(
          (each) =>
            each.page === page &&
            each.setting === setting &&
            each.sheet === sheet &&
            each.answer === answer,
        ),
    ),
  );
  return {
    differences: settled.length + open.length,
    settled: settled.length,
    estimate: estimateErrors(errorsFound(settled)),
  };
}
