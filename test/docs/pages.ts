import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect } from 'vitest';
import { builtInKinds } from '../../src/kinds/index.ts';
import {
  change,
  commandsOf,
  demoCopy,
  type MarkedBlock,
  markedBlocks,
  root,
  show,
} from './marked-blocks.ts';

/** A page of the guide. */
export interface Page {
  /** From the project's folder, with `/`. */
  readonly path: string;
  readonly text: string;
  readonly blocks: readonly MarkedBlock[];
}

/** Pages that tests write whole, from what they are about. */
const made: ReadonlySet<string> = new Set(
  ['findings', 'relations', 'templates', 'keys', ...builtInKinds().keys()].map(
    (name) => `docs/${name}.md`,
  ),
);

/** The pages that people write: the first one and those of `docs/`. */
export const writtenPages: readonly Page[] = ['README.md', ...pathsOfDocs()]
  .filter((path) => !made.has(path))
  .map(pageAt);

/** Every page that a reader can come to. */
export const allPages: readonly Page[] = [
  ...writtenPages,
  ...[...made].map(pageAt),
  ...['DEVELOPERS.md', 'CHANGELOG.md', 'templates/README.md', 'templates/fonts/README.md'].map(
    pageAt,
  ),
];

function pathsOfDocs(): readonly string[] {
  return readdirSync(join(root, 'docs'))
    .filter((name) => name.endsWith('.md'))
    .sort()
    .map((name) => `docs/${name}`);
}

function pageAt(path: string): Page {
  const text = readFileSync(join(root, path), 'utf8');
  return { path, text, blocks: markedBlocks(text) };
}

/** The one block of the guide with that mark. Fails where there is none or another. */
export function blockMarked(mark: string): MarkedBlock {
  const [block, ...more] = writtenPages.flatMap(({ blocks }) =>
    blocks.filter((each) => each.mark === mark),
  );
  if (block === undefined || more.length > 0) throw new Error(`one block marked ${mark} is wanted`);
  return block;
}

/** Console blocks with that mark, each with its page, its place and its commands for a test's name. */
export function consoleBlocks(mark: 'run' | 'print') {
  return writtenPages.flatMap((page) =>
    page.blocks
      .filter((block) => block.mark === mark)
      .map(
        (block) =>
          [`${page.path}:${block.line}`, commandsOf(block).join('; '), page, block] as const,
      ),
  );
}

/**
 * What a block should hold: its commands, each with what it writes. `head="12"` keeps the first
 * lines only, and `tail="5"` the last ones too, with `...` for the rest; `file`, `from` and `to`
 * change the demo before.
 */
export async function carriedOut(block: MarkedBlock): Promise<string> {
  const { folder, remove } = demoCopy();
  try {
    const { options } = block;
    const file = options.get('file');
    if (file !== undefined) {
      change(join(folder, file), options.get('from') ?? '', options.get('to') ?? '');
    }
    let text = '';
    for (const command of commandsOf(block)) {
      const shown = await show(command, folder);
      expect(shown.status, `exit status of ${command}, which says: ${shown.text}`).toBe(
        Number(options.get('exit') ?? '0'),
      );
      // A table for other programs ends its lines as RFC 4180 wants; a page does as Markdown does.
      const lines = shown.text.replaceAll('\r\n', '\n');
      text += `$ ${command}\n${shortened(lines, options.get('head'), options.get('tail'))}`;
    }
    return text;
  } finally {
    remove();
  }
}

function shortened(text: string, head: string | undefined, tail = '0'): string {
  const lines = text.replace(/\n$/, '').split('\n');
  if (head === undefined || lines.length <= Number(head) + Number(tail)) return text;
  const first = lines.slice(0, Number(head)).join('\n').trimEnd();
  return [first, '...', ...lines.slice(lines.length - Number(tail)), ''].join('\n');
}

/**
 * Puts new text into a block of a page. The page is read again, as other blocks of it may have been
 * written in the meantime; the block is known by its place among those of the page.
 */
export function renewBlock(page: Page, block: MarkedBlock, text: string): void {
  const path = join(root, page.path);
  const now = readFileSync(path, 'utf8');
  const stands = markedBlocks(now)[page.blocks.indexOf(block)];
  if (stands === undefined) throw new Error(`${page.path} has changed meanwhile`);
  if (stands.text !== text) {
    writeFileSync(path, now.slice(0, stands.start) + text + now.slice(stands.end));
  }
}
