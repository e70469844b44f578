import { execFileSync, spawnSync } from 'node:child_process';
import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { gunzipSync } from 'node:zlib';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { packedProgram } from '../../src/project/packed-program.ts';
import { gaugeleaf } from './console.ts';

/**
 * The program installed as its users install it: in a drafted folder, from a packed file, and as a
 * hook of pre-commit. It takes a minute and a package registry, so it is tried where CI or
 * TRY_INSTALL says so.
 */
const tried = process.env.CI !== undefined || process.env.TRY_INSTALL !== undefined;
const root = join(import.meta.dirname, '..', '..');
const has = (program: string) => spawnSync(program, ['--version']).error === undefined;
const patience = 400_000;

const home = mkdtempSync(join(tmpdir(), 'gaugeleaf-install-'));
const club = join(home, 'club');
afterAll(() => rmSync(home, { recursive: true, force: true }), patience);

function run(folder: string, program: string, ...argv: readonly string[]) {
  const env = { ...process.env, PRE_COMMIT_HOME: join(home, 'pre-commit') };
  const { status, stdout, stderr } = spawnSync(program, argv, {
    cwd: folder,
    env,
    encoding: 'utf8',
  });
  return { status, stdout, stderr };
}

function commit(folder: string): void {
  const git = (...argv: readonly string[]) =>
    execFileSync('git', ['-c', 'user.name=E', '-c', 'user.email=e@example.invalid', ...argv], {
      cwd: folder,
      stdio: 'ignore',
    });
  git('init', '--quiet');
  git('add', '.');
  git('commit', '--quiet', '--no-verify', '-m', 'Begin');
}

let installed = false;

describe.runIf(tried)('a drafted folder', () => {
  beforeAll(async () => {
    const { name, bytes } = await packedProgram();
    writeFileSync(join(home, name), bytes);
    const drafted = await gaugeleaf(['draft', '--club', 'club', '--program', name], { cwd: home });
    expect(drafted.err).toContain('npm install && npm run check');
    const npm = run(club, 'npm', 'install', '--prefer-offline', '--no-audit', '--no-fund');
    installed = npm.status === 0;
    if (!installed) console.warn(`the packages can't be had here: ${npm.stderr.slice(0, 300)}`);
    commit(club);
  }, patience);

  it('packs what npm packs', async () => {
    const [packed] = JSON.parse(run(root, 'npm', 'pack', '--dry-run', '--json').stdout) as {
      readonly files: readonly { readonly path: string }[];
    }[];
    const tar = gunzipSync((await packedProgram()).bytes);
    const names: string[] = [];
    for (let at = 0; at + 512 <= tar.length && tar[at] !== 0; ) {
      const text = (from: number, length: number) =>
        tar.toString('utf8', at + from, at + from + length).replace(/\0.*$/s, '');
      const prefix = text(345, 155);
      names.push(`${prefix === '' ? '' : `${prefix}/`}${text(0, 100)}`.replace(/^package\//, ''));
      at += 512 * (1 + Math.ceil(Number.parseInt(text(124, 12), 8) / 512));
    }
    expect(names.sort()).toEqual(packed?.files.map(({ path }) => path).sort());
  });

  it(
    'checks its sheets by the installed program, in each of the ways that it offers',
    ({ skip }) => {
      if (!installed) skip();
      expect(run(club, 'npm', 'run', '--silent', 'check')).toEqual({
        status: 0,
        stdout: 'No findings in 2 sheets\n',
        stderr: '',
      });
      expect(run(club, 'npm', 'run', '--silent', 'check', '--', '--format', 'github').stdout).toBe(
        '',
      );
    },
    patience,
  );

  it(
    'is held by pre-commit, and a sheet with an error is not let through',
    ({ skip }) => {
      if (!installed || !has('pre-commit')) skip();
      expect(run(club, 'pre-commit', 'run', '--all-files').stdout).toMatch(/Passed\n$/);
      const sheet = join(club, 'sheets', 'example-carburetor.md');
      writeFileSync(sheet, readFileSync(sheet, 'utf8').replace(/ from: s1/, ' from: s9'));
      execFileSync('git', ['add', '.'], { cwd: club });
      const held = run(club, 'pre-commit', 'run');
      expect([held.status, held.stdout]).toEqual([1, expect.stringContaining('source-unknown')]);
    },
    patience,
  );

  it(
    'needs no program of its own where pre-commit takes this repository’s hook',
    ({ skip }) => {
      if (!installed || !has('pre-commit')) skip();
      const other = join(home, 'other');
      execFileSync('git', ['clone', '--quiet', root, join(home, 'program')]);
      cpSync(join(club, 'sheets'), join(other, 'sheets'), { recursive: true });
      const head = execFileSync('git', ['-C', root, 'rev-parse', 'HEAD'], {
        encoding: 'utf8',
      }).trim();
      writeFileSync(
        join(other, '.pre-commit-config.yaml'),
        `repos:\n  - repo: ${join(home, 'program')}\n    rev: ${head}\n    hooks: [{ id: gaugeleaf-check }]\n`,
      );
      commit(other);
      const held = run(other, 'pre-commit', 'run', '--all-files');
      expect([held.status, held.stdout]).toEqual([1, expect.stringContaining('source-unknown')]);
    },
    patience,
  );
});
