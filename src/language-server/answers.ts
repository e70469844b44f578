import {
  CompletionItemKind,
  type CompletionList,
  type DocumentSymbol,
  type Hover,
  InsertTextFormat,
  InsertTextMode,
  MarkupKind,
  SymbolKind,
} from 'vscode-languageserver/node';
import { completions, hover, outline } from '../desk/index.ts';
import type {
  Completion,
  CompletionKind,
  DeskDocument,
  OutlineEntry,
  OutlineKind,
} from '../desk/model.ts';
import { rangeOf } from './places.ts';

/** What of the protocol an editor can show. */
export interface Shows {
  readonly markdown: boolean;
  readonly snippets: boolean;
}

const itemKinds: Readonly<Record<CompletionKind, CompletionItemKind>> = {
  key: CompletionItemKind.Property,
  setting: CompletionItemKind.Field,
  feature: CompletionItemKind.EnumMember,
  hazard: CompletionItemKind.Event,
  source: CompletionItemKind.Reference,
  size: CompletionItemKind.Unit,
  word: CompletionItemKind.Value,
  heading: CompletionItemKind.Class,
  value: CompletionItemKind.Variable,
  state: CompletionItemKind.Enum,
  step: CompletionItemKind.Snippet,
  sheet: CompletionItemKind.File,
  finding: CompletionItemKind.Constant,
};

/** What may stand at an offset. It is asked for again with each letter where sizes are: they are near by size and not by letters. */
export function completionList(
  document: DeskDocument,
  offset: number,
  shows: Shows,
): CompletionList {
  const found = completions(document, offset);
  return {
    isIncomplete: found.some(({ kind }) => kind === 'size'),
    items: found.map((each, index) => ({
      label: each.label,
      kind: itemKinds[each.kind],
      ...(each.detail === null ? {} : { detail: each.detail }),
      ...(each.explain === null ? {} : { documentation: each.explain }),
      sortText: String(index).padStart(4, '0'),
      filterText: filterOf(document, each, offset),
      insertTextMode: InsertTextMode.asIs,
      ...inserted(document, each, shows),
    })),
  };
}

/** What the editor holds against what is typed: of a size just that, since `0.136` is no part of `No. 29 drill`. */
function filterOf(
  { text }: DeskDocument,
  { label, kind, edit }: Completion,
  offset: number,
): string {
  const typed = text.slice(edit.span.start, offset);
  if (kind === 'size') return typed === '' ? label : typed;
  // It looks at all that is replaced, of which the colons of a mark or a message are part.
  const lead = leadOf(typed);
  return label.startsWith(lead) ? label : lead + label;
}

/** The signs that what is typed begins with, before any letter. */
function leadOf(typed: string): string {
  return /^[^\p{L}\p{N}]*/u.exec(typed)?.[0] ?? '';
}

function inserted(document: DeskDocument, { edit, blank }: Completion, { snippets }: Shows) {
  const range = rangeOf(edit.span, document.lines);
  if (blank === null || !snippets) {
    return {
      textEdit: { range, newText: edit.text },
      insertTextFormat: InsertTextFormat.PlainText,
    };
  }
  const plain = (text: string) => text.replace(/[\\$}]/g, '\\$&');
  const newText = `${plain(edit.text.slice(0, blank.start))}$0${plain(edit.text.slice(blank.end))}`;
  return { textEdit: { range, newText }, insertTextFormat: InsertTextFormat.Snippet };
}

/** What there is to say of an offset; null for nothing. */
export function hoverAt(document: DeskDocument, offset: number, { markdown }: Shows): Hover | null {
  const found = hover(document, offset);
  if (found === null) return null;
  const { title, words, rows, span } = found;
  const text = (line: string) => (markdown ? escaped(line) : line);
  const head = markdown ? `**${escaped(title)}**` : title;
  const list = rows.map(([label, said]) =>
    markdown ? `- ${escaped(label)}: ${escaped(said)}` : `${label}: ${said}`,
  );
  return {
    contents: {
      kind: markdown ? MarkupKind.Markdown : MarkupKind.PlainText,
      value: [head, ...words.map(text), ...(list.length > 0 ? [list.join('\n')] : [])].join('\n\n'),
    },
    range: rangeOf(span, document.lines),
  };
}

/** Words as Markdown that shows them as they are; names in backquotes stay so. */
function escaped(text: string): string {
  return text.replace(/[\\*_[\]<>#|~&]/g, '\\$&').replace(/\s+/g, ' ');
}

const symbolKinds: Readonly<Record<OutlineKind, SymbolKind>> = {
  sheet: SymbolKind.File,
  part: SymbolKind.Namespace,
  source: SymbolKind.Key,
  setting: SymbolKind.Field,
  operation: SymbolKind.Function,
  step: SymbolKind.Event,
};

export function symbolsOf(document: DeskDocument): DocumentSymbol[] {
  const symbol = (entry: OutlineEntry): DocumentSymbol => ({
    name: entry.name === '' ? '-' : entry.name,
    ...(entry.detail === null ? {} : { detail: entry.detail }),
    kind: symbolKinds[entry.kind],
    range: rangeOf(entry.span, document.lines),
    selectionRange: rangeOf(entry.nameSpan, document.lines),
    children: entry.children.map(symbol),
  });
  return outline(document).map(symbol);
}
