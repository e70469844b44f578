import { execFileSync, spawnSync } from 'node:child_process';
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { folderWith } from '../project/folder.ts';
import { isQuick } from '../suite/part.ts';
import { gaugeleaf } from './console.ts';

const root = join(import.meta.dirname, '..', '..');
const command = join(root, 'dist', 'gaugeleaf.js');
const isBuilt = existsSync(command);

beforeAll(() => {
  if (!isBuilt) console.warn('dist is not built: the folder is not tried with the built command');
});

async function club(): Promise<string> {
  const cwd = folderWith();
  const outcome = await gaugeleaf(['draft', '--club', 'wexcombe-register'], { cwd });
  expect(outcome.status).toBe(0);
  return join(cwd, 'wexcombe-register');
}

interface Step {
  readonly uses?: string;
  readonly run?: string;
  readonly with?: Readonly<Record<string, unknown>>;
}

interface Workflow {
  readonly on: Readonly<Record<string, unknown>>;
  readonly permissions: Readonly<Record<string, string>>;
  readonly jobs: Readonly<Record<string, { 'runs-on': string; steps: readonly Step[] }>>;
}

function workflowOf(folder: string): Workflow {
  return parse(readFileSync(join(folder, '.github/workflows/gaugeleaf.yml'), 'utf8')) as Workflow;
}

/** The commands of the program in the workflow, without the way that a forge calls it by. */
function commandsOf(folder: string): readonly (readonly string[])[] {
  const steps = Object.values(workflowOf(folder).jobs).flatMap((job) => job.steps);
  return steps.flatMap(({ run }) => {
    const [, script, more] = /^npm run --silent (\w+)(?: -- (.*))?$/.exec(run ?? '') ?? [];
    if (script === undefined) return [];
    expect(scriptsOf(folder)[script]).toBe(`gaugeleaf ${script}`);
    return [[script, ...(more?.split(' ') ?? [])]];
  });
}

function packageOf(folder: string) {
  return JSON.parse(readFileSync(join(folder, 'package.json'), 'utf8')) as {
    readonly name: string;
    readonly scripts: Readonly<Record<string, string>>;
    readonly dependencies: Readonly<Record<string, string>>;
  };
}

const scriptsOf = (folder: string) => packageOf(folder).scripts;

describe('an example project folder', () => {
  it('has a sheet of the two kinds that clubs begin with, and nothing is found in it', async () => {
    const folder = await club();
    expect(readdirSync(join(folder, 'sheets')).sort()).toEqual([
      'example-carburetor.md',
      'example-ignition-distributor.md',
    ]);
    const { status, out } = await gaugeleaf(['check'], { cwd: folder });
    expect({ status, out }).toEqual({ status: 0, out: 'No findings in 2 sheets\n' });
    const edition = parse(readFileSync(join(folder, 'edition.yaml'), 'utf8'));
    expect(edition).toMatchObject({ title: 'Wexcombe register', date: '2026-10-03' });
  });

  it('names no place outside itself', async () => {
    const folder = await club();
    const names = readdirSync(folder, { recursive: true, encoding: 'utf8' });
    for (const name of names.filter((each) => /\.(?:md|ya?ml)$/.test(each))) {
      const text = readFileSync(join(folder, name), 'utf8');
      expect(text, name).not.toContain(root);
      expect(text, name).not.toContain('{{');
      const [, way] = /\$schema=(\S+)/.exec(text) ?? [];
      if (way !== undefined) expect(existsSync(join(folder, name, '..', way)), name).toBe(true);
    }
  });

  it('has the program from a file of its own or an address, and never by a bare name', async () => {
    const folder = await club();
    const { name, dependencies } = packageOf(folder);
    expect(name).toBe('wexcombe-register');
    const source = dependencies.gaugeleaf ?? '';
    if (source.startsWith('file:')) {
      expect(existsSync(join(folder, source.slice('file:'.length)))).toBe(true);
    } else expect(source).toMatch(/^git(?:\+https|\+ssh)?:\/\/.*#[0-9a-f]{40}$/);
    for (const file of [
      'README.md',
      '.github/workflows/gaugeleaf.yml',
      '.pre-commit-config.yaml',
    ]) {
      // `npx NAME` would ask a registry for a program of that name.
      expect(readFileSync(join(folder, file), 'utf8'), file).not.toMatch(/npx|gaugeleaf@/);
    }
    expect(readFileSync(join(folder, '.gitattributes'), 'utf8')).toContain('* text=auto eol=lf\n');
  });

  it('has the program from where it is told to', async () => {
    const cwd = folderWith({ 'packed.tgz': 'bytes' });
    const from = async (folder: string, program: string) => {
      const outcome = await gaugeleaf(['draft', '--club', folder, '--program', program], { cwd });
      return outcome.status === 0
        ? packageOf(join(cwd, folder)).dependencies.gaugeleaf
        : outcome.err;
    };
    expect(await from('a', 'packed.tgz')).toBe('file:packed.tgz');
    expect(readFileSync(join(cwd, 'a', 'packed.tgz'), 'utf8')).toBe('bytes');
    expect(await from('b', 'https://forge.example/club/program.git#v2')).toBe(
      'git+https://forge.example/club/program.git#v2',
    );
    expect(await from('c', 'none.tgz')).toContain('none.tgz cannot be read: there is no such file');
    expect(await from('d', 'gaugeleaf')).toContain(
      'gaugeleaf is neither the address of a git repository nor a packed file',
    );
    expect(existsSync(join(cwd, 'c')) || existsSync(join(cwd, 'd'))).toBe(false);
    const alone = await gaugeleaf(['draft', '--program', 'packed.tgz'], { cwd });
    expect(alone.err).toContain('--program is for a new folder');
  });

  it('has a workflow of the shape that forges run', async () => {
    const folder = await club();
    const { on, permissions, jobs } = workflowOf(folder);
    expect(Object.keys(on)).toEqual(['push', 'pull_request']);
    expect(permissions).toEqual({ contents: 'read' });
    for (const { 'runs-on': machine, steps } of Object.values(jobs)) {
      expect(machine).toBe('ubuntu-latest');
      for (const step of steps) {
        expect([step.uses, step.run].filter((each) => each !== undefined)).toHaveLength(1);
        if (step.uses !== undefined) expect(step.uses).toMatch(/^actions\/[a-z-]+@v\d+$/);
      }
      expect(steps.at(-1)).toMatchObject({ with: { path: 'print/' } });
    }
    expect(commandsOf(folder)).toEqual([['check', '--format', 'github'], ['booklet']]);
  });

  it('has an entry for pre-commit, the same as the one this repository offers', async () => {
    const folder = await club();
    const read = (path: string) => parse(readFileSync(path, 'utf8'));
    const [offered] = read(join(root, '.pre-commit-hooks.yaml'));
    const [repo] = read(join(folder, '.pre-commit-config.yaml')).repos;
    const [hook] = repo.hooks;
    expect(repo.repo).toBe('local');
    expect([hook.entry, hook.language]).toEqual(['npm run --silent check', 'system']);
    for (const key of ['id', 'files', 'pass_filenames']) {
      expect(hook[key], key).toEqual(offered[key]);
    }
    expect(offered.entry).toBe('gaugeleaf check');
    const files = new RegExp(offered.files);
    expect(['sheets/example-carburetor.md', 'edition.yaml'].every((each) => files.test(each))).toBe(
      true,
    );
    expect(files.test('README.md')).toBe(false);
  });

  it.runIf(isBuilt)(
    'works from a fresh folder: committed, checked and printed as the workflow does it',
    () => {
      const cwd = folderWith();
      const run = (folder: string, ...argv: readonly string[]) =>
        spawnSync(process.execPath, [command, ...argv], { cwd: folder, encoding: 'utf8' });
      expect(run(cwd, 'draft', '--club', 'club').status).toBe(0);
      const folder = join(cwd, 'club');
      const git = (...argv: readonly string[]) =>
        execFileSync(
          'git',
          ['-c', 'user.name=Editor', '-c', 'user.email=editor@example.invalid', ...argv],
          { cwd: folder, encoding: 'utf8', stdio: ['ignore', 'pipe', 'ignore'] },
        );
      git('init', '--quiet');
      git('add', '.');
      git('commit', '--quiet', '--no-verify', '-m', 'Begin');
      expect(git('ls-files').split('\n')).toContain('.github/workflows/gaugeleaf.yml');
      for (const argv of commandsOf(folder)) {
        // The quick part prints nothing.
        if (argv[0] === 'booklet' && isQuick) continue;
        const { status, stdout, stderr } = run(folder, ...argv);
        // Without a browser nothing prints; that is no fault of the folder.
        if (argv[0] === 'booklet' && status === 2 && stderr.includes('browser')) {
          console.warn('there is no browser: the booklet of the folder is not tried');
          continue;
        }
        expect({ argv, status, stderr: status === 0 ? '' : stderr }).toEqual({
          argv,
          status: 0,
          stderr: '',
        });
        if (argv[0] === 'check') expect(stdout).toBe('');
        else expect(existsSync(join(folder, 'print', 'booklet.pdf'))).toBe(true);
      }
      // What was printed is not kept under version control.
      expect(git('status', '--porcelain')).toBe('');
    },
    180_000,
  );
});

describe('a folder that is taken', () => {
  it('is left as it is', async () => {
    const cwd = folderWith({ 'club/notes.txt': 'mine', 'file.txt': '' });
    const outcome = await gaugeleaf(['draft', '--club', 'club'], { cwd });
    expect(outcome.status).toBe(2);
    expect(outcome.err).toContain('club holds notes.txt already, and nothing is written over');
    expect(readdirSync(join(cwd, 'club'))).toEqual(['notes.txt']);
    expect((await gaugeleaf(['draft', '--club', 'file.txt'], { cwd })).err).toContain('is a file');
    const both = await gaugeleaf(['draft', '--club', 'new', '--kind', 'carburetor'], { cwd });
    expect(both.err).toContain('--kind means nothing beside --club');
    expect(existsSync(join(cwd, 'new'))).toBe(false);
  });
});
