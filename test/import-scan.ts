import { readdirSync, readFileSync } from 'node:fs';
import { posix } from 'node:path';
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

/** Names that a file takes from another, or hands on from it. */
export interface NamedImport {
  /** From the project's root, with `/`. */
  readonly target: string;
  /** As the other file calls them; `*` for all, or where the text does not say which. */
  readonly names: readonly string[];
}

/** What a file takes by name from files of the project, statically, dynamically or as a type. */
export function namedImportsOf(file: SourceFile): readonly NamedImport[] {
  const found: NamedImport[] = [];
  const tree = [...nodes(file)];
  const add = (source: unknown, names: readonly string[]): void => {
    const from = isNode(source) ? source.value : null;
    if (typeof from !== 'string' || !from.startsWith('.')) return;
    found.push({ target: posix.join(posix.dirname(file.path), from), names });
  };
  for (const [node] of tree) {
    if (node.type === 'ImportDeclaration') {
      add(
        node.source,
        list(node.specifiers).map((each) =>
          each.type === 'ImportSpecifier' ? nameIn(each.imported) : '*',
        ),
      );
    } else if (node.type === 'ExportNamedDeclaration') {
      add(
        node.source,
        list(node.specifiers).map((each) => nameIn(each.local)),
      );
    } else if (node.type === 'ExportAllDeclaration') add(node.source, ['*']);
    else if (node.type === 'TSImportType') {
      add(node.source, [isNode(node.qualifier) ? nameIn(node.qualifier) : '*']);
    } else if (node.type === 'VariableDeclarator') {
      const call = awaited(node.init);
      if (call !== null) add(call.source, namesTaken(node.id, tree));
    }
  }
  return found;
}

/** The names that a file exports, declared there or handed on; `*` for all of another file. */
export function exportsOf(file: SourceFile): readonly string[] {
  const names: string[] = [];
  for (const [node] of nodes(file)) {
    if (node.type === 'ExportAllDeclaration') names.push('*');
    if (node.type !== 'ExportNamedDeclaration') continue;
    for (const each of list(node.specifiers)) names.push(nameIn(each.exported));
    const declared = node.declaration;
    if (!isNode(declared)) continue;
    if (isNode(declared.id)) names.push(nameIn(declared.id));
    for (const each of list(declared.declarations)) names.push(nameIn(each.id));
  }
  return names;
}

/** Whether a file only hands on what stands in others. */
export function onlyHandsOn(file: SourceFile): boolean {
  const [top] = nodes(file);
  return list(top?.[0].body).every((each) => isNode(each.source) && each.type.startsWith('Export'));
}

/** What a variable that holds a whole file is asked for: `{ a }` of it, or every `held.a` after. */
function namesTaken(
  id: unknown,
  tree: readonly (readonly [SyntaxNode, SyntaxNode | null])[],
): readonly string[] {
  if (!isNode(id)) return ['*'];
  if (id.type === 'ObjectPattern') return list(id.properties).map((each) => nameIn(each.key));
  return tree
    .filter(([node]) => node.type === 'MemberExpression' && nameIn(node.object) === nameIn(id))
    .map(([node]) => nameIn(node.property));
}

/** The `import(...)` that a value waits for; null for any other value. */
function awaited(value: unknown): SyntaxNode | null {
  if (!isNode(value)) return null;
  const inner = value.type === 'AwaitExpression' ? value.argument : value;
  return isNode(inner) && inner.type === 'ImportExpression' ? inner : null;
}

function list(value: unknown): readonly SyntaxNode[] {
  return Array.isArray(value) ? value.filter(isNode) : [];
}

function nameIn(value: unknown): string {
  return isNode(value) && typeof value.name === 'string' ? value.name : '*';
}
