import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { cleanSheet, folderWith } from '../project/folder.ts';
import { gaugeleaf } from './console.ts';

const record = (left: string) =>
  `gaugeleaf-record: 1\nsheet: orlo-f27\nserial: 7\nby: H. Marlow\ndate: 2026-11-14\nsettings:\n  float-level:\n    left: ${left}\n`;

/** A project with one sheet whose manual has a neighbor, and one record. */
function folder(bench: string): string {
  const sheet = cleanSheet('orlo-f27').replace('settings:\n', `${bench}settings:\n`);
  return folderWith({
    'edition.yaml': 'gaugeleaf-edition: 1\ntitle: Settings\n',
    'sheets/orlo-f27.md': sheet,
    'sheets/records/orlo-f27.7.yaml': record('0.204 in'),
  });
}

const add = (cwd: string) =>
  gaugeleaf(['record', 'sheets/records/orlo-f27.7.yaml', '--add-to', 'bench'], { cwd });
const sheetIn = (cwd: string) => readFileSync(join(cwd, 'sheets/orlo-f27.md'), 'utf8');

describe('`record --add-to`', () => {
  test.each([
    [
      'keys in a block',
      '  bench:\n    title: Units # ours\n    kind: measured\n    readings:\n      float-level: [0.203 in, 0.202 in]\n',
      '  bench:\n    title: Units # ours\n    kind: measured\n    records: [7]\n    readings:\n      float-level: [0.203 in, 0.202 in]\n',
    ],
    [
      'keys in braces, and a count that goes up',
      '  bench: { title: Units, kind: measured, units: 1, readings: { float-level: [0.203 in] } }\n',
      '  bench: { title: Units, kind: measured, units: 2, records: [7], readings: { float-level: [0.203 in] } }\n',
    ],
    [
      'a list in brackets',
      '  bench: { title: Units, kind: measured, records: [ "a 5" ] }\n',
      '  bench: { title: Units, kind: measured, records: [ "a 5", 7 ] }\n',
    ],
    [
      'a list of lines',
      '  bench:\n    title: Units\n    kind: measured\n    records:\n      - 5 # the first\n',
      '  bench:\n    title: Units\n    kind: measured\n    records:\n      - 5 # the first\n      - 7\n',
    ],
  ])('%s', async (_name, before, after) => {
    const cwd = folder(before);
    const text = sheetIn(cwd);
    const { status, err } = await add(cwd);
    expect(err).toContain('record 7 added to `bench`');
    expect(status).toBe(0);
    expect(sheetIn(cwd)).toBe(text.replace(before, after));
    const again = await add(cwd);
    expect(again.status).toBe(2);
    expect(again.err).toContain('counts the record 7 already');
  });

  test('counts the reading, and asks the record anew when it was changed', async () => {
    const cwd = folder(
      '  bench: { title: Units, kind: measured, readings: { float-level: [0.203 in, 0.202 in, 0.204 in] } }\n',
    );
    await add(cwd);
    const env = { XDG_CACHE_HOME: join(cwd, 'cache') };
    const summed = await gaugeleaf(['measured', 'orlo-f27', '--json'], { cwd, env });
    expect(JSON.parse(summed.out).settings[0]).toMatchObject({ n: 4, meanExact: '813/4000' });
    const check = () => gaugeleaf(['check'], { cwd, env });
    expect((await check()).out).not.toContain('measured-outlier');
    const { writeFileSync } = await import('node:fs');
    writeFileSync(join(cwd, 'sheets/records/orlo-f27.7.yaml'), record('0.904 in'));
    expect((await check()).out).toContain('measured-outlier');
  });

  test('refuses a source of paper', async () => {
    const cwd = folder('');
    const { status, err } = await add(cwd);
    expect(status).toBe(2);
    expect(err).toContain('is no source of measured units');
  });
});
