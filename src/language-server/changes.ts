import { readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import {
  type CodeAction,
  CodeActionKind,
  type Diagnostic,
  type TextDocumentEdit,
  type WorkspaceEdit,
} from 'vscode-languageserver/node';
import type { TextDocument } from 'vscode-languageserver-textdocument';
import { actions, mended, rename } from '../desk/index.ts';
import type { DeskAction, DeskDocument, FileEdits, Renamed } from '../desk/model.ts';
import { LineIndex, nodeAt, readYaml, type Span } from '../text/index.ts';
import { rangeOf, uriOf } from './places.ts';
import type { Shelf } from './shelf.ts';

/** What an editor can do with changes to several files. */
export interface Takes {
  /** Changes that say of which version of a document they are. */
  readonly versions: boolean;
  /** Files that get another name. */
  readonly renames: boolean;
}

/** Edits of files as one change; a file that is open keeps the version that they were made for. */
export function workspaceEdit(
  files: readonly FileEdits[],
  shelf: Shelf,
  open: ReadonlyMap<string, TextDocument>,
  { versions }: Takes,
): WorkspaceEdit {
  const changes = files.map(({ file, edits }): TextDocumentEdit => {
    const path = shelf.pathOf(file);
    const edited = open.get(path);
    const lines = new LineIndex(edited?.getText() ?? textOn(path));
    return {
      textDocument: { uri: edited?.uri ?? uriOf(path), version: edited?.version ?? null },
      edits: edits.map(({ span, text }) => ({ range: rangeOf(span, lines), newText: text })),
    };
  });
  if (versions) return { documentChanges: changes };
  return {
    changes: Object.fromEntries(
      changes.map(({ textDocument, edits }) => [textDocument.uri, edits]),
    ),
  } as WorkspaceEdit;
}

function textOn(path: string): string {
  try {
    return readFileSync(path, 'utf8');
  } catch {
    return '';
  }
}

/** The kind of an action that mends all that is certain, as an editor does it when it saves. */
export const fixAll = `${CodeActionKind.SourceFixAll}.gaugeleaf`;

/** What can be done in a range of a sheet, as far as the editor asks for it. */
export function codeActions(
  document: DeskDocument,
  range: Span,
  asked: { readonly only: readonly string[] | null; readonly diagnostics: readonly Diagnostic[] },
  edit: (files: readonly FileEdits[]) => WorkspaceEdit,
): CodeAction[] {
  const wants = (kind: string) =>
    asked.only === null || asked.only.some((each) => kind === each || kind.startsWith(`${each}.`));
  const found: CodeAction[] = [];
  if (wants(CodeActionKind.QuickFix)) {
    for (const action of actions(document, range)) {
      found.push({
        title: action.title,
        kind: CodeActionKind.QuickFix,
        diagnostics: asked.diagnostics.filter((each) => isOf(each, action)),
        ...(action.kind === 'fix' ? { isPreferred: true } : {}),
        edit: edit(action.edits),
      });
    }
  }
  // It is long work on a long sheet: not with every lamp that an editor shows.
  if (asked.only !== null && wants(fixAll)) {
    const text = mended(document);
    if (text !== document.text) {
      const whole = { start: 0, end: document.text.length };
      found.push({
        title: 'mend all that is certain',
        kind: fixAll,
        edit: edit([{ file: document.file, edits: [{ span: whole, text }] }]),
      });
    }
  }
  return found;
}

function isOf({ code, message }: Diagnostic, { finding }: DeskAction): boolean {
  return code === finding.check && String(message).startsWith(finding.message);
}

/** A name changed throughout the project, the edition file and the name of the sheet's own file with it. */
export function renameEdit(
  document: DeskDocument,
  offset: number,
  name: string,
  shelf: Shelf,
  edit: (files: readonly FileEdits[]) => WorkspaceEdit,
  { versions, renames }: Takes,
): { readonly edit: WorkspaceEdit } | { readonly refused: string } {
  const renamed: Renamed = rename(document, offset, name);
  if (!renamed.ok) return { refused: renamed.message };
  const { newFile } = renamed;
  if (newFile === null) return { edit: edit(renamed.edits) };
  const old = document.sheet.id?.value ?? '';
  const changed = edit([...renamed.edits, ...inEdition(shelf, old, name)]);
  if (!versions || !renames) return { edit: changed };
  const path = shelf.pathOf(document.file);
  const newUri = uriOf(join(dirname(path), newFile));
  return {
    edit: {
      documentChanges: [
        ...(changed.documentChanges ?? []),
        { kind: 'rename', oldUri: uriOf(path), newUri },
      ],
    },
  };
}

/** Where the order of `edition.yaml` lists a sheet: what else is called so there is not meant. */
function inEdition(shelf: Shelf, id: string, name: string): readonly FileEdits[] {
  const { root } = readYaml(textOn(join(shelf.root, 'edition.yaml')));
  const order = root === null ? null : nodeAt(root, ['order']);
  const edits = (order?.kind === 'list' ? order.items : [])
    .filter((item) => item.kind === 'scalar' && item.text === id)
    .map(({ span }) => ({ span, text: name }));
  return edits.length === 0 ? [] : [{ file: 'edition.yaml', edits }];
}
