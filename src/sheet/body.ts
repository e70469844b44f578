import type { Nodes, Parents, Root } from 'mdast';
import type { Kind, KindOperation, SignalWord } from '../kinds/model.ts';
import type { Span } from '../text/index.ts';
import { readHazards, readHeading } from './marks.ts';
import { maskedSource } from './mask.ts';
import type { Operation, Picture, Sheet, Step } from './model.ts';
import { settingId, settingNamed } from './names.ts';
import { ownOperationCalled } from './work-rules.ts';

/** The part of a sheet that the Markdown below the front matter fills. */
export type Body = Pick<
  Sheet,
  'operations' | 'values' | 'states' | 'messages' | 'pictures' | 'prose' | 'directives' | 'html'
>;

const signals: ReadonlySet<string> = new Set<SignalWord>([
  'danger',
  'warning',
  'caution',
  'notice',
]);

type Mutable<T> = { -readonly [K in keyof T]: T[K] extends readonly (infer U)[] ? U[] : T[K] };
type Directive = Extract<Nodes, { name: string; attributes?: unknown }>;

/** Gathers what the Markdown holds in one walk over its tree; `header` says what its marks mean. */
export function readBody(
  root: Root,
  text: string,
  header: Pick<Sheet, 'settings' | 'kind' | 'work'>,
): Body {
  const walk = new BodyWalk(text, header);
  walk.blocks(root, true);
  walk.finish();
  return walk.body;
}

/** A body with nothing in it, to be filled; of a sheet whose work could not be read, all there is. */
export function emptyBody(): Mutable<Body> {
  return {
    operations: [],
    values: [],
    states: [],
    messages: [],
    pictures: [],
    prose: [],
    directives: [],
    html: [],
  };
}

class BodyWalk {
  readonly body = emptyBody();
  readonly #text: string;
  readonly #header: Pick<Sheet, 'settings' | 'kind' | 'work'>;
  readonly #kind: Kind | null;
  readonly #definitions = new Map<string, string>();
  readonly #referring: { readonly index: number; readonly identifier: string }[] = [];
  #steps: Step[] = [];
  #operation: number | null = null;

  constructor(text: string, header: Pick<Sheet, 'settings' | 'kind' | 'work'>) {
    this.#text = text;
    this.#header = header;
    this.#kind = header.kind;
  }

  /** The operation that a heading's words or id call: the sheet's own, or the kind's; null for none. */
  #called(text: string): KindOperation | null {
    const { work } = this.#header;
    const own = work.length === 0 ? null : ownOperationCalled(text, work, this.#kind);
    return own ?? this.#kind?.operationNamed(text) ?? null;
  }

  /** The children of a node that holds blocks. */
  blocks(parent: Parents, top: boolean): void {
    for (const node of parent.children) {
      switch (node.type) {
        case 'heading':
          if (top && node.depth === 2) this.#open(node);
          this.#inline(node, this.#span(node));
          break;
        case 'paragraph':
        case 'tableCell':
          this.#inline(node, this.#span(node));
          break;
        case 'list':
          if (top && node.ordered && this.#operation !== null) {
            const first = node.start ?? 1;
            for (const [i, item] of node.children.entries()) {
              this.#steps.push({ span: this.#span(item), number: first + i });
            }
          }
          this.blocks(node, false);
          break;
        case 'containerDirective':
          this.#container(node);
          this.blocks(node, false);
          break;
        case 'leafDirective':
          this.#unknown(node, 'leaf');
          this.#inline(node, this.#span(node));
          break;
        case 'html':
          this.body.html.push(this.#span(node));
          break;
        case 'definition':
          // The first definition of a name holds, as CommonMark has it.
          if (!this.#definitions.has(node.identifier)) {
            this.#definitions.set(node.identifier, node.url);
          }
          break;
        case 'blockquote':
        case 'listItem':
        case 'table':
        case 'tableRow':
        case 'footnoteDefinition':
          this.blocks(node, false);
          break;
        default:
        // Code, rules and the front matter hold nothing for a sheet.
      }
    }
  }

  /** Ends the last operation and looks up the pictures that are given by reference. */
  finish(): void {
    this.#close(this.#text.length);
    for (const { index, identifier } of this.#referring) {
      const picture = this.body.pictures[index];
      const url = this.#definitions.get(identifier);
      if (picture && url !== undefined) this.body.pictures[index] = { ...picture, url };
    }
  }

  #open(node: Extract<Nodes, { type: 'heading' }>): void {
    const span = this.#span(node);
    this.#close(span.start);
    const first = node.children[0];
    const last = node.children.at(-1);
    const inner =
      first && last
        ? {
            start: first.position ? this.#span(first).start : this.#insideOf(span).start,
            end: last.position ? this.#span(last).end : this.#insideOf(span).end,
          }
        : { start: span.end, end: span.end };
    const { heading, id } = readHeading(node, this.#text, inner);
    const known = (id ? this.#called(id.value) : null) ?? this.#called(heading.value);
    this.#operation = this.body.operations.length;
    this.#steps = [];
    this.body.operations.push({
      index: this.#operation,
      heading,
      id,
      known,
      steps: this.#steps,
      span,
    });
  }

  /** A heading without its signs, for words that the plugin for bare addresses left no place. */
  #insideOf({ start, end }: Span): Span {
    const source = this.#text.slice(start, end);
    const signs = /^#+[ \t]*/.exec(source)?.[0].length ?? 0;
    const line = signs > 0 ? /[ \t]+#+[ \t]*$/ : /[ \t]*(?:\r\n?|\n)[^\r\n]*$/;
    const tail = line.exec(source)?.[0].length ?? 0;
    return { start: start + signs, end: Math.max(start + signs, end - tail) };
  }

  #close(end: number): void {
    const open: Operation | undefined = this.body.operations.at(-1);
    if (!open) return;
    this.body.operations[open.index] = { ...open, span: { start: open.span.start, end } };
  }

  #container(node: Extract<Nodes, { type: 'containerDirective' }>): void {
    const signal = node.name.toLowerCase();
    if (!signals.has(signal)) {
      this.#unknown(node, 'container');
      return;
    }
    const span = this.#span(node);
    this.body.messages.push({
      signal: signal as SignalWord,
      hazards: readHazards(node.attributes, this.#text, span.start, this.#kind),
      span,
      operation: this.#operation,
    });
  }

  #inline(parent: Parents, block: Span): void {
    const children: readonly Nodes[] = parent.children;
    for (let i = 0; i < children.length; i += 1) {
      const node = children[i];
      if (!node) continue;
      if (this.#isPlain(node)) {
        let end = i + 1;
        for (let next = children[end]; next && this.#isPlain(next); next = children[end]) end += 1;
        this.#plain(parent, i, end, block);
        i = end - 1;
        continue;
      }
      switch (node.type) {
        case 'textDirective':
          this.#directive(node, block);
          break;
        case 'image':
          this.#picture({ url: node.url, alt: node.alt ?? '' }, node);
          break;
        case 'imageReference':
          this.#referring.push({
            index: this.body.pictures.length,
            identifier: node.identifier,
          });
          this.#picture({ url: '', alt: node.alt ?? '' }, node);
          break;
        case 'html':
          this.body.html.push(this.#span(node));
          break;
        case 'emphasis':
        case 'strong':
        case 'delete':
        case 'link':
        case 'linkReference':
          this.#inline(node, block);
          break;
        default:
        // Inline code, breaks and footnote marks are no prose.
      }
    }
  }

  #directive(node: Extract<Nodes, { type: 'textDirective' }>, block: Span): void {
    const name = node.name.toLowerCase();
    const span = this.#span(node);
    if (name === 'value') {
      const called = flat(node).trim();
      const setting = settingNamed(called, this.#header);
      const id = setting?.id ?? settingId(called, this.#kind);
      this.body.values.push({ name: called, id, setting, span, operation: this.#operation });
    } else if (name === 'state') {
      this.body.states.push({ text: flat(node).trim(), span, operation: this.#operation });
    } else {
      this.#unknown(node, 'text');
      this.#inline(node, block);
    }
  }

  #unknown(node: Directive, kind: 'text' | 'leaf' | 'container'): void {
    this.body.directives.push({
      name: node.name,
      kind,
      span: this.#span(node),
      operation: this.#operation,
    });
  }

  #picture(picture: Pick<Picture, 'url' | 'alt'>, node: Nodes): void {
    this.body.pictures.push({ ...picture, span: this.#span(node), operation: this.#operation });
  }

  /**
   * Whether a node is text to its reader: text, a directive that is none (the `:30` of `10:30`), or
   * what the plugin for bare addresses made of text, which has no place of its own.
   */
  #isPlain(node: Nodes): boolean {
    if (node.type === 'text' || !node.position) return true;
    if (node.type !== 'textDirective' || node.children.length > 0) return false;
    const { start, end } = this.#span(node);
    if (end - start > node.name.length + 1) return false;
    if (node.name !== 'value' && node.name !== 'state') return true;
    return start > 0 && /[\p{L}\p{N}]/u.test(this.#text.charAt(start - 1));
  }

  /** Puts down children `from` up to `to`, which are plain, as one stretch of prose. */
  #plain(parent: Parents, from: number, to: number, block: Span): void {
    const children: readonly Nodes[] = parent.children;
    const first = children[from];
    const last = children[to - 1];
    const before = children[from - 1];
    const behind = children[to];
    const start = first?.position ? this.#span(first).start : this.#edge(before, parent, 'end');
    const end = last?.position ? this.#span(last).end : this.#edge(behind, parent, 'start');
    let value = '';
    for (const node of children.slice(from, to)) {
      value += node.type === 'textDirective' ? `:${node.name}` : flat(node);
    }
    if (end <= start) return;
    this.body.prose.push({
      text: maskedSource(this.#text.slice(start, end), value),
      span: { start, end },
      operation: this.#operation,
      block,
    });
  }

  #edge(neighbor: Nodes | undefined, parent: Parents, side: 'start' | 'end'): number {
    if (neighbor) return this.#span(neighbor)[side];
    return this.#span(parent)[side === 'end' ? 'start' : 'end'];
  }

  #span(node: Nodes): Span {
    const start = node.position?.start.offset ?? 0;
    return { start, end: node.position?.end.offset ?? start };
  }
}

/** The text of a node and all below it. */
function flat(node: Nodes): string {
  if ('value' in node) return node.value;
  if (!('children' in node)) return '';
  let text = '';
  for (const child of node.children) text += flat(child);
  return text;
}
