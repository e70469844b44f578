import { readFileSync, writeFileSync } from 'node:fs';
import { join, posix } from 'node:path';
import { expect, test } from 'vitest';
import { transitiveReduction } from '../../src/press/order-picture/reduction.ts';
import { importsOf, sourceFiles } from '../import-scan.ts';
import { markedBlocks, root } from './marked-blocks.ts';

/** Data that every room may read. */
const read = 'generated';

/** The pairs of rooms of which the first imports the second, in the order of the alphabet. */
function roomPairs(): readonly (readonly [room: string, imported: string])[] {
  const pairs = new Set<string>();
  for (const file of sourceFiles()) {
    for (const imported of importsOf(file)) {
      if (imported === null || !imported.startsWith('.')) continue;
      const target = posix.join(posix.dirname(file.path), imported).split('/')[1] ?? '';
      if (target !== file.room && target !== read && file.room !== read) {
        pairs.add(`${file.room} ${target}`);
      }
    }
  }
  return [...pairs].sort().map((pair) => {
    const [room = '', imported = ''] = pair.split(' ');
    return [room, imported];
  });
}

/** The picture of the rooms, without the arrows that go the same way as others together. */
function picture(pairs: readonly (readonly [room: string, imported: string])[]): string {
  const rooms = [...new Set(pairs.flat())].sort();
  const arrows = transitiveReduction(
    pairs.map(([room, imported]) => ({ from: rooms.indexOf(room), to: rooms.indexOf(imported) })),
  );
  const lines = arrows.map(({ from, to }) => `  ${rooms[from]} --> ${rooms[to]}`);
  return `flowchart TD\n${lines.join('\n')}\n`;
}

test('the picture of the rooms is what they import (else RENEW_GOLDEN=1 npx vitest run test/docs)', () => {
  const path = join(root, 'DEVELOPERS.md');
  const page = readFileSync(path, 'utf8');
  const [block] = markedBlocks(page).filter(({ mark }) => mark === 'rooms');
  if (block === undefined) throw new Error('the guide has no picture of the rooms');
  const now = picture(roomPairs());
  if (process.env.RENEW_GOLDEN === '1') {
    writeFileSync(path, page.slice(0, block.start) + now + page.slice(block.end));
    return;
  }
  expect(block.text).toBe(now);
});

test('an arrow that goes without saying is left out, and no other', () => {
  const pairs = [
    ['cli', 'sheet'],
    ['cli', 'text'],
    ['press', 'text'],
    ['sheet', 'text'],
  ] as const;
  expect(picture(pairs)).toBe(
    'flowchart TD\n  cli --> sheet\n  press --> text\n  sheet --> text\n',
  );
});
