import type { Sheet } from '../sheet/model.ts';
import { askedOf, namesMeasured, statementsOf } from './asked.ts';
import { sheetDigest } from './digests.ts';
import type { KeptReading, KeptReadings, ProvedFigure } from './model.ts';

/**
 * How far each figure of a sheet is proved by the second readings that are kept of it. Read twice is what
 * was the same for at least one of its sources, or was settled, and stands on the sheet in exactly those
 * words still; a reading that names nobody counts for nothing. Figures for which only units were measured are told apart.
 */
export function provedFigures(sheet: Sheet, kept: KeptReadings | null): readonly ProvedFigure[] {
  const readings = (kept?.all ?? []).filter(({ by }) => by !== null);
  const digest = kept?.digest ?? String;
  const asked = readings.length === 0 ? [] : askedOf(sheet);
  return statementsOf(sheet).map(({ setting, statement, from }) => {
    const readers = asked
      .filter((each) => each.setting === setting && each.statement === statement)
      .flatMap((each) => {
        const words = sheetDigest(each, digest);
        return readings.filter(
          (kept) => kept.source === each.source && isBorneOut(kept, each.page, each.key, words),
        );
      })
      .map(({ by, date }) => ({ by: by ?? '', date }));
    const isOnlyMeasured = from.length > 0 && from.every(({ id }) => namesMeasured(id, sheet));
    const proof = readers.length > 0 ? 'twice' : isOnlyMeasured ? 'measured' : 'once';
    return { setting, statement, proof, readers };
  });
}

/** Whether a kept reading bears out these words of a sheet, of its own or because somebody settled them. */
function isBorneOut(kept: KeptReading, page: string, key: string, words: string): boolean {
  const isIt = (each: { page: string; setting: string; sheet: string }) =>
    each.page === page && each.setting === key && each.sheet === words;
  return (
    kept.read.some(
      (each) =>
        isIt(each) && (each.verdict === 'same' || each.verdict === 'same, written otherwise'),
    ) || kept.settled.some(isIt)
  );
}

/** How many figures of a sheet can be read twice, and how many were. */
export interface ReadCount {
  readonly figures: number;
  readonly twice: number;
}

/** Counts the figures of a sheet that stand in papers; what was only measured is not among them. */
export function readCount(figures: readonly ProvedFigure[]): ReadCount {
  const papers = figures.filter(({ proof }) => proof !== 'measured');
  return {
    figures: papers.length,
    twice: papers.filter(({ proof }) => proof === 'twice').length,
  };
}
