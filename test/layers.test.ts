import { readdirSync } from 'node:fs';
import { builtinModules } from 'node:module';
import { posix } from 'node:path';
import { describe, expect, test } from 'vitest';
import {
  exportsOf,
  importsOf,
  isNode,
  namedImportsOf,
  nodes,
  onlyHandsOn,
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
  ['order', 'relations', 'conformance', 'measured', 'compare', 'concordance'],
  ['rereading'],
  ['checks', 'import'],
  ['report', 'press'],
  ['desk'],
  ['project', 'desk-page', 'library'],
  ['desk-server', 'language-server'],
  ['cli', 'editors'],
];

/** The rooms of the press, by the same rule; its own door stands above them. */
const pressFloors: readonly (readonly string[])[] = [
  ['orders', 'lettering'],
  ['browser', 'pdf', 'drawings', 'order-picture', 'imposition'],
  ['html', 'matter'],
  ['card', 'sources', 'slip', 'paper-gauges', 'site'],
  ['booklet'],
  ['style'],
];

/** Rooms beside the floors: made by the build, or the build itself. */
const beside = ['generated', 'build'];

/** Rooms that are being built, and whose doors are held when somebody uses them; and the one that others use. */
const unopened: ReadonlySet<string> = new Set(['library']);

/** The rooms that may touch files, console, process, clock and chance; a page touches its browser's. */
const outward: ReadonlySet<string> = new Set([
  'project',
  'desk-page',
  'desk-server',
  'language-server',
  'cli',
  'editors',
  'build',
]);

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

/** The room of the press that a file stands in; null outside, and for the door of the press itself. */
function pressRoom(path: string): string | null {
  return /^src\/press\/([^/]+)\//.exec(path)?.[1] ?? null;
}

/** Why a file of the press may not have an import from a room of the press; null where it may. */
function pressFault(file: SourceFile, imported: string | null): string | null {
  if (imported === null || !imported.startsWith('.')) return null;
  const target = posix.join(posix.dirname(file.path), imported);
  const from = pressRoom(file.path);
  const to = pressRoom(target);
  if (from === to || from === null || !target.startsWith('src/press/')) return null;
  const floor = (room: string | null) =>
    pressFloors.findIndex((rooms) => room !== null && rooms.includes(room));
  return to !== null && floor(to) !== -1 && floor(to) < floor(from)
    ? null
    : `${file.path} imports ${target}, which is no lower`;
}

/** The room that a file stands in, that of the press where it is in one: `press/card`; null outside. */
function innerRoom(path: string): string | null {
  const within = pressRoom(path);
  return within === null ? (/^src\/([^/]+)\//.exec(path)?.[1] ?? null) : `press/${within}`;
}

/** Whether a file may be imported from outside its room. */
function isDoor(path: string): boolean {
  return ['index.ts', 'model.ts'].includes(posix.basename(path));
}

/**
 * Why a file may not have an import from another room; null where it may. Data that the build made has no
 * door, and names the types that it is checked by where they stand.
 */
function doorFault(file: SourceFile, imported: string | null): string | null {
  if (imported === null || !imported.startsWith('.')) return null;
  const target = posix.join(posix.dirname(file.path), imported);
  const to = innerRoom(target);
  if (to === null || to === innerRoom(file.path) || isDoor(target)) return null;
  if (to === 'generated' || file.room === 'generated') return null;
  return `${file.path} imports ${target}, past its door`;
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
const imports = files.flatMap((file) => importsOf(file).map((imported) => ({ file, imported })));

describe('the layers', () => {
  test('the rule and the folders of src are the same', () => {
    const rooms = readdirSync(new URL('src/', root), { withFileTypes: true })
      .map((entry) => (entry.isDirectory() ? entry.name : `${entry.name}, which is no folder`))
      .sort();
    expect(rooms).toEqual([...floors.flat(), ...beside].sort());
  });

  test('no room imports a higher one, a neighbor or the build', () => {
    const faults = imports.flatMap(({ file, imported }) => fault(file, imported) ?? []);
    expect(faults).toEqual([]);
  });

  test('only project and cli reach for files, console, process, clock and chance', () => {
    expect(files.flatMap((file) => reachesOf(file))).toEqual([]);
  });
});

describe('the doors', () => {
  const doors = files.filter(({ path }) => posix.basename(path) === 'index.ts');
  const models = files.filter(({ path }) => posix.basename(path) === 'model.ts');

  test('stand before every room but those that nobody imports', () => {
    const rooms = doors.map(({ path }) => posix.dirname(path).slice('src/'.length));
    const missing = floors.flat().filter((room) => !rooms.includes(room));
    expect(missing).toEqual(['cli', 'editors']);
  });

  test('are passed by by nobody', () => {
    const faults = imports.flatMap(({ file, imported }) => doorFault(file, imported) ?? []);
    expect(faults).toEqual([]);
  });

  test('hand on what stands behind them and do nothing themselves', () => {
    expect(doors.filter((door) => !onlyHandsOn(door)).map(({ path }) => path)).toEqual([]);
  });

  test('give what others use, and nothing else; so do the models', () => {
    const taken = takenFrom(files.filter(({ text }) => /\/(index|model)\.ts/.test(text)));
    const open = [...doors, ...models].filter(({ room }) => !unopened.has(room));
    expect(open.flatMap((each) => unused(each, taken))).toEqual([]);
  });
});

describe('the rooms of the press', () => {
  const doors = files.filter(({ path }) => /^src\/press\/([^/]+\/)?index\.ts$/.test(path));

  test('are those of the rule, each with a door, and beside them is nothing but the door of all', () => {
    const inside = readdirSync(new URL('src/press/', root)).sort();
    expect(inside).toEqual([...pressFloors.flat(), 'index.ts'].sort());
    expect(doors.map(({ path }) => pressRoom(path) ?? '').sort()).toEqual(
      ['', ...pressFloors.flat()].sort(),
    );
  });

  test('import no higher room and no neighbor', () => {
    const faults = imports.flatMap(({ file, imported }) => pressFault(file, imported) ?? []);
    expect(faults).toEqual([]);
  });

  test('are the rooms of their tests, too', () => {
    const rooms = new Set(pressFloors.flat());
    const tested = readdirSync(new URL('test/press/', root), { recursive: true, encoding: 'utf8' })
      .map((name) => name.replaceAll('\\', '/'))
      .filter((name) => name.endsWith('.test.ts') && name.includes('/'))
      .filter((name) => !rooms.has(name.split('/')[0] ?? ''));
    expect(tested).toEqual([]);
  });
});

/** What files take by name, with the file that takes it. */
interface Taken {
  readonly by: string;
  readonly target: string;
  readonly names: readonly string[];
}

function takenFrom(all: readonly SourceFile[]): readonly Taken[] {
  return all.flatMap((file) => namedImportsOf(file).map((each) => ({ by: file.path, ...each })));
}

/** The names that a door hands on and that no file outside its folder takes from it; of a model, no other file. */
function unused(door: SourceFile, taken: readonly Taken[]): readonly string[] {
  const ofARoom = posix.basename(door.path) === 'index.ts';
  const folder = ofARoom ? `${posix.dirname(door.path)}/` : door.path;
  const wanted = new Set(
    taken
      .filter(({ by, target }) => !by.startsWith(folder) && target === door.path)
      .flatMap(({ names }) => names),
  );
  return exportsOf(door)
    .filter((name) => name === '*' || !(wanted.has(name) || wanted.has('*')))
    .map((name) => `${door.path} exports ${name}`);
}

describe('the rule itself', () => {
  const file = (path: string, text: string): SourceFile => ({
    path,
    room: path.split('/')[1] ?? '',
    text,
  });

  test.each([
    ['src/press/card/a.ts', "import { a } from '../matter/body.ts';", 'past its door'],
    ['src/cli/a.ts', "const { a } = await import('../press/site/site.ts');", 'past its door'],
    ['src/press/index.ts', "export { a } from './card/print.ts';", 'past its door'],
    ['src/checks/a.ts', "import { a } from '../sheet/read-sheet.ts';", 'past its door'],
    ['src/checks/across/a.ts', "import type { A } from '../../text/span.ts';", 'past its door'],
    ['src/cli/a.ts', "import { a } from '../report/export/csv.ts';", 'past its door'],
    ['src/press/matter/a.ts', "import { a } from '../card/index.ts';", 'no lower'],
    ['src/press/card/a.ts', "import type { A } from '../slip/model.ts';", 'no lower'],
    ['src/press/card/a.ts', "import { a } from '../index.ts';", 'no lower'],
  ])('finds in %s %s', (path, text, said) => {
    const source = file(path, text);
    const faults = importsOf(source).flatMap(
      (imported) => pressFault(source, imported) ?? doorFault(source, imported) ?? [],
    );
    expect(faults).toEqual([expect.stringContaining(said)]);
  });

  test.each([
    ['src/press/card/a.ts', "import { a } from './rows.ts';"],
    ['src/press/card/a.ts', "import { a } from '../matter/index.ts';"],
    ['src/press/booklet/a.ts', "import type { A } from '../sources/model.ts';"],
    ['src/cli/a.ts', "import { a } from '../press/drawings/index.ts';"],
    ['src/press/card/a.ts', "import { a } from '../../text/index.ts';"],
    ['src/cli/a.ts', "import { a } from '../report/export/index.ts';"],
    ['src/checks/across/a.ts', "import { a } from '../prose-numbers.ts';"],
    ['src/kinds/a.ts', "import { a } from '../generated/kinds.ts';"],
    ['src/generated/a.ts', "import type { A } from '../kinds/data.ts';"],
  ])('lets pass in %s %s', (path, text) => {
    const source = file(path, text);
    for (const imported of importsOf(source)) {
      expect(pressFault(source, imported) ?? doorFault(source, imported)).toBeNull();
    }
  });

  test('finds what a door hands on for nobody', () => {
    const door = file(
      'src/press/card/index.ts',
      "export { a, type B, c, d, e } from './x.ts';\nexport type { F } from './x.ts';",
    );
    const users = [
      file('src/press/card/y.ts', "import { e } from './index.ts';"),
      file('src/press/style/y.ts', "import { type B, c as other } from '../card/index.ts';"),
      file('src/cli/y.ts', "const { a } = await import('../press/card/index.ts');"),
      file('src/cli/z.ts', "const card = await import('../press/card/index.ts');\ncard.d();"),
    ];
    expect([...unused(door, takenFrom(users))].sort()).toEqual([
      'src/press/card/index.ts exports F',
      'src/press/card/index.ts exports e',
    ]);
    expect(onlyHandsOn(door)).toBe(true);
    expect(onlyHandsOn(file('src/press/card/index.ts', 'export const a = 1;'))).toBe(false);
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
