import { spawnSync } from 'node:child_process';
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { describe, expect, test } from 'vitest';
import { examples } from '../../src/cli/examples.ts';
import { buildProgram } from '../../src/cli/program.ts';
import { cleanSheet, folderWith } from '../project/folder.ts';
import { gaugeleaf } from './console.ts';

const root = join(import.meta.dirname, '..', '..');
const wrong = cleanSheet('one').replace('from: m48 p. 40', 'from: m84 p. 40');

describe('standard input', () => {
  const folder = () => folderWith({ 'sheets/other.md': cleanSheet('other') });

  test('is checked as the sheet that it says it is', async () => {
    const clean = await gaugeleaf(['check', '-'], { cwd: folder(), input: cleanSheet('one') });
    expect(clean).toEqual({ status: 0, out: 'No findings in 1 sheet\n', err: '' });
    const { status, out } = await gaugeleaf(['check', '-'], { cwd: folder(), input: wrong });
    expect(status).toBe(1);
    expect(out).toMatch(/^sheets\/one\.md\n {2}\d+:\d+ {2}error {2}source-unknown/);
  });

  test('is checked as the file that is named', async () => {
    const { out } = await gaugeleaf(['check', '-', '--as', 'sheets/two.md'], {
      cwd: folder(),
      input: wrong,
    });
    expect(out).toContain('sheets/two.md');
    expect(out).toContain('sheet-misnamed');
    const odd = await gaugeleaf(['check', '-'], { cwd: folder(), input: 'sheet: ../../etc\n' });
    expect(odd.out).toContain('sheets/standard-input.md');
  });

  test('goes with nothing else, and is bounded', async () => {
    const two = await gaugeleaf(['check', '-', 'other'], { cwd: folder(), input: '' });
    expect([two.status, two.err]).toEqual([2, expect.stringContaining('standard input')]);
    const long = await gaugeleaf(['check', '-'], { cwd: folder(), input: 'x'.repeat(1_100_000) });
    expect([long.status, long.err]).toEqual([
      2,
      expect.stringContaining('more than 1048576 bytes'),
    ]);
  });
});

test('--quiet writes findings alone', async () => {
  const folder = folderWith({ 'sheets/one.md': cleanSheet('one') });
  expect(await gaugeleaf(['check', '-q'], { cwd: folder })).toEqual({
    status: 0,
    out: '',
    err: '',
  });
  writeFileSync(join(folder, 'sheets/one.md'), wrong);
  const { out } = await gaugeleaf(['check', '--quiet'], { cwd: folder });
  expect(out).toContain('source-unknown');
  expect(out).not.toContain('1 error in');
});

describe('-C', () => {
  test('goes into a folder before the command', async () => {
    const folder = folderWith({ 'club/sheets/one.md': cleanSheet('one') });
    const inside = await gaugeleaf(['-C', 'club', 'check', 'one'], { cwd: folder });
    expect(inside).toEqual({ status: 0, out: 'No findings in 1 sheet\n', err: '' });
    const twice = await gaugeleaf(['-C', 'club', '-C', 'sheets', 'check'], { cwd: folder });
    expect(twice.status).toBe(0);
  });

  test('refuses what is no folder', async () => {
    const { status, err } = await gaugeleaf(['-C', 'nowhere', 'check'], { cwd: root });
    expect([status, err]).toEqual([2, expect.stringContaining('there is no folder nowhere')]);
    expect((await gaugeleaf(['-C'], { cwd: root })).status).toBe(2);
  });
});

test('JSON of findings holds to its schema', async () => {
  const schema = JSON.parse(readFileSync(join(root, 'schemas/findings.schema.json'), 'utf8'));
  const validate = new Ajv2020({ allErrors: true }).compile(schema);
  const { out } = await gaugeleaf(['check', '-f', 'json'], { cwd: join(root, 'test/wrong') });
  const data = JSON.parse(out);
  expect(data.findings.length).toBeGreaterThan(200);
  validate(data);
  expect(validate.errors).toBeNull();
  const known = Object.keys(schema.$defs.finding.properties);
  for (const finding of data.findings)
    expect(known).toEqual(expect.arrayContaining(Object.keys(finding)));
});

describe('examples of help', () => {
  const nowhere = { write: () => true, isTTY: false };
  const program = buildProgram(
    { stdout: nowhere, stderr: nowhere } as unknown as Parameters<typeof buildProgram>[0],
    () => {},
  );

  test.each(program.commands.map((command) => [command.name(), command] as const))(
    '%s has some, of the command itself and with options that it has',
    (name, command) => {
      const calls = examples[name] ?? [];
      expect(calls.length).toBeGreaterThan(0);
      for (const [call, does] of calls) {
        expect(call.split(' ')[0]).toBe(name);
        expect(does.length).toBeGreaterThan(8);
        for (const [flag] of call.matchAll(/(?<= )--?[a-z-]+/g))
          expect(command.options.some(({ long, short }) => long === flag || short === flag)).toBe(
            true,
          );
      }
    },
  );

  test('are those of commands that there are', () => {
    expect(Object.keys(examples).sort()).toEqual(
      program.commands.map((each) => each.name()).sort(),
    );
  });
});

describe('completion', () => {
  test.each(['bash', 'zsh', 'fish'])('of %s knows every command and option', async (shell) => {
    const { status, out } = await gaugeleaf(['completion', shell], { cwd: root });
    expect(status).toBe(0);
    for (const word of [
      'check',
      'card',
      'find',
      'language-server',
      shell === 'fish' ? '-l watch' : '--watch',
      'half-letter',
    ])
      expect(out).toContain(word);
  });

  const bash = spawnSync('bash', ['--version']);
  test.skipIf(bash.status !== 0)('of bash completes in bash', async () => {
    const folder = folderWith({ 'sheets/one.md': cleanSheet('one') });
    const { out } = await gaugeleaf(['completion', 'bash'], { cwd: root });
    const completed = (line: string) => {
      const words = line.split(' ');
      const script = `${out}\nCOMP_WORDS=(${words.map((word) => `'${word}'`).join(' ')}); COMP_CWORD=${words.length - 1}; _gaugeleaf; printf '%s\\n' "\${COMPREPLY[@]}"`;
      const { stdout, stderr } = spawnSync('bash', ['--norc', '-c', script], {
        cwd: folder,
        encoding: 'utf8',
      });
      expect(stderr).toBe('');
      return stdout.trim().split('\n');
    };
    expect(completed('gaugeleaf che')).toEqual(['check']);
    expect(completed('gaugeleaf check --wa')).toEqual(['--watch']);
    expect(completed('gaugeleaf check -f s')).toContain('sarif');
    expect(completed('gaugeleaf card on')).toEqual(['one']);
  });
});
