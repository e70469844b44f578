import type { Cure, Edit } from '../checks/index.ts';
import { blank } from '../import/index.ts';
import { ownRules } from '../order/index.ts';
import type { Span } from '../text/index.ts';
import { ownSpan } from './document.ts';
import {
  addItem,
  addKey,
  below,
  entrySpan,
  type Holder,
  holders,
  quoted,
  takeOut,
} from './front-edit.ts';
import { lineEnd, lineStart, withLineEnds } from './lines.ts';
import type { DeskDocument } from './model.ts';
import { placesIn } from './names.ts';
import { newOperation, newSetting } from './new-parts.ts';
import { addCaution, addStep, liftBlock, markStep, moveSection } from './work-edit.ts';

/** A cure as edits of the sheet's own file, and as an instruction. */
export interface MadeCure {
  readonly title: string;
  readonly edits: readonly Edit[];
}

/** The edits that a cure stands for; null where it is about another file, or where it cannot be told how it is made. */
export function makeCure(document: DeskDocument, cure: Cure): MadeCure | null {
  const made = madeIn(document, cure);
  if (made === null || made.edits.length === 0) return null;
  const isChange = made.edits.some(
    ({ span, text }) => document.text.slice(span.start, span.end) !== text,
  );
  if (!isChange) return null;
  const edits = made.edits.map(({ span, text }) => ({
    span,
    text: withLineEnds(text, document.text),
  }));
  return { ...made, edits };
}

function madeIn(document: DeskDocument, cure: Cure): MadeCure | null {
  const at = cure.at === undefined ? null : ownSpan(document, cure.at);
  const { text, sheet } = document;
  if ('under' in cure) return underKeys(document, cure.under, cure.as, cure.item === true);
  if ('setting' in cure) {
    return one(`add the setting \`${cure.setting}\``, newSetting(document, cure.setting));
  }
  if ('source' in cure) {
    const made = underKeys(document, ['sources', cure.source], `{ title: ${blank} }`, false);
    return made && { ...made, title: `list the source \`${cure.source}\`` };
  }
  if ('operation' in cure) {
    const label = kindOf(document)?.operations.get(cure.operation)?.label ?? cure.operation;
    return one(`add \`## ${label}\``, newOperation(document, cure.operation));
  }
  if (at === null || cure.at === undefined) return null;
  if ('write' in cure) {
    return one(`write \`${shortened(cure.write)}\``, {
      span: at,
      text: asScalar(document, at, cure.write),
    });
  }
  if ('rename' in cure) {
    const setting = [...sheet.settings.values()].find(
      ({ name }) => name.span.start === cure.at?.start,
    );
    if (setting === undefined) return null;
    const places = placesIn(document, { what: 'setting', setting, span: at });
    const edits = places.map(({ span }) => ({ span, text: cure.rename }));
    return many(`write \`${cure.rename}\``, edits);
  }
  if ('before' in cure) {
    const { before, behind } = cure;
    const words = text.slice(at.start, at.end);
    const written = `${before}${words}${behind}`;
    return one(`write \`${shortened(written.trim())}\``, { span: at, text: written });
  }
  if ('takeOut' in cure) return takenOut(document, at, cure.takeOut, cure.of);
  if ('say' in cure) return saying(document, at, cure.say, cure.as);
  if ('step' in cure) {
    const operation = operationOf(document, cure.at);
    if (operation === null) return null;
    return many(`add the step “${cure.step}”`, addStep(document, operation, at, cure));
  }
  if ('mark' in cure)
    return one(`mark this step: \`${cure.mark}\``, markStep(document, at, cure.mark));
  if ('caution' in cure) {
    const operation = operationOf(document, cure.at);
    const kind = kindOf(document);
    if (operation === null || kind === null) return null;
    const label = kind.hazards.get(cure.caution)?.label.toLowerCase() ?? cure.caution;
    return one(
      `add the message about ${label}`,
      addCaution(document, operation, kind, cure.caution),
    );
  }
  if ('move' in cure) {
    const operation = operationOf(document, cure.at);
    const beside = sheet.operations.find(({ span }) => span.start === cure.beside.start);
    if (operation === null || beside === undefined) return null;
    const title = `move \`## ${operation.heading.value}\` ${cure.move} \`## ${beside.heading.value}\``;
    return many(title, moveSection(document, operation, cure.move, beside));
  }
  if ('lift' in cure) {
    const to = ownSpan(document, cure.lift);
    return to && many('move it up', liftBlock(text, at, to));
  }
  const other = ownSpan(document, cure.exchange);
  if (other === null) return null;
  const words = (span: Span) => text.slice(span.start, span.end);
  return many(`change \`${words(at)}\` and \`${words(other)}\` about`, [
    { span: at, text: words(other) },
    { span: other, text: words(at) },
  ]);
}

function one(title: string, edit: Edit | null): MadeCure | null {
  return edit && { title, edits: [edit] };
}

function many(title: string, edits: readonly Edit[] | null): MadeCure | null {
  return edits && { title, edits };
}

function shortened(text: string): string {
  const [line = ''] = text.split('\n', 1);
  return line.length > 70 || line !== text ? `${line.slice(0, 69)}…` : line;
}

function kindOf({ sheet }: DeskDocument) {
  return sheet.kind === null ? null : ownRules(sheet, sheet.kind).kind;
}

/** The operation that a place of the sheet's text stands in; null for one of a base. */
function operationOf(document: DeskDocument, at: Span) {
  const found = document.sheet.operations.find(
    ({ span }) => at.start >= span.start && at.start < span.end,
  );
  return found && ownSpan(document, found.span) !== null ? found : null;
}

function chainAt({ sheet }: DeskDocument, at: Span): readonly Holder[] {
  return sheet.front === null ? [] : holders(sheet.front, at);
}

/** Words as they may stand there: in the front matter a text that YAML would read as something else is quoted. */
function asScalar(document: DeskDocument, at: Span, words: string): string {
  const chain = chainAt(document, at);
  const last = chain.at(-1);
  if (last === undefined) return words;
  if (last.kind === 'entry' && at.end <= last.entry.key.span.end) return words;
  const { text } = document;
  const isQuoted = quoted(text, at).end !== at.end;
  if (isQuoted)
    return text[at.end] === '"' ? JSON.stringify(words).slice(1, -1) : words.replaceAll("'", "''");
  const inBrackets = chain.some(({ of }) => /[[{]/.test(text[of.span.start] ?? ''));
  const isPlain = /^[^\s,[\]{}#&*!|>'"%@`-][^\n]*$/.test(words) && !/: |\s#|:$/.test(words);
  // A whole value that is put in its place may be written as the cure has it.
  const isWhole = /^[[{"']/.test(words);
  return isWhole || (isPlain && !(inBrackets && /[,[\]{}]/.test(words)))
    ? words
    : JSON.stringify(words);
}

function takenOut(
  document: DeskDocument,
  at: Span,
  what: 'entry' | 'words',
  of?: string,
): MadeCure | null {
  const { text } = document;
  if (what === 'words') {
    const start = lineStart(text, at.start);
    const end = lineEnd(text, at.end);
    const isWhole =
      text.slice(start, at.start).trim() === '' && text.slice(at.end, end).trim() === '';
    const blanks = /[ \t]*$/.exec(text.slice(0, at.start))?.[0].length ?? 0;
    const span = isWhole ? { start, end } : { start: at.start - blanks, end: at.end };
    return one(`take \`${shortened(text.slice(at.start, at.end))}\` out`, { span, text: '' });
  }
  let chain = chainAt(document, at);
  const holder = chain.at(-1);
  if (of !== undefined && holder?.kind === 'entry' && holder.entry.value.kind === 'list') {
    const list = holder.entry.value;
    const node = list.items.find((item) => item.kind === 'scalar' && item.text === of);
    if (node === undefined) return null;
    chain = [...chain, { kind: 'item', node, of: list }];
  }
  // Of an item that is made of keys the whole goes, and not the one key that the finding is about.
  const item = chain.findLastIndex(({ kind }) => kind === 'item');
  const isInItem = item !== -1 && chain[0]?.kind === 'entry' && chain[0].key === 'accept';
  const cut = isInItem ? chain.slice(0, item + 1) : chain;
  const last = cut.at(-1);
  if (last === undefined) return null;
  const shown =
    last.kind === 'entry'
      ? `\`${last.key}\``
      : `\`${shortened(text.slice(last.node.span.start, last.node.span.end))}\``;
  return one(`take ${shown} out`, takeOut(text, cut));
}

/** A key beside what stands at a place: among the keys below the name there, or those around the value there. */
function saying(document: DeskDocument, at: Span, key: string, as: string | null): MadeCure | null {
  const { text } = document;
  const title = as === null ? `add \`${key}:\`` : `add \`${key}: ${shortened(as)}\``;
  const value = as ?? blank;
  const chain = chainAt(document, at);
  const last = chain.at(-1);
  if (
    last?.kind === 'entry' &&
    at.start >= last.entry.key.span.start &&
    at.end <= last.entry.key.span.end
  ) {
    const { value: node } = last.entry;
    if (node.kind === 'map') return one(title, addKey(text, node, key, value));
    if (node.kind === 'null') {
      const end = last.entry.key.span.end + 1;
      return one(title, { span: { start: end, end }, text: ` { ${key}: ${value} }` });
    }
  }
  // The place may be the whole of the keys: an entry under `but:`, `accept:`.
  if (last?.kind === 'item' && last.node.kind === 'map' && last.node.span.start === at.start) {
    return one(title, addKey(text, last.node, key, value));
  }
  const map = chain.findLast(({ kind }) => kind === 'entry');
  return map?.kind === 'entry' ? one(title, addKey(text, map.of, key, value)) : null;
}

/** A key under a path of keys from the top, each made where it is missing; or an item of the list there. */
export function underKeys(
  { sheet, text }: DeskDocument,
  path: readonly string[],
  as: string | null,
  isItem: boolean,
): MadeCure | null {
  const { front, frontMatter } = sheet;
  if (front === null || frontMatter === null) return null;
  const value = as ?? blank;
  const key = path.at(-1) ?? '';
  const title = isItem
    ? `add \`${value}\` to \`${key}:\``
    : as === null
      ? `add \`${key}:\``
      : `add \`${key}: ${shortened(as)}\``;
  let map = front;
  for (const [index, step] of path.entries()) {
    const entry = map.entries.get(step);
    const isLast = index === path.length - 1;
    if (entry === undefined) {
      const rest = path.slice(index + 1);
      const end = isItem ? `[${value}]` : value;
      if (rest.length === 0) {
        // What is said of the sheet stands before what is said of its settings.
        const settings = index === 0 ? front.entries.get('settings') : undefined;
        if (settings === undefined) return one(title, addKey(text, map, step, end));
        const start = lineStart(text, settings.key.span.start);
        return one(title, below(text, start, `${step}: ${end}`));
      }
      const lines = rest.map((each, depth) => `${'  '.repeat(depth + 1)}${each}:`).join('\n');
      const start = frontMatter.end;
      return one(title, below(text, start, `${step}:\n${lines} ${end}`));
    }
    const { value: node } = entry;
    if (isLast) {
      if (!isItem) return null;
      if (node.kind === 'list') return one(title, addItem(text, node, value));
      const { end } = entrySpan(entry);
      if (node.kind === 'null')
        return one(title, { span: { start: entry.key.span.end + 1, end }, text: ` [${value}]` });
      return null;
    }
    if (node.kind === 'null') {
      const start = lineEnd(text, entry.key.span.end);
      const lines = path.slice(index + 1).map((each, depth) => `${'  '.repeat(depth + 1)}${each}:`);
      return one(title, below(text, start, `${lines.join('\n')} ${isItem ? `[${value}]` : value}`));
    }
    if (node.kind !== 'map') return null;
    map = node;
  }
  return null;
}
