import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { frontCursor } from '../../src/desk/front-cursor.ts';
import { openDocument } from '../../src/desk/index.ts';
import type { PlacedNode } from '../../src/text/index.ts';
import { exampleContext } from '../checks/examples.ts';

const folder = join(import.meta.dirname, '..', '..', 'sheets');
const context = exampleContext();

interface Expected {
  readonly path: readonly string[];
  readonly part: 'key' | 'value';
  readonly start: number;
  readonly end: number;
}

/** Every key and scalar of front matter as the YAML reader places it, with the keys that lead to it. */
function* placesOf(node: PlacedNode, path: readonly string[]): Generator<Expected> {
  if (node.kind === 'map') {
    for (const [key, entry] of node.entries) {
      yield { path, part: 'key', ...entry.key.span };
      yield* placesOf(entry.value, [...path, key]);
    }
  } else if (node.kind === 'list') {
    for (const item of node.items) yield* placesOf(item, [...path, '-']);
  } else if (node.kind === 'scalar') yield { path, part: 'value', ...node.span };
}

const names = readdirSync(folder).filter((name) => name.endsWith('.md'));

test.each(names)(
  'in %s the cursor is where the YAML reader says, at each key and value',
  (name) => {
    const text = readFileSync(join(folder, name), 'utf8');
    const { sheet } = openDocument(text, `sheets/${name}`, { context });
    const { front, frontMatter } = sheet;
    if (front === null || frontMatter === null) throw new Error('no front matter');
    const wrong: string[] = [];
    let count = 0;
    for (const { path, part, start, end } of placesOf(front, [])) {
      // Words that run over several lines are no place for names or sizes.
      if (text.slice(start, end).includes('\n')) continue;
      count++;
      for (const offset of [start, Math.ceil((start + end) / 2), end]) {
        const found = frontCursor(text, frontMatter, offset);
        const said = JSON.stringify({ path: found?.path, part: found?.part, ...found?.span });
        const right = JSON.stringify({ path, part, start, end });
        if (said !== right) wrong.push(`${offset} ${text.slice(start, end)}: ${said} for ${right}`);
      }
    }
    expect(wrong).toEqual([]);
    expect(count).toBeGreaterThan(50);
  },
);
