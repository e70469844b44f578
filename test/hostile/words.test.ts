import { spawnSync } from 'node:child_process';
import { closeSync, existsSync, openSync, readdirSync, writeFileSync } from 'node:fs';
import { constants } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it, test } from 'vitest';
import { causeInWords } from '../../src/project/refusal.ts';
import { gaugeleaf } from '../cli/console.ts';
import { cleanSheet, folderWith } from '../project/folder.ts';

/** What a system or a library calls its faults, and no restorer does. */
const codes = /\bE(?:[A-Z]{3,}|2BIG)\b|\bERR_|Protocol error|errno|syscall|Target closed|node:/;
const program = join(import.meta.dirname, '..', '..', 'dist', 'gaugeleaf.js');
const edition = 'gaugeleaf-edition: 1\ntitle: Club\n';
const project = () =>
  folderWith({ 'edition.yaml': edition, 'sheets/a.md': cleanSheet('a'), file: 'x' });

test('every fault that a system knows is said in words', () => {
  for (const code of [
    ...Object.keys(constants.errno),
    'ERR_STREAM_DESTROYED',
    'ERR_INVALID_ARG_VALUE',
  ]) {
    const said = causeInWords(Object.assign(new Error(code), { code }));
    expect(said).not.toMatch(codes);
    expect(said.length).toBeGreaterThan(5);
  }
});

describe('what the system refuses is said in words', () => {
  it.each<readonly string[]>([
    ['export', '--out', 'file/below.csv'],
    ['export', '--out', `${'x'.repeat(300)}.csv`],
    ['export', '--out', '/proc/none/x.csv'],
    ['order', 'a', '--out', 'sheets/a.md/'],
    ['check', 'none/none.md'],
    ['check', 'x'.repeat(5000)],
    ['-C', 'file', 'check'],
    ['draft', '--from', 'none.csv', '--yes'],
    ['draft', '--from', 'sheets', '--yes'],
    ['draft', '--club', 'file/club'],
    ['record', 'none.yaml'],
    ['compare', 'none.json'],
    ['compare', 'no-revision'],
    ['card', 'a', '--browser', '/etc/passwd'],
    ['card', 'a', '--browser', '/bin/true'],
    ['card', 'a', '--browser', '/bin'],
    ['schema', '--out', '/dev/null/x'],
    ['pages', '--out', 'file'],
  ])('%j', async (...argv) => {
    const { status, err } = await gaugeleaf(argv, {
      cwd: project(),
      env: { PATH: process.env.PATH, GAUGELEAF_CACHE: folderWith() },
    });
    expect(status).toBe(2);
    expect(err).not.toMatch(codes);
    expect(err).not.toContain('a fault in the program');
    expect(err.trim().split('\n').length).toBeLessThan(4);
  });
});

const writing: readonly (readonly string[])[] = [
  ['check', '--format', 'json'],
  ['check', '--help'],
  ['size', '13/64 in'],
  ['kind'],
  ['order', 'a', '--text'],
  ['work', 'a'],
  ['sources', 'a', '--all'],
  ['export', '--format', 'json'],
  ['find', '13/64'],
  ['completion', 'bash'],
  ['explain'],
  ['record', 'a', '--out', '-'],
  ['draw', 'a'],
  ['schema'],
  ['--help'],
  ['--version'],
];

describe.skipIf(!existsSync(program))('standard output that takes nothing', () => {
  it.skipIf(!existsSync('/dev/full')).each(writing)('is full: %s %s', (...argv) => {
    const full = openSync('/dev/full', 'w');
    const { status, stderr } = spawnSync(process.execPath, [program, ...argv], {
      cwd: project(),
      stdio: ['ignore', full, 'pipe'],
      encoding: 'utf8',
    });
    closeSync(full);
    expect(stderr).toContain('gaugeleaf: what it writes cannot be taken: the disk is full\n');
    expect(status).toBe(2);
  });

  it.skipIf(process.platform === 'win32').each(writing)('is closed: %s %s', (...argv) => {
    const script = '"$0" "$@" 2>err | sleep 0; echo $PIPESTATUS';
    // The reader has ended before the first letter is written: it reads nothing, and Node takes longer to start.
    const { stdout } = spawnSync('/bin/bash', ['-c', script, process.execPath, program, ...argv], {
      cwd: project(),
      encoding: 'utf8',
    });
    expect(stdout.trim()).toBe('2');
  });
});

test('a browser that is ended in the midst of its work is told so', async () => {
  const folder = project();
  // Answers nothing and ends, as one that has no memory left.
  const path = join(folder, 'chrome');
  writeFileSync(path, '#!/bin/sh\nexit 9\n', { mode: 0o755 });
  const { status, err } = await gaugeleaf(['card', 'a', '--browser', path], {
    cwd: folder,
    env: { GAUGELEAF_CACHE: folderWith() },
  });
  expect(status).toBe(2);
  expect(err).not.toMatch(codes);
  expect(readdirSync(folder)).not.toContain('print');
});
