import { type Document, parseDocument } from 'yaml';
import type { Span } from './span.ts';
import type { PlacedNode } from './yaml-nodes.ts';
import { type Both, YamlWalk } from './yaml-walk.ts';
import { explainYamlError } from './yaml-words.ts';

export * from './yaml-nodes.ts';

/** Bounds on a YAML text; whatever lies beyond is not read and said to be so. */
export interface YamlLimits {
  /** UTF-16 units. */
  readonly size: number;
  readonly depth: number;
  readonly nodes: number;
  readonly aliases: number;
}

/** Far above any sheet or kind of unit, far below what slows a machine down. */
export const usualYamlLimits: YamlLimits = {
  size: 256 * 1024,
  depth: 20,
  nodes: 20_000,
  aliases: 10,
};

export interface YamlProblem {
  readonly kind: 'syntax' | 'limits';
  readonly span: Span;
  readonly message: string;
  readonly fix: string | null;
  /** What may be meant in place of the words at `span`. */
  readonly write?: readonly string[];
  /** The other place, e.g. the first of two equal keys. */
  readonly related: { readonly span: Span; readonly label: string } | null;
}

/** A YAML text with every value's place, and as plain values for a schema. */
export interface YamlRead {
  /** Null for a text without a value. */
  readonly root: PlacedNode | null;
  /** Objects, arrays, strings, numbers, booleans and nulls; undefined for a text without a value. */
  readonly value: unknown;
  readonly problems: readonly YamlProblem[];
  /** False where a fault may have put values in the wrong place: a schema's word means little then. */
  readonly sound: boolean;
}

/**
 * Reads a YAML 1.2 text (core schema). Never throws: faults come back as problems, and what could be
 * read comes back beside them. `baseOffset` is where the text starts in its file; all spans count
 * from the file's start.
 */
export function readYaml(
  text: string,
  baseOffset = 0,
  limits: YamlLimits = usualYamlLimits,
): YamlRead {
  const walk = new YamlWalk(text, baseOffset, limits);
  if (text.length > limits.size) {
    const size = `${text.length} characters of YAML; at most ${limits.size} are read`;
    walk.limit('size', { start: 0, end: 0 }, `this has ${size}`);
    return result(walk, null, false);
  }
  let doc: Document.Parsed;
  try {
    doc = parseDocument(text, {
      version: '1.2',
      schema: 'core',
      prettyErrors: false,
      // Doubled keys are found in the walk, with both places and in less than quadratic time.
      uniqueKeys: false,
      logLevel: 'error',
    });
  } catch (error) {
    // The parser recurses; a text that nests deep enough empties the stack. Whatever else it throws
    // is about this text too, and nothing that its writer can be told more about.
    const message = error instanceof RangeError ? tooDeep : 'this cannot be read as YAML';
    walk.limit('depth', { start: 0, end: 0 }, message);
    return result(walk, null, false);
  }
  const first = doc.errors[0];
  // What follows the first error is most often its echo.
  if (first && first.code !== 'RESOURCE_EXHAUSTION') {
    walk.fault(explainYamlError(first, text, doc));
  }
  if (doc.errors.some(({ code }) => code === 'RESOURCE_EXHAUSTION')) {
    // How far the parser came is a matter of its stack: nothing of that is told, or kept.
    walk.limit('depth', { start: 0, end: 0 }, tooDeep);
    return result(walk, null, false);
  }
  const directive = /^\s*(%.*)/.exec(text)?.[1];
  if (directive) {
    const start = text.indexOf('%');
    walk.fault({
      span: { start, end: start + directive.length },
      message: 'a line that starts with % changes how YAML is read',
      fix: 'take the line out, or quote the value',
    });
  }
  const both = doc.contents
    ? walk.walk(doc.contents, 0, { of: 'the value', isEntry: false })
    : null;
  return result(walk, both, !first);
}

const tooDeep = 'brackets, lists or keys are nested too deep to be read';

function result(walk: YamlWalk, both: Both | null, sound: boolean): YamlRead {
  walk.problems.sort((a, b) => a.span.start - b.span.start || a.span.end - b.span.end);
  return {
    root: both?.node ?? null,
    value: both?.plain,
    problems: walk.problems,
    sound: sound && !walk.cut,
  };
}
