import { type SheetFacts, sheetFacts } from '../checks/index.ts';
import type { Examined } from '../project/index.ts';
import { type FileReport, placeSheet, type Refused, stoppers } from '../report/index.ts';

/** All that `check` has to know of a sheet once it is examined: nothing of its text or tree. */
export type CheckedSheet =
  | { readonly ok: false; readonly refused: Refused }
  | {
      readonly ok: true;
      readonly file: string;
      /** By the files that the findings stand in, its own first. */
      readonly reports: readonly FileReport[];
      readonly stopped: boolean;
      /** For what lies between sheets; null where nobody asks. */
      readonly facts: SheetFacts | null;
      /** Files that it is put together from, as reports show them; its own alone where it has no base. */
      readonly files: readonly string[];
    };

/** What is to be kept of an examined sheet; facts for the checks across sheets only where asked for. */
export function checkedSheet(examined: Examined, across: boolean): CheckedSheet {
  if (!examined.ok) return examined;
  const { sheet, findings } = examined;
  return {
    ok: true,
    file: sheet.file,
    reports: placeSheet(sheet, findings),
    stopped: stoppers(findings, sheet.status?.value ?? null).length > 0,
    facts: across ? sheetFacts(sheet) : null,
    files: sheet.family?.members.map(({ file }) => file) ?? [sheet.file],
  };
}

/** What is known of sheets from before, by their paths. */
export interface KeptSheets {
  get(path: string): CheckedSheet | undefined;
  set(path: string, checked: CheckedSheet): void;
}
