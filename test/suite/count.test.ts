import { execFileSync } from 'node:child_process';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { folderWith } from '../project/folder.ts';

const script = join(import.meta.dirname, 'count.mjs');

/** What `vitest --reporter=json` tells of one file. */
function told(tests: readonly (readonly [string, string])[], status = 'passed'): string {
  const assertionResults = tests.map(([fullName, end]) => ({ fullName, status: end }));
  return JSON.stringify({ testResults: [{ name: '/a.test.ts', status, assertionResults }] });
}

function counted(files: Readonly<Record<string, string>>, ...names: string[]): readonly string[] {
  const folder = folderWith(files);
  const paths = names.map((name) => join(folder, name));
  return execFileSync(process.execPath, [script, ...paths], { encoding: 'utf8' })
    .trimEnd()
    .split('\n');
}

test('a test that two parts ran is counted once, with the worse of its ends', () => {
  const quick = told([
    ['a', 'passed'],
    ['prints', 'pending'],
    ['b', 'failed'],
  ]);
  const press = told([
    ['a', 'passed'],
    ['prints', 'passed'],
    ['b', 'passed'],
  ]);
  const lines = counted({ 'quick.json': quick, 'press.json': press }, 'quick.json', 'press.json');
  expect(lines).toEqual(['2 passed, 1 failed']);
});

test('two tests of one name are two, and what was skipped is told before the last line', () => {
  const part = told([
    ['a', 'passed'],
    ['a', 'passed'],
    ['c', 'skipped'],
  ]);
  expect(counted({ 'part.json': part }, 'part.json')).toEqual([
    '1 skipped: what they need is not on this machine',
    '2 passed, 0 failed',
  ]);
});

test('a file that could not be read, and a run that told nothing, have failed', () => {
  expect(counted({ 'part.json': told([], 'failed') }, 'part.json', 'none.json')).toEqual([
    '0 passed, 2 failed',
  ]);
});
