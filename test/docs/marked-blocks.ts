import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Readable } from 'node:stream';
import { fileURLToPath } from 'node:url';
import { run } from '../../src/cli/run.ts';

/** The project's own folder, with `/` at its end. */
export const root = fileURLToPath(new URL('../../', import.meta.url));

/**
 * A fenced block of a guide that a comment before it marks: `<!-- run exit="1" -->` or
 * `<!-- same-as "test/docs/a.ts" -->`. The reader of the page does not see the comment.
 */
export interface MarkedBlock {
  /** The comment's first word: what the test does with the block. */
  readonly mark: string;
  /** `key="value"` of the comment; a value without a key stands under the empty key. */
  readonly options: ReadonlyMap<string, string>;
  /** What stands between the fences, a line feed at its end. */
  readonly text: string;
  /** Where that stands in the page: UTF-16 offsets, end exclusive. */
  readonly start: number;
  readonly end: number;
  /** Of the first line inside the fence, 1-based. */
  readonly line: number;
}

/** All marked blocks of a page, in its order. */
export function markedBlocks(page: string): readonly MarkedBlock[] {
  const pattern = /^<!-- ([a-z-]+)([^\n]*?) -->\n\n?(`{3,})[a-z]*\n([\s\S]*?)^\3$/gm;
  return [...page.matchAll(pattern)].map((match) => {
    const [whole, mark = '', options = '', fence = '', text = ''] = match;
    const end = match.index + whole.length - fence.length;
    return {
      mark,
      options: new Map(
        [...options.matchAll(/(?:([a-z]+)=)?"([^"]*)"/g)].map(([, key = '', value = '']) => [
          key,
          value.replaceAll('\\n', '\n'),
        ]),
      ),
      text,
      start: end - text.length,
      end,
      line: page.slice(0, end - text.length).split('\n').length,
    };
  });
}

/** The commands of a console block: its lines that begin with `$ `, without that. */
export function commandsOf(block: MarkedBlock): readonly string[] {
  return block.text
    .split('\n')
    .filter((line) => line.startsWith('$ '))
    .map((line) => line.slice(2));
}

/** A command line parted into words as a shell parts it, quotes taken off. */
export function shellWords(command: string): readonly string[] {
  return [...command.matchAll(/"([^"]*)"|'([^']*)'|(\S+)/g)].map(
    ([, double, single, bare]) => double ?? single ?? bare ?? '',
  );
}

/** What a terminal showed of one command, standard output and error as they came. */
export interface Shown {
  readonly status: number;
  readonly text: string;
}

/** Carries out a `gaugeleaf` command line in a folder, as on a terminal of 100 columns. */
export async function show(command: string, folder: string): Promise<Shown> {
  const [program, ...argv] = shellWords(command);
  if (program !== 'gaugeleaf') throw new Error(`no gaugeleaf command: ${command}`);
  let text = '';
  const write = (chunk: string | Uint8Array) => {
    text += typeof chunk === 'string' ? chunk : Buffer.from(chunk).toString('latin1');
  };
  const status = await run(argv, {
    stdout: { write, isTTY: true, columns: 100 },
    // No terminal, or a slow machine would write its progress into the page.
    stderr: { write, isTTY: false },
    stdin: Readable.from([]),
    env: { ...process.env, NO_COLOR: '1' },
    cwd: folder,
    today: () => '2026-11-25',
  });
  return { status, text };
}

/** A copy of the demo's folder to work in; `remove` takes it away again. */
export function demoCopy(): { readonly folder: string; readonly remove: () => void } {
  const folder = mkdtempSync(join(tmpdir(), 'gaugeleaf-docs-'));
  for (const part of ['edition.yaml', 'sheets', 'editions', 'schemas']) {
    cpSync(join(root, part), join(folder, part), { recursive: true });
  }
  return { folder, remove: () => rmSync(folder, { recursive: true, force: true }) };
}

/** Puts `to` in place of `from`, which must stand once in the file. */
export function change(path: string, from: string, to: string): void {
  const text = readFileSync(path, 'utf8');
  const parts = text.split(from);
  if (parts.length !== 2) throw new Error(`${from} stands ${parts.length - 1} times in ${path}`);
  writeFileSync(path, parts.join(to));
}
