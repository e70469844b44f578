import { readdirSync, readFileSync } from 'node:fs';
import { parseSync } from 'vite';
import { describe, expect, test } from 'vitest';
import { builtInKinds } from '../../src/kinds/index.ts';

/**
 * Trade knowledge is data: no code knows a kind of unit. So no literal of the code is a name of a
 * kind, or a name of its vocabulary. The examples of checks are documentation and may.
 */
const root = new URL('../../', import.meta.url);

function vocabulary(): ReadonlySet<string> {
  const names = new Set<string>();
  for (const kind of builtInKinds().values()) {
    names.add(kind.name);
    for (const section of [
      kind.settings,
      kind.operations,
      kind.features,
      kind.hazards,
      kind.parts,
      kind.dimensionsOfUnit,
    ]) {
      // A name of one plain word (`parts`, `engine`) is a word of English first.
      for (const name of section.keys()) if (name.includes('-')) names.add(name);
    }
    for (const name of kind.threadsOfUnit) names.add(name);
  }
  return names;
}

/** String literals of a file that are no example of a check, with their offsets. */
function literals(path: string, text: string): readonly { value: string; start: number }[] {
  const found: { value: string; start: number }[] = [];
  const visit = (value: unknown): void => {
    if (Array.isArray(value)) for (const item of value) visit(item);
    if (typeof value !== 'object' || value === null || Array.isArray(value)) return;
    const node = value as Record<string, unknown>;
    const key = node.key as Record<string, unknown> | undefined;
    if (node.type === 'Property' && key?.name === 'examples') return;
    if (node.type === 'Literal' && typeof node.value === 'string')
      found.push({ value: node.value, start: Number(node.start) });
    if (node.type === 'TemplateElement') {
      const { cooked } = node.value as { cooked?: string };
      found.push({ value: cooked ?? '', start: Number(node.start) });
    }
    for (const child of Object.values(node)) visit(child);
  };
  const { program, errors } = parseSync(path, text, { lang: 'ts' });
  if (errors.length > 0) throw new Error(`${path} cannot be parsed`);
  visit(program);
  return found;
}

const files = readdirSync(new URL('src/', root), { recursive: true, encoding: 'utf8' })
  .map((name) => `src/${name.replaceAll('\\', '/')}`)
  .filter((path) => path.endsWith('.ts') && !path.startsWith('src/generated/'))
  .sort();

describe('the code', () => {
  test('is there, and more than one kind is too', () => {
    expect(files.length).toBeGreaterThan(100);
    const kindFiles = readdirSync(new URL('src/kinds/', root)).filter((name) =>
      name.endsWith('.yaml'),
    );
    expect(kindFiles.length).toBeGreaterThan(1);
    expect([...builtInKinds().keys()]).toEqual(kindFiles.map((name) => name.slice(0, -5)).sort());
  });

  test('has no kind’s name and no word of a kind’s vocabulary', () => {
    const names = vocabulary();
    const knowing: string[] = [];
    for (const path of files) {
      const text = readFileSync(new URL(path, root), 'utf8');
      for (const { value, start } of literals(path, text)) {
        if (!names.has(value)) continue;
        const line = text.slice(0, start).split('\n').length;
        knowing.push(`${path}:${line} knows \`${value}\``);
      }
    }
    expect(knowing).toEqual([]);
  });

  test('would be caught if it did', () => {
    const text = "if (kind.name === 'ignition-distributor') go(`float-level`);";
    const found = literals('x.ts', text).map(({ value }) => value);
    expect(found.filter((value) => vocabulary().has(value))).toEqual([
      'ignition-distributor',
      'float-level',
    ]);
  });
});
