import { definition, openDocument, references, rename, renameStart } from '../desk/index.ts';
import type { DeskDocument, DeskPlace } from '../desk/model.ts';
import type { Places, RenamedHere } from '../desk-page/model.ts';
import { fileId, readOwnText } from '../project/index.ts';
import { applyEdits } from '../report/index.ts';
import { LineIndex } from '../text/index.ts';
import type { Desk } from './desk.ts';

/** More places nobody reads through. */
const mostPlaces = 500;

/** The sheet as it stands in a window, among the others as they stand in theirs or on the disk. */
function documentOf(desk: Desk, id: string, text: string): DeskDocument {
  const { project } = desk;
  const path = desk.pathOf(id);
  return openDocument(text, project.show(path), {
    context: project.context(path),
    *others() {
      for (const other of project.sheets()) {
        const read = other === path ? null : textOf(desk, other);
        if (read !== null)
          yield openDocument(read, project.show(other), { context: project.context(other) });
      }
    },
  });
}

function textOf(desk: Desk, path: string): string | null {
  const open = desk.openText(fileId(path));
  if (open !== null) return open;
  const read = readOwnText(desk.project.root, path, desk.project.show(path));
  return read.ok ? read.text : null;
}

/** Where the word at an offset is defined and where it is used, throughout the project. */
export function placesThroughout(desk: Desk, id: string, text: string, offset: number): Places {
  const document = documentOf(desk, id, text);
  const start = renameStart(document, offset);
  const found = references(document, offset);
  const place = definition(document, offset);
  return {
    name: start?.name ?? null,
    definition: place && placed(desk, document, place),
    uses: found.slice(0, mostPlaces).map((each) => placed(desk, document, each)),
  };
}

function placed(
  desk: Desk,
  document: DeskDocument,
  { file, span }: DeskPlace,
): Places['uses'][number] {
  const path = desk.project.sheets().find((each) => desk.project.show(each) === file);
  const text = file === document.file ? document.text : path ? (textOf(desk, path) ?? '') : '';
  const { line } = new LineIndex(text).place(span.start);
  return {
    sheet: path === undefined ? null : fileId(path),
    file,
    start: span.start,
    line,
    words: (text.split('\n')[line - 1] ?? '').trim().slice(0, 120),
  };
}

/**
 * Gives the name at an offset another one, in this sheet and in all others: those of other sheets are made
 * at once, and saved where nothing else was unsaved; those of this one are answered, for its window to make.
 */
export function renameThroughout(
  desk: Desk,
  id: string,
  { text, offset, to }: { readonly text: string; readonly offset: number; readonly to: string },
): RenamedHere {
  const document = documentOf(desk, id, text);
  const made = rename(document, offset, to);
  if (!made.ok) return { ok: false, message: made.message };
  if (made.newFile !== null) {
    const message =
      'the name of a sheet is that of its file: draft a variant, or change both where nobody writes at it';
    return { ok: false, message };
  }
  const others = made.edits.filter(({ file }) => file !== document.file);
  for (const { file, edits } of others) {
    const path = desk.project.sheets().find((each) => desk.project.show(each) === file);
    if (path === undefined) continue;
    const sheet = desk.sheet(fileId(path));
    const wasSaved = !sheet.unsaved;
    sheet.rewrite(applyEdits(sheet.text, edits));
    if (wasSaved) sheet.save();
  }
  return {
    ok: true,
    edits: made.edits.filter(({ file }) => file === document.file).flatMap(({ edits }) => edits),
    others: others.length,
  };
}
