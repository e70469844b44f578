import { isMeasured, kindOfSource } from '../sheet/index.ts';
import type { Citation, Dissent, Setting, Sheet, Source } from '../sheet/model.ts';

/** A source and the year of print it goes by, as it says it. */
export interface DatedSource {
  readonly source: Source;
  readonly year: string;
}

/** Whether the sheet says why a differing statement is not followed. */
export function isRuled({ ruling }: Dissent): boolean {
  return ruling !== null && ruling.value.trim() !== '';
}

/**
 * The source of the figure and the later one of its own kind that differs, where every dated source
 * of the figure is of that kind and older; null otherwise. Of a span of years the end counts for the
 * older and the start for the later, so that two that overlap are not told apart.
 */
export function laterOverruled(
  sheet: Sheet,
  setting: Setting,
  dissent: Dissent,
): { readonly older: DatedSource; readonly later: DatedSource } | null {
  const other = dated(sheet, dissent.from);
  if (other === null || isMeasured(other.source)) return null;
  const own = setting.from.flatMap((citation) => dated(sheet, citation) ?? []);
  let older: DatedSource | null = null;
  for (const each of own) {
    if (kindOfSource(each.source) !== kindOfSource(other.source)) return null;
    if (lastYear(each.year) >= firstYear(other.year)) return null;
    if (older === null || lastYear(each.year) > lastYear(older.year)) older = each;
  }
  return older === null ? null : { older, later: other };
}

function dated(sheet: Sheet, citation: Citation | null): DatedSource | null {
  const source = citation === null ? undefined : sheet.sources.get(citation.id);
  const year = source?.described.get('year')?.value;
  return source === undefined || year === undefined || !/\d{4}/.test(year)
    ? null
    : { source, year };
}

function firstYear(year: string): number {
  return Number(/\d{4}/.exec(year)?.[0]);
}

/** `1950` of `1948-1950` and of `1948-50`. */
function lastYear(year: string): number {
  const first = firstYear(year);
  const end = /\d{4} ?[-–/] ?(\d{2,4})/.exec(year)?.[1];
  if (end === undefined) return first;
  return end.length === 4 ? Number(end) : first - (first % 100) + Number(end);
}
