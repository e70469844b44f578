import {
  isAlias,
  isMap,
  isScalar,
  type ParsedNode,
  type Scalar,
  type YAMLMap,
  type YAMLSeq,
} from 'yaml';
import type { Span } from './span.ts';
import type { YamlFault } from './yaml-fault.ts';
import type { PlacedEntry, PlacedNode } from './yaml-nodes.ts';
import type { YamlLimits, YamlProblem } from './yaml-places.ts';
import { swallowedValue } from './yaml-unclosed.ts';
import { tagFault } from './yaml-words.ts';

/** A text that is wrong in more ways than these is not YAML; nobody reads on. */
const mostProblems = 50;

export interface Both {
  readonly node: PlacedNode;
  readonly plain: unknown;
}

/** What a value is called in messages: that of a key, or an entry of its list, at whatever depth. */
interface Told {
  /** `` `value` ``. */
  readonly of: string;
  readonly isEntry: boolean;
}

function toldOf({ of, isEntry }: Told): string {
  return isEntry ? `an entry of ${of}` : of;
}

/** Turns the parser's nodes into placed ones and plain values, and says what is wrong on the way. */
export class YamlWalk {
  readonly #text: string;
  readonly #base: number;
  readonly #limits: YamlLimits;
  readonly problems: YamlProblem[] = [];
  readonly #anchors = new Map<string, ParsedNode>();
  readonly #open = new Set<ParsedNode>();
  readonly #said = new Set<string>();
  #nodes = 0;
  #aliases = 0;

  /** Whether some bound was met, so that a part was not read. */
  get cut(): boolean {
    return this.#said.size > 0;
  }

  constructor(text: string, base: number, limits: YamlLimits) {
    this.#text = text;
    this.#base = base;
    this.#limits = limits;
  }

  walk(node: ParsedNode, depth: number, what: Told): Both {
    this.#nodes += 1;
    if (this.#nodes > this.#limits.nodes) {
      this.limit('nodes', place(node), `there are more than ${this.#limits.nodes} values here`);
      return this.#nothing(node);
    }
    if (depth > this.#limits.depth) {
      this.limit(
        'depth',
        place(node),
        `values are nested more than ${this.#limits.depth} deep here`,
      );
      return this.#nothing(node);
    }
    if (isAlias(node)) return this.#alias(node.source, node, depth, what);
    if (node.anchor !== undefined) this.#anchors.set(node.anchor, node);
    if (node.tag !== undefined) this.#tag(node);
    if (isScalar(node)) return this.#scalar(node, what);
    this.#open.add(node);
    const both = isMap(node)
      ? this.#map(node, depth)
      : this.#list(node as YAMLSeq.Parsed, depth, what);
    this.#open.delete(node);
    return both;
  }

  #map(node: YAMLMap.Parsed, depth: number): Both {
    const entries = new Map<string, PlacedEntry>();
    const plain: Record<string, unknown> = {};
    for (const pair of node.items) {
      const key: ParsedNode = pair.key;
      if (!isScalar(key) || key.source === undefined || (key.value === null && key.source === '')) {
        this.fault({
          span: keyPlace(key),
          message: 'a key has to be one word or text',
          fix: 'put a key before the colon, or the text in quotes',
        });
        continue;
      }
      const name = key.source;
      const span = this.#span(inside(key, this.#text));
      const value = pair.value
        ? this.walk(pair.value, depth + 1, { of: `\`${name}\``, isEntry: false })
        : this.#nothing(key);
      const before = entries.get(name);
      if (before) {
        this.#add({
          kind: 'syntax',
          span,
          message: `\`${name}\` is written twice in the same place; only the first is read`,
          fix: 'take one of them out',
          related: { span: before.key.span, label: 'the first' },
        });
        continue;
      }
      entries.set(name, { key: { text: name, span }, value: value.node });
      if (name === '__proto__') {
        Object.defineProperty(plain, name, {
          value: value.plain,
          enumerable: true,
          writable: true,
        });
      } else plain[name] = value.plain;
    }
    return { node: { kind: 'map', span: this.#span(place(node)), entries }, plain };
  }

  #list(node: YAMLSeq.Parsed, depth: number, { of }: Told): Both {
    const what = { of, isEntry: true };
    const items: PlacedNode[] = [];
    const plain: unknown[] = [];
    for (const item of node.items) {
      // A flow list may hold pairs, `[a: b]`: each is a mapping of one key.
      if (isPair(item)) {
        this.fault({
          span: place(item.key),
          message: 'a `key: value` stands in a list',
          fix: 'put it in { }, or in quotes if it is one text',
        });
        continue;
      }
      const both = this.walk(item, depth + 1, what);
      items.push(both.node);
      plain.push(both.plain);
    }
    return { node: { kind: 'list', span: this.#span(place(node)), items }, plain };
  }

  #scalar(node: Scalar.Parsed, what: Told): Both {
    const value: unknown = node.value;
    const text = node.source;
    if (value === null || value === undefined) {
      if (text === '') {
        const eaten = swallowedValue(this.#text, node.range[0], toldOf(what));
        if (eaten) this.fault(eaten);
      }
      return this.#nothing(node);
    }
    const plain = typeof value === 'number' || typeof value === 'boolean' ? value : String(value);
    return {
      node: {
        kind: 'scalar',
        span: this.#span(inside(node, this.#text)),
        text,
        value: plain,
        quoted: isQuoted(node),
      },
      plain,
    };
  }

  #alias(name: string, node: ParsedNode, depth: number, what: Told): Both {
    const span = place(node);
    this.#aliases += 1;
    if (this.#aliases > this.#limits.aliases) {
      this.limit(
        'aliases',
        span,
        `there are more than ${this.#limits.aliases} aliases (\`*${name}\`) here`,
      );
      return this.#nothing(node);
    }
    const target = this.#anchors.get(name);
    if (!target) {
      const text = this.#text.slice(span.start, span.end);
      this.fault({
        span,
        message: 'a value cannot start with * in YAML unless it is quoted',
        fix: `quote it: '${text}'`,
      });
      return this.#nothing(node);
    }
    if (this.#open.has(target)) {
      this.limit('aliases', span, `\`*${name}\` stands inside what it stands for`);
      return this.#nothing(node);
    }
    return this.walk(target, depth, what);
  }

  #tag(node: ParsedNode): void {
    let start = Math.max(this.#text.lastIndexOf('!', node.range[0]), 0);
    while (start > 0 && this.#text.charCodeAt(start - 1) === 33) start -= 1;
    const line = this.#text.slice(start, node.range[1]).split(/[\r\n]/, 1)[0] ?? '';
    const fault = tagFault({ start, end: start + line.trimEnd().length }, this.#text);
    // The parser itself has spoken of a tag that it does not know.
    if (!this.problems.some((problem) => problem.message === fault.message)) this.fault(fault);
  }

  #nothing(node: ParsedNode): Both {
    const { start, end } = place(node);
    const empty = isScalar(node) && node.value === null ? end : start;
    return { node: { kind: 'null', span: this.#span({ start, end: empty }) }, plain: null };
  }

  fault(fault: YamlFault): void {
    const { span, ...said } = fault;
    this.#add({ kind: 'syntax', span: this.#span(span), ...said, related: null });
  }

  #add(problem: YamlProblem): void {
    if (this.problems.length < mostProblems) this.problems.push(problem);
  }

  limit(name: string, span: Span, message: string): void {
    if (this.#said.has(name)) return;
    this.#said.add(name);
    this.problems.push({
      kind: 'limits',
      span: this.#span(span),
      message,
      fix: null,
      related: null,
    });
  }

  /** The one place where offsets into the YAML text become offsets into the file. */
  #span(span: Span): Span {
    const start = Math.max(0, Math.min(span.start, this.#text.length));
    const end = Math.max(start, Math.min(span.end, this.#text.length));
    return { start: start + this.#base, end: end + this.#base };
  }
}

function isPair(item: unknown): item is { readonly key: ParsedNode } {
  return typeof item === 'object' && item !== null && !('range' in item) && 'key' in item;
}

function isQuoted(node: Scalar.Parsed): boolean {
  return node.type === 'QUOTE_DOUBLE' || node.type === 'QUOTE_SINGLE';
}

function place(node: ParsedNode): Span {
  return { start: node.range[0], end: node.range[1] };
}

/** The place of a key; of one that is not there, its colon. */
function keyPlace(key: ParsedNode): Span {
  const { start, end } = place(key);
  return { start, end: Math.max(end, start + 1) };
}

/** The place of a scalar without its quotes and, for a block scalar, without its last line end. */
function inside(node: Scalar.Parsed, text: string): Span {
  let [start, end] = node.range;
  if (isQuoted(node)) {
    start += 1;
    if (end > start && text.charCodeAt(end - 1) === text.charCodeAt(start - 1)) end -= 1;
  } else {
    while (end > start && (text.charCodeAt(end - 1) === 10 || text.charCodeAt(end - 1) === 13))
      end -= 1;
  }
  return { start, end: Math.max(start, end) };
}
