import { execFileSync } from 'node:child_process';
import { symlinkSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { openProject } from '../../src/project/project.ts';
import { gaugeleaf } from '../cli/console.ts';
import { folderWith, cleanSheet as sheetWithItsOwnPaper } from './folder.ts';

const manual = 'm48: { title: Wexcombe Four Workshop Manual, kind: manual, year: 1948 }';
const shared = `gaugeleaf-sources: 1\nsources:\n  ${manual}\n`;
/** A clean sheet that describes the same paper as all others do. */
function cleanSheet(id: string): string {
  return sheetWithItsOwnPaper(id).replace(/^ {2}m48: .*$/m, `  ${manual}`);
}

const citing = cleanSheet('one').replace(`sources:\n  ${manual}`, 'sources: {}');

describe('sources.yaml', () => {
  test('describes what a sheet cites and does not describe', async () => {
    const folder = folderWith({ 'sheets/one.md': citing, 'sources.yaml': shared });
    const { status, out } = await gaugeleaf(['check'], { cwd: folder });
    expect([status, out]).toEqual([0, 'No findings in 1 sheet\n']);
    const said = await gaugeleaf(['sources', 'one', '--all'], { cwd: folder });
    expect(said.out).toContain('m48  Wexcombe Four Workshop Manual, manual, 1948');
  });

  test('is needed for that', async () => {
    const folder = folderWith({ 'sheets/one.md': citing });
    const { status, out } = await gaugeleaf(['check'], { cwd: folder });
    expect(status).toBe(1);
    expect(out).toContain('no source `m48` is listed');
  });

  test('offers its names for a misspelt one', async () => {
    const folder = folderWith({
      'sheets/one.md': citing.replace('m48 p. 31', 'm84 p. 31'),
      'sources.yaml': shared,
    });
    const { out } = await gaugeleaf(['check'], { cwd: folder });
    expect(out).toContain('no source `m84` is listed\n         fix: write `m48`');
  });

  test.each([
    [
      'a source without a title',
      shared.replace('title: Wexcombe Four Workshop Manual, ', ''),
      /3:\d+ .*sources-invalid\n.*title/,
    ],
    ['a key that is none', `${shared}papers: {}\n`, /4:1 .*sources-invalid\n.*papers/],
    ['no format', shared.replace('gaugeleaf-sources: 1\n', ''), /sources-invalid/],
    ['no list', '- m48\n', /1:1 .*sources-invalid/],
    ['nothing', '', /1:1 .*sources-invalid/],
    ['broken YAML', `${shared}  b17: { title: "Bulletin\n`, /sources-invalid/],
  ])('is told of, at its place, where it has %s', async (_, text, pattern) => {
    const folder = folderWith({ 'sheets/one.md': cleanSheet('one'), 'sources.yaml': text });
    const { status, out } = await gaugeleaf(['check'], { cwd: folder });
    expect(out).toMatch(/^sources\.yaml$/m);
    expect(out).toMatch(pattern);
    expect(status).toBe(1);
  });

  test('goes after what a sheet says itself', () => {
    const folder = folderWith({ 'sheets/one.md': citing, 'sources.yaml': shared });
    expect([...openProject(folder).sharedSources().sources.keys()]).toEqual(['m48']);
  });
});

describe('check --fix', () => {
  const two = { 'sheets/one.md': cleanSheet('one'), 'sheets/two.md': cleanSheet('two') };

  test('moves to it what two sheets describe alike, and finds nothing more', async () => {
    const folder = folderWith(two);
    const before = await gaugeleaf(['check'], { cwd: folder });
    expect(before.out).toContain('`m48` is described in the same words in `two`');
    const fixed = await gaugeleaf(['check', '--fix'], { cwd: folder });
    expect(fixed.err).toContain('moved m48 from 2 sheets to sources.yaml');
    expect(fixed.out).not.toContain('source-repeated');
    const after = await gaugeleaf(['check'], { cwd: folder });
    expect(after.out).not.toMatch(/source-/);
    const again = await gaugeleaf(['check', '--fix'], { cwd: folder });
    expect(again.err).toBe('');
  });

  test('changes nothing that a comparison of editions would tell', async () => {
    const folder = folderWith(two);
    const around = { cwd: folder };
    await gaugeleaf(['export', '--format', 'json', '--out', 'before.json'], around);
    const git = (...args: string[]) =>
      execFileSync('git', ['-c', 'user.name=A', '-c', 'user.email=a@b.example', ...args], around);
    git('init', '-q');
    git('add', '.');
    git('commit', '-q', '-m', 'one');
    await gaugeleaf(['check', '--fix'], around);
    git('add', '.');
    git('commit', '-q', '-m', 'two');
    for (const [before, after] of [['before.json'], ['HEAD~1'], ['HEAD~1', 'HEAD'], ['HEAD']]) {
      const given = after === undefined ? [] : [after];
      const { out } = await gaugeleaf(['compare', before ?? '', ...given, '-f', 'json'], around);
      expect(JSON.parse(out).sheets, before).toEqual([]);
    }
  });

  test('leaves alone what a link leads to outside of the project', async () => {
    const outside = folderWith({ 'two.md': cleanSheet('two') });
    const folder = folderWith({ 'sheets/one.md': cleanSheet('one') });
    symlinkSync(join(outside, 'two.md'), join(folder, 'sheets', 'two.md'));
    const { err } = await gaugeleaf(['check', '--fix'], { cwd: folder });
    expect(err).not.toContain('moved');
  });

  test('touches no other sheet where one is named', async () => {
    const folder = folderWith(two);
    const { err } = await gaugeleaf(['check', '--fix', 'sheets/one.md'], { cwd: folder });
    expect(err).toBe('');
  });
});
