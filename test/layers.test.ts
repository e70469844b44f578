import { readdirSync } from 'node:fs';
import { builtinModules } from 'node:module';
import { posix } from 'node:path';
import { describe, expect, test } from 'vitest';
import {
  importsOf,
  isNode,
  nodes,
  root,
  type SourceFile,
  type SyntaxNode,
  sourceFiles,
} from './import-scan.ts';

/**
 * Who may import what: a room may import itself, the rooms of earlier lines, and never a later one
 * or a neighbor on its own line. `generated` is data that everyone may read; nothing imports `build`.
 */
const floors: readonly (readonly string[])[] = [
  ['text'],
  ['quantity'],
  ['gauges'],
  ['kinds'],
  ['sheet'],
  ['order', 'relations', 'conformance', 'compare', 'concordance'],
  ['checks', 'import'],
  ['report', 'press'],
  ['project'],
  ['cli'],
];

/** Rooms beside the floors: made by the build, or the build itself. */
const beside = ['generated', 'build'];

/** The rooms that may touch files, console, process, clock and chance. */
const outward: ReadonlySet<string> = new Set(['project', 'cli', 'build']);

function floorOf(room: string): number {
  return floors.findIndex((rooms) => rooms.includes(room));
}

/** Why a file may not have an import; null where it may. */
function fault(file: SourceFile, imported: string | null): string | null {
  if (imported === null) return `${file.path} imports what cannot be read from its text`;
  if (!imported.startsWith('.')) {
    const builtIn = imported.startsWith('node:') || builtinModules.includes(imported);
    return builtIn && !outward.has(file.room) ? `${file.path} imports ${imported}` : null;
  }
  const target = posix.join(posix.dirname(file.path), imported);
  const room = target.split('/')[1] ?? '';
  if (!target.startsWith('src/')) {
    return outward.has(file.room) ? null : `${file.path} imports ${target}, outside src`;
  }
  if (room === file.room || room === 'generated') return null;
  if (floorOf(room) === -1) return `${file.path} imports ${room}`;
  // What the build made may name the types of any room; it has no code of its own.
  if (file.room === 'generated') return null;
  return floorOf(room) < floorOf(file.room)
    ? null
    : `${file.path} imports ${target}, which is no lower`;
}

/** What a node does that only the outward rooms may; null for anything else. */
function reach(node: SyntaxNode, parent: SyntaxNode | null): string | null {
  if (node.type === 'Identifier') {
    const name = String(node.name);
    if (!['console', 'process', 'globalThis', 'performance', 'require', 'fetch'].includes(name)) {
      return null;
    }
    // A key or a property of that name is something else.
    const isKey = parent?.key === node || (parent?.property === node && parent.computed !== true);
    return isKey ? null : name;
  }
  if (node.type === 'NewExpression' && nameOf(node.callee) === 'Date') {
    return (node.arguments as unknown[]).length === 0 ? 'new Date()' : null;
  }
  if (node.type === 'CallExpression' && nameOf(node.callee) === 'Date') return 'Date()';
  if (node.type === 'MemberExpression') {
    const member = `${nameOf(node.object)}.${nameOf(node.property)}`;
    return member === 'Date.now' || member === 'Math.random' ? member : null;
  }
  return null;
}

function nameOf(value: unknown): string | null {
  return isNode(value) && value.type === 'Identifier' ? String(value.name) : null;
}

function reachesOf(file: SourceFile): readonly string[] {
  if (outward.has(file.room)) return [];
  const found: string[] = [];
  for (const [node, parent] of nodes(file)) {
    const what = reach(node, parent);
    if (what === null) continue;
    const line = file.text.slice(0, node.start).split('\n').length;
    found.push(`${file.path}:${line} uses ${what}`);
  }
  return found;
}

const files = sourceFiles();

describe('the layers', () => {
  test('the rule and the folders of src are the same', () => {
    const rooms = readdirSync(new URL('src/', root), { withFileTypes: true })
      .map((entry) => (entry.isDirectory() ? entry.name : `${entry.name}, which is no folder`))
      .sort();
    expect(rooms).toEqual([...floors.flat(), ...beside].sort());
  });

  test('no room imports a higher one, a neighbor or the build', () => {
    const faults = files.flatMap((file) =>
      importsOf(file)
        .map((imported) => fault(file, imported))
        .filter((text) => text !== null),
    );
    expect(faults).toEqual([]);
  });

  test('only project and cli reach for files, console, process, clock and chance', () => {
    expect(files.flatMap((file) => reachesOf(file))).toEqual([]);
  });
});

describe('the rule itself', () => {
  const file = (path: string, text: string): SourceFile => ({
    path,
    room: path.split('/')[1] ?? '',
    text,
  });

  test.each([
    ["import { a } from '../cli/main.ts';"],
    ["import type { A } from '../cli/main.ts';"],
    ["export * from '../report/index.ts';"],
    ["export { a } from '../report/index.ts';"],
    ["const a = await import('../project/project.ts');"],
    ["type A = import('../press/paper.ts').A;"],
    ["import '../build/tables.ts';"],
    ["import { a } from '../nowhere/a.ts';"],
    ["import { a } from '../../test/a.ts';"],
    ["import { readFileSync } from 'fs';"],
    ["import { join } from 'node:path';"],
    ['const a = await import(name);'],
  ])('finds %s in a check', (text) => {
    const source = file('src/checks/a.ts', text);
    expect(importsOf(source).map((imported) => fault(source, imported))).toEqual([
      expect.stringContaining('src/checks/a.ts imports'),
    ]);
  });

  test.each([
    ["import { a } from '../text/a.ts';"],
    ["import { a } from './b.ts';"],
    ["import { a } from '../generated/a.ts';"],
    ["import { a } from 'yaml';"],
    ["// import { a } from '../cli/main.ts';\nconst text = \"import '../cli/main.ts'\";"],
  ])('lets %s pass in a check', (text) => {
    const source = file('src/checks/a.ts', text);
    for (const imported of importsOf(source)) expect(fault(source, imported)).toBeNull();
  });

  test('keeps neighbors apart', () => {
    const source = file('src/report/a.ts', "import { a } from '../press/a.ts';");
    expect(fault(source, importsOf(source)[0] ?? null)).toContain('which is no lower');
  });

  test.each([
    ['console.log(1);', 'console'],
    ['const home = process.env.HOME;', 'process'],
    ['const now = Date.now();', 'Date.now'],
    ['const now = new Date();', 'new Date()'],
    ['const dice = Math.random();', 'Math.random'],
  ])('finds %s', (text, what) => {
    expect(reachesOf(file('src/sheet/a.ts', text))).toEqual([`src/sheet/a.ts:1 uses ${what}`]);
    expect(reachesOf(file('src/cli/a.ts', text))).toEqual([]);
  });

  test('takes a property or a comment of that name for what it is', () => {
    const text = '// console.log\nconst a = { process: 1 }; a.process; new Date(2026, 1, 1);';
    expect(reachesOf(file('src/sheet/a.ts', text))).toEqual([]);
  });
});
