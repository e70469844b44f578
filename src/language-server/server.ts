import {
  type CancellationToken,
  CodeActionKind,
  type Connection,
  DidChangeWatchedFilesNotification,
  type InitializeParams,
  type InitializeResult,
  LSPErrorCodes,
  ResponseError,
  TextDocumentSyncKind,
  TextDocuments,
} from 'vscode-languageserver/node';
import { TextDocument } from 'vscode-languageserver-textdocument';
import { definition, folding, hints, links, references, renameStart } from '../desk/index.ts';
import type { DeskDocument, DeskPlace, FileEdits } from '../desk/model.ts';
import { LineIndex } from '../text/index.ts';
import { completionList, hoverAt, type Shows, symbolsOf } from './answers.ts';
import { codeActions, fixAll, renameEdit, type Takes, workspaceEdit } from './changes.ts';
import { rangeOf, uriOf } from './places.ts';
import { linkTarget, textOf } from './reach.ts';
import type { Shelf } from './shelf.ts';
import { Watcher } from './watcher.ts';

/** Answers an editor over a connection until it says that it is done. */
export function serve(connection: Connection, version: string): void {
  const documents = new TextDocuments(TextDocument);
  const watcher = new Watcher(connection, documents);
  let shows: Shows = { markdown: false, snippets: false };
  let takes: Takes = { versions: false, renames: false };
  let canRegister = false;

  connection.onInitialize((params): InitializeResult => {
    ({ shows, takes } = abilitiesOf(params));
    canRegister =
      params.capabilities.workspace?.didChangeWatchedFiles?.dynamicRegistration === true;
    watcher.begin(params.capabilities.textDocument?.publishDiagnostics ?? null);
    return {
      serverInfo: { name: 'gaugeleaf', version },
      capabilities: {
        positionEncoding: 'utf-16',
        textDocumentSync: {
          openClose: true,
          change: TextDocumentSyncKind.Incremental,
          save: { includeText: false },
        },
        completionProvider: { triggerCharacters: [':', '[', '{', '=', '#', ' ', '.', '/', '-'] },
        hoverProvider: true,
        definitionProvider: true,
        referencesProvider: true,
        documentHighlightProvider: true,
        documentSymbolProvider: true,
        foldingRangeProvider: true,
        documentLinkProvider: {},
        inlayHintProvider: true,
        renameProvider: { prepareProvider: true },
        codeActionProvider: { codeActionKinds: [CodeActionKind.QuickFix, fixAll] },
      },
    };
  });

  connection.onInitialized(() => {
    // An editor that watches no files leaves it to us.
    if (!canRegister) return watcher.watch();
    const watchers = ['**/*.md', '**/edition.yaml', '**/sources.yaml', '**/kinds/*.{yaml,yml}'];
    void connection.client.register(DidChangeWatchedFilesNotification.type, {
      watchers: watchers.map((globPattern) => ({ globPattern })),
    });
  });

  /** The sheet at a place, read as it stands now; null for any other document. */
  const sheetAt = (params: { readonly textDocument: { readonly uri: string } }) =>
    watcher.sheet(params.textDocument.uri);
  const whereIn = (text: TextDocument, { start, end }: { start: Position; end: Position }) => ({
    start: text.offsetAt(start),
    end: text.offsetAt(end),
  });
  const place = ({ file, span }: DeskPlace, shelf: Shelf) => {
    const path = shelf.pathOf(file);
    const text = textOf(path, watcher.open);
    return { uri: uriOf(path), range: rangeOf(span, new LineIndex(text)) };
  };
  const edits = (shelf: Shelf) => (files: readonly FileEdits[]) =>
    workspaceEdit(files, shelf, watcher.open, takes);

  connection.onCompletion((params) => {
    const found = watcher.typed(params.textDocument.uri);
    if (found === null) return null;
    return completionList(found.document, found.text.offsetAt(params.position), shows);
  });

  connection.onHover((params) => {
    const found = sheetAt(params);
    if (found === null) return null;
    return hoverAt(found.document, found.text.offsetAt(params.position), shows);
  });

  connection.onDefinition((params) => {
    const found = sheetAt(params);
    if (found === null) return null;
    const to = definition(found.document, found.text.offsetAt(params.position));
    return to && place(to, found.shelf);
  });

  connection.onReferences(async (params, token) => {
    const found = await throughout(params, token);
    if (found === null) return null;
    const offset = found.text.offsetAt(params.position);
    const own = definition(found.document, offset);
    return references(found.document, offset)
      .filter((each) => params.context.includeDeclaration || !isSame(each, own))
      .map((each) => place(each, found.shelf));
  });

  connection.onDocumentHighlight((params) => {
    const found = sheetAt(params);
    if (found === null) return null;
    const { document, text } = found;
    return references(document, text.offsetAt(params.position))
      .filter(({ file }) => file === document.file)
      .map(({ span }) => ({ range: rangeOf(span, document.lines) }));
  });

  connection.onDocumentSymbol((params) => {
    const found = sheetAt(params);
    return found && symbolsOf(found.document);
  });

  connection.onFoldingRanges((params) => {
    const found = sheetAt(params);
    if (found === null) return null;
    return folding(found.document).map(({ startLine, endLine }) => ({
      startLine: startLine - 1,
      endLine: endLine - 1,
    }));
  });

  connection.onDocumentLinks((params) => {
    const found = sheetAt(params);
    if (found === null) return null;
    const { document, shelf } = found;
    return links(document).map(({ span, target, explain }) => ({
      range: rangeOf(span, document.lines),
      target: linkTarget(shelf.pathOf(document.file), target),
      tooltip: explain,
    }));
  });

  connection.languages.inlayHint.on((params) => {
    const found = sheetAt(params);
    if (found === null) return null;
    const { document, text } = found;
    return hints(document, whereIn(text, params.range)).map(({ offset, text: label }) => ({
      position: text.positionAt(offset),
      label,
      paddingLeft: true,
    }));
  });

  connection.onCodeAction((params) => {
    const found = sheetAt(params);
    if (found === null) return null;
    const { only = null, diagnostics } = params.context;
    const range = whereIn(found.text, params.range);
    return codeActions(found.document, range, { only, diagnostics }, edits(found.shelf));
  });

  connection.onPrepareRename((params) => {
    const found = sheetAt(params);
    if (found === null) return null;
    const start = renameStart(found.document, found.text.offsetAt(params.position));
    if (start === null) return null;
    return { range: rangeOf(start.span, found.document.lines), placeholder: start.name };
  });

  connection.onRenameRequest(async (params, token) => {
    const found = await throughout(params, token);
    if (found === null) return null;
    const { document, shelf, text } = found;
    const offset = text.offsetAt(params.position);
    const answer = renameEdit(document, offset, params.newName, shelf, edits(shelf), takes);
    if ('edit' in answer) return answer.edit;
    return new ResponseError<void>(LSPErrorCodes.RequestFailed, answer.refused);
  });

  /** The sheet at a place once all others of its project are read; fails where that is called off. */
  const throughout = async (
    params: { readonly textDocument: { readonly uri: string } },
    token: CancellationToken,
  ): Promise<Found | null> => {
    const first = sheetAt(params);
    if (first === null) return null;
    await watcher.readAll(first.shelf, () => token.isCancellationRequested);
    if (token.isCancellationRequested) {
      throw new ResponseError<void>(LSPErrorCodes.RequestCancelled, 'called off');
    }
    return sheetAt(params);
  };

  documents.listen(connection);
  connection.listen();
}

type Position = Parameters<TextDocument['offsetAt']>[0];

/** A sheet that is open, as it stands now, and its project. */
export interface Found {
  readonly document: DeskDocument;
  readonly text: TextDocument;
  readonly shelf: Shelf;
}

function abilitiesOf({ capabilities }: InitializeParams): { shows: Shows; takes: Takes } {
  const { textDocument, workspace } = capabilities;
  const edit = workspace?.workspaceEdit;
  return {
    shows: {
      markdown: textDocument?.hover?.contentFormat?.includes('markdown') === true,
      snippets: textDocument?.completion?.completionItem?.snippetSupport === true,
    },
    takes: {
      versions: edit?.documentChanges === true,
      renames: edit?.resourceOperations?.includes('rename') === true,
    },
  };
}

function isSame(one: DeskPlace, other: DeskPlace | null): boolean {
  return one.file === other?.file && one.span.start === other.span.start;
}
