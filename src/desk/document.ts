import { examineParsed, type Finding } from '../checks/index.ts';
import { type FamilyBook, linesOf, originOf, ownText, readSheet } from '../sheet/index.ts';
import type { Sheet } from '../sheet/model.ts';
import { LineIndex, type Span } from '../text/index.ts';
import type { DeskDocument, DeskPlace, DeskProject } from './model.ts';

/** Reads a text as a sheet, and checks it when its findings are first asked for. Never throws for the text. */
export function openDocument(text: string, file: string, project: DeskProject): DeskDocument {
  return documentOf(readSheet(text, file, project.context), null, project);
}

/** A sheet that has been read, and checked where `findings` are given. */
export function documentOf(
  sheet: Sheet,
  findings: readonly Finding[] | null,
  project: DeskProject,
): DeskDocument {
  let found = findings;
  const text = ownText(sheet);
  return {
    file: sheet.file,
    text,
    get lines() {
      return linesOf(sheet)(sheet.file);
    },
    sheet,
    get findings() {
      found ??= examineParsed(sheet, project.context);
      return found;
    },
    project,
    bodyStart: sheet.family === null ? sheet.bodyStart : ownBodyStart(sheet),
  };
}

/**
 * A document with a text that is typed on and not read yet: with the sheet as it was read before. It is for
 * what may stand at the cursor, which cannot wait; places of the sheet are those of the older text.
 */
export function retyped(document: DeskDocument, text: string): DeskDocument {
  let lines: LineIndex | null = null;
  return Object.create(document, {
    text: { value: text, enumerable: true },
    lines: {
      get: () => {
        lines ??= new LineIndex(text);
        return lines;
      },
      enumerable: true,
    },
  });
}

/** A variant's own file stands first in the text that it is put together from, up to its work. */
function ownBodyStart({ family, bodyStart }: Sheet): number {
  const [first] = family?.stretches ?? [];
  return first?.member === 0 && first.at === 0 ? first.end : bodyStart;
}

/** Where a span of the sheet's text stands, in which file. */
export function placeOf(document: DeskDocument, span: Span): DeskPlace {
  const { file, span: own } = originOf(document.sheet, span);
  return { file, span: own };
}

/** The span in the document's own file; null for one that stands in a base. */
export function ownSpan(document: DeskDocument, span: Span): Span | null {
  const origin = originOf(document.sheet, span);
  return origin.depth === 0 ? origin.span : null;
}

/** The offset in the sheet's text of one in the document; null for what is taken up into no sheet. */
export function sheetOffset({ sheet }: DeskDocument, offset: number): number | null {
  if (sheet.family === null) return offset;
  for (const { start, end, member, at } of sheet.family.stretches) {
    if (member === 0 && offset >= at && offset <= at + (end - start)) return start + offset - at;
  }
  return null;
}

/** The sheets that a document may be based on; none, where none are known. */
export function familyOf({ project }: DeskDocument): FamilyBook | null {
  return project.context.family ?? null;
}

/** Whether an offset lies in a span or at its end, as a cursor does behind the last letter. */
export function holds({ start, end }: Span, offset: number): boolean {
  return offset >= start && offset <= end;
}
