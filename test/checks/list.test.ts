import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { allChecks, checkGroups, checkNamed } from '../../src/checks/index.ts';

const folder = new URL('../../src/checks/', import.meta.url);

/** The names of the files that declare a check. */
function checkFiles(): readonly string[] {
  return readdirSync(folder)
    .filter((name) => name.endsWith('.ts') && name !== 'define.ts')
    .filter((name) => /\bdefineCheck\(/.test(readFileSync(new URL(name, folder), 'utf8')))
    .map((name) => name.slice(0, -'.ts'.length));
}

describe('the list of checks', () => {
  test('holds every check of the folder, under the name of its file, once', () => {
    expect(allChecks.map((check) => check.id).sort()).toEqual([...checkFiles()].sort());
  });

  test('stands in the order of the groups', () => {
    const order = allChecks.map((check) => checkGroups.indexOf(check.group));
    expect(order).toEqual([...order].sort((a, b) => a - b));
  });

  test('finds a check by name', () => {
    expect(checkNamed('value-undefined')?.severity).toBe('error');
    expect(checkNamed('value-undefiend')).toBeNull();
  });

  test.each(allChecks.map((check) => [check.id, check] as const))(
    '%s says what it is in sentences',
    (_, check) => {
      expect(check.summary).toMatch(/^[A-Z].*\.$/s);
      expect(check.explain).toMatch(/^[A-Z].*\.$/s);
      if (check.severity === 'warning') {
        // Some doubts have a key of their own that says they are meant: `places-differ:`.
        expect(check.explain, 'when it may be accepted').toMatch(/\baccept|`[a-z-]+:/i);
      }
      for (const { message, fix } of Object.values(check.messages)) {
        expect(message).not.toMatch(/\.$/);
        expect(fix ?? '').not.toMatch(/\.$/);
      }
    },
  );
});
