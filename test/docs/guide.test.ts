import { existsSync, readFileSync, statSync } from 'node:fs';
import { dirname, join, posix } from 'node:path';
import { describe, expect, test } from 'vitest';
import { buildProgram } from '../../src/cli/program.ts';
import { sourceFiles } from '../import-scan.ts';
import { commandsOf, root } from './marked-blocks.ts';
import { allPages, type Page, writtenPages } from './pages.ts';

const first = pageOf('README.md');
const index = pageOf('docs/README.md');

function pageOf(path: string): Page {
  const page = allPages.find((each) => each.path === path);
  if (page === undefined) throw new Error(`there is no ${path}`);
  return page;
}

/** A page without what stands in fences. */
function unfenced(text: string): string {
  return text.replace(/^(`{3,})[\s\S]*?^\1$/gm, '');
}

/** Where a page's links go to. */
function linksOf(page: Page): readonly string[] {
  return [...unfenced(page.text).matchAll(/\]\(([^)\s]+)\)/g)].map(([, target = '']) => target);
}

/** The anchors of a page's headings, as code hosts make them. */
function anchorsOf(text: string): readonly string[] {
  return [...unfenced(text).matchAll(/^#{1,6} (.+)$/gm)].map(([, heading = '']) =>
    heading
      .toLowerCase()
      .replace(/[^\p{L}\p{N}\s_-]/gu, '')
      .replace(/\s/g, '-'),
  );
}

describe('the pages', () => {
  test('the first is read in ten minutes', () => {
    expect(Buffer.byteLength(first.text)).toBeLessThanOrEqual(16 * 1024);
  });

  test.each([
    [first, ''],
    [index, '../'],
  ])('all of them stand in the index of $path', (page) => {
    const linked = new Set(
      linksOf(page).map((link) => posix.join(posix.dirname(page.path), link.split('#')[0] ?? '')),
    );
    const all = allPages.map(({ path }) => path).filter((path) => path !== page.path);
    expect(
      all.filter((path) => !linked.has(path) && !/^(CHANGELOG|templates)\b/.test(path)),
    ).toEqual([]);
  });

  test.each(allPages.map((page) => [page.path, page] as const))(
    '%s has links that lead somewhere',
    (_, page) => {
      const astray = linksOf(page).filter((link) => {
        if (/^https?:/.test(link)) return false;
        const [file = '', anchor] = link.split('#');
        const target =
          file === '' ? join(root, page.path) : join(dirname(join(root, page.path)), file);
        if (!existsSync(target)) return true;
        return anchor !== undefined && !anchorsOf(readFileSync(target, 'utf8')).includes(anchor);
      });
      expect(astray).toEqual([]);
    },
  );

  test('the first tells of commands of npm that there are', () => {
    const { scripts }: { scripts: object } = JSON.parse(
      readFileSync(join(root, 'package.json'), 'utf8'),
    );
    const named = [...first.text.matchAll(/npm (?:run )?(demo|test)\b/g)].map(([, name]) => name);
    expect(Object.keys(scripts)).toEqual(expect.arrayContaining(named));
    expect(new Set(named)).toEqual(new Set(['demo', 'test']));
  });

  test('pictures have words and are small', () => {
    const pictures = [...first.text.matchAll(/!\[([^\]]*)\]\(([^)]+)\)/g)];
    expect(pictures.length).toBeGreaterThanOrEqual(2);
    for (const [, words = '', file = ''] of pictures) {
      expect(words.length).toBeGreaterThan(20);
      expect(statSync(join(root, file)).size).toBeLessThan(150_000);
    }
  });
});

describe('what the pages show', () => {
  /** Marks whose blocks a test carries out or holds the program to. */
  const tested = [
    'run',
    'print',
    'library',
    'printed',
    'begin',
    'sheet',
    'variant',
    'edition',
    'folder',
    'kit',
    // By test/docs/kinds-page.test.ts.
    'kind',
    // By test/editors.
    'extension',
    'neovim',
    'emacs',
  ];
  const written = ['work', 'own-work', 'accept', 'mapping', 'statements', 'sources', 'table'];

  test.each(writtenPages.map((page) => [page.path, page] as const))(
    '%s has no block that no test reads',
    (_, { text, blocks }) => {
      const fences = [...text.matchAll(/^(`{3,})[a-z]*\n[\s\S]*?^\1$/gm)].length;
      expect(fences).toBe(blocks.length);
      for (const { mark } of blocks) expect([...tested, ...written]).toContain(mark);
    },
  );
});

test('variables of the environment are those that the program reads', () => {
  const page = pageOf('docs/environment.md');
  const told = [...page.text.matchAll(/GAUGELEAF_[A-Z_]+/g)].map(([name]) => name);
  const read = sourceFiles().flatMap(({ text }) => text.match(/\bGAUGELEAF_[A-Z_]+/g) ?? []);
  // By this one the build alone tells the program to keep its compiled code.
  const own = 'GAUGELEAF_KEEP_CACHE';
  expect(new Set(told)).toEqual(new Set(read.filter((name) => name !== own)));
});

describe('the commands', () => {
  const nowhere = { write: () => true, isTTY: false };
  const program = buildProgram(
    { stdout: nowhere, stderr: nowhere } as unknown as Parameters<typeof buildProgram>[0],
    () => {},
  );
  const commands = program.commands.map((command) => [command.name(), command] as const);

  /** The long options of a command, or of any. */
  const options = (of: readonly (typeof program)[]) =>
    new Set(of.flatMap((command) => command.options.map(({ long }) => long)).concat('--help'));

  test.each(writtenPages.map((page) => [page.path, page] as const))(
    '%s names only commands and options that there are',
    (_, { text }) => {
      const strange = [...unfenced(text).matchAll(/`([^`\n]+)`/g)].flatMap(([, code = '']) => {
        const [, name, rest = ''] = /^gaugeleaf(?: ([a-z-]*[a-z])\b)?(.*)$/.exec(code) ?? [];
        const bare = /^--[a-z-]+/.test(code) ? code : null;
        if (name === undefined && bare === null) return [];
        const of = program.commands.filter(
          (command) => name === undefined || command.name() === name,
        );
        const known = options(of);
        const flags = [...(bare ?? rest).matchAll(/(?<=^| )--[a-z-]+/g)].map(([flag]) => flag);
        const unknown = flags.filter((flag) => !known.has(flag));
        return of.length === 0 || unknown.length > 0 ? [code] : [];
      });
      expect(strange).toEqual([]);
    },
  );

  test('are all there', () => expect(commands.length).toBeGreaterThan(10));

  test.each(commands)('%s has a page that shows its options, and shows it at work', (name) => {
    const page = pageOf(`docs/${name}.md`);
    expect(page.blocks.flatMap(commandsOf)).toContain(`gaugeleaf ${name} --help`);
    const shown = writtenPages.flatMap(({ blocks }) => blocks.flatMap(commandsOf));
    expect(shown.filter((command) => command.split(' ')[1] === name).length).toBeGreaterThan(1);
  });
});
