import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { parse } from 'csv-parse/sync';
import { describe, expect, test } from 'vitest';
import { cleanSheet, folderWith } from '../project/folder.ts';
import { gaugeleaf } from './console.ts';

const root = join(import.meta.dirname, '..', '..');
const eight = 'dunnow-c31-tollgarth-eight';

describe('sources', () => {
  test('sets what the sources of a sheet say side by side, in 80 columns', async () => {
    const { status, out, err } = await gaugeleaf(['sources', eight], { cwd: root });
    expect([status, err]).toEqual([0, '']);
    const lines = out.split('\n');
    expect(Math.max(...lines.map((line) => line.length))).toBeLessThanOrEqual(80);
    const words = out.replace(/\s+/g, ' ');
    expect(words).toMatch(/Choke pull-down \* No\. 23 = 0\.1540 in ≠ No\. 32 = 3\.91 mm/);
    expect(words).toContain('r70: The leaflet has the two digits changed about.');
    expect(words).not.toContain('Main jet');
    expect(lines.at(-2)).toMatch(/^\* the figure of the sheet/);
  });

  test('leaves out what agrees, or adds what one source alone says', async () => {
    const differing = await gaugeleaf(['sources', 'ostrel-n63-tollgarth-eight', '-d'], {
      cwd: root,
    });
    expect(differing.out).toContain('Points gap');
    expect(differing.out).not.toContain('Timing at idle');
    const all = await gaugeleaf(['sources', eight, '--all'], { cwd: root });
    expect(all.out).toContain('Main jet');
  });

  test('takes the whole edition without a sheet, in its order', async () => {
    const { out } = await gaugeleaf(['sources'], { cwd: root });
    const at = ['(brennick-', '(ostrel-', '(dunnow-c31-'].map((name) => out.indexOf(name));
    expect(at.every((place) => place > 0)).toBe(true);
    expect([...at].sort((a, b) => a - b)).toEqual(at);
  });

  test('as CSV has every statement of the edition, as it stands on its sheet', async () => {
    const { out } = await gaugeleaf(['sources', '--format', 'csv'], { cwd: root });
    const rows: Record<string, string>[] = parse(out, { columns: true, record_delimiter: '\r\n' });
    expect(rows.length).toBeGreaterThan(150);
    for (const { sheet = '', written = '', source = '' } of rows) {
      const text = readFileSync(join(root, 'sheets', `${sheet}.md`), 'utf8');
      if (!written.includes(', ')) expect(text).toContain(written.replace(/^\w+ (?=\d)/, ''));
      expect(text).toContain(source);
    }
  });

  test('writes a file whole where one is named', async () => {
    const folder = folderWith({ 'sheets/one.md': cleanSheet('one') });
    const { out } = await gaugeleaf(['sources', '-f', 'csv', '-o', 'said.csv'], { cwd: folder });
    expect(out).toBe('said.csv\n');
    expect(readFileSync(join(folder, 'said.csv'), 'utf8')).toMatch(/^sheet,title,setting,/);
  });

  test('says so where there is nothing to compare, no such sheet, or no sheet to print', async () => {
    const folder = folderWith({ 'sheets/one.md': cleanSheet('one') });
    const around = { cwd: folder };
    expect((await gaugeleaf(['sources', 'one'], around)).out).toBe(
      'No two sources of the sheet speak to one setting together.\n',
    );
    const missing = await gaugeleaf(['sources', 'oen'], around);
    expect([missing.status, missing.err]).toEqual([
      2,
      expect.stringContaining('perhaps sheets/one.md was meant'),
    ]);
    const all = await gaugeleaf(['sources', '--pdf'], around);
    expect([all.status, all.err]).toEqual([2, expect.stringContaining('sources SHEET --pdf')]);
  });

  test('prints no page of a sheet with an error, and says what is to be had', async () => {
    const wrong = cleanSheet('one').replace('from: m48 p. 40', 'from: m84 p. 40');
    const folder = folderWith({ 'sheets/one.md': wrong });
    const { status, err } = await gaugeleaf(['sources', 'one', '--pdf'], { cwd: folder });
    expect(status).toBe(1);
    expect(err).toContain('source-unknown');
    expect(err).toContain('Mend these, or take the table: the same without --pdf.');
  });
});
