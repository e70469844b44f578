import { readdirSync, readFileSync } from 'node:fs';
import { parseSync } from 'vite';

/** The project's own folder. */
export const root = new URL('../', import.meta.url);

/** A node of a syntax tree. */
export interface SyntaxNode {
  readonly type: string;
  readonly start: number;
  readonly [key: string]: unknown;
}

/** A file of `src/`. */
export interface SourceFile {
  /** From the project's root, with `/`. */
  readonly path: string;
  readonly room: string;
  readonly text: string;
}

/** All files of `src/`, in the order of their paths. */
export function sourceFiles(): readonly SourceFile[] {
  return readdirSync(new URL('src/', root), { recursive: true, encoding: 'utf8' })
    .map((name) => `src/${name.replaceAll('\\', '/')}`)
    .filter((path) => path.endsWith('.ts'))
    .map((path) => ({
      path,
      room: path.split('/')[1] ?? '',
      text: readFileSync(new URL(path, root), 'utf8'),
    }))
    .sort((a, b) => (a.path < b.path ? -1 : 1));
}

/** Whether a value of a syntax tree is a node. */
export function isNode(value: unknown): value is SyntaxNode {
  return (
    typeof value === 'object' && value !== null && typeof Reflect.get(value, 'type') === 'string'
  );
}

/** Every node of a file's syntax tree with the node that holds it. */
export function* nodes(file: SourceFile): Generator<readonly [SyntaxNode, SyntaxNode | null]> {
  const { program, errors } = parseSync(file.path, file.text, { lang: 'ts' });
  if (errors.length > 0) throw new Error(`${file.path} cannot be parsed: ${errors[0]?.message}`);
  const waiting: [unknown, SyntaxNode | null][] = [[program, null]];
  for (let next = waiting.pop(); next !== undefined; next = waiting.pop()) {
    const [value, parent] = next;
    if (Array.isArray(value)) for (const item of value) waiting.push([item, parent]);
    else if (isNode(value)) {
      yield [value, parent];
      for (const child of Object.values(value)) waiting.push([child, value]);
    }
  }
}

/** What a file imports, statically, dynamically or as a type; null for an import of no literal. */
export function importsOf(file: SourceFile): readonly (string | null)[] {
  const found: (string | null)[] = [];
  for (const [node] of nodes(file)) {
    const imports =
      /^(ImportDeclaration|ExportAllDeclaration|ImportExpression|TSImportType)$/.test(node.type) ||
      (node.type === 'ExportNamedDeclaration' && node.source !== null);
    if (!imports) continue;
    const source = node.source;
    const value = isNode(source) ? source.value : null;
    found.push(typeof value === 'string' ? value : null);
  }
  return found;
}
