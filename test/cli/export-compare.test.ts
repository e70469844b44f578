import { execFileSync, spawnSync } from 'node:child_process';
import { cpSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { parse } from 'csv-parse/sync';
import { describe, expect, test } from 'vitest';
import { ajvOptions, readSchema } from '../../src/build/generate.mjs';
import { gaugeBook } from '../../src/gauges/index.ts';
import { inUnit, rational, readStatement } from '../../src/quantity/index.ts';
import { cleanSheet, folderWith } from '../project/folder.ts';
import { gaugeleaf } from './console.ts';

const root = join(import.meta.dirname, '..', '..');

function demo(): string {
  const folder = folderWith();
  cpSync(join(root, 'sheets'), join(folder, 'sheets'), { recursive: true });
  cpSync(join(root, 'edition.yaml'), join(folder, 'edition.yaml'));
  return folder;
}

function edit(folder: string, sheet: string, from: string | RegExp, to: string): void {
  const path = join(folder, 'sheets', `${sheet}.md`);
  const text = readFileSync(path, 'utf8');
  const changed = text.replace(from, to);
  expect(changed).not.toBe(text);
  writeFileSync(path, changed);
}

const orlo = 'orlo-t71-wexcombe-six';

describe('export', () => {
  test('the table is read back by a general-purpose CSV library, every cell of it', async () => {
    const { status, out } = await gaugeleaf(['export'], { cwd: root });
    expect(status).toBe(0);
    const rows: Record<string, string>[] = parse(out, {
      columns: true,
      record_delimiter: '\r\n',
      relax_column_count: false,
    });
    expect(rows.length).toBeGreaterThan(150);
    const book = gaugeBook();
    let numbers = 0;
    for (const row of rows) {
      expect(row.sheet).not.toBe('');
      expect(row.setting).not.toBe('');
      if (row.nominal === '' || row.unit === undefined) continue;
      const read = readStatement(row.written ?? '', { gauges: book });
      if (!read.ok || !read.statement.nominal) continue;
      numbers++;
      const { statement } = read;
      const exact = inUnit(read.statement.nominal.base, statement.dimension, row.unit);
      expect(rational(row.nominal_exact ?? '').equals(exact), row.written).toBe(true);
      // Never past the limit that the source gave.
      if (row.low !== '' && statement.low) {
        const low = inUnit(statement.low.base, statement.dimension, row.unit);
        expect(rational(row.low ?? '').compare(low)).toBeGreaterThanOrEqual(0);
      }
      if (row.high !== '' && statement.high) {
        const high = inUnit(statement.high.base, statement.dimension, row.unit);
        expect(rational(row.high ?? '').compare(high)).toBeLessThanOrEqual(0);
      }
    }
    expect(numbers).toBeGreaterThan(100);
  });

  test('the data file keeps to its published schema', async () => {
    const { out } = await gaugeleaf(['export', '--format', 'json'], { cwd: root });
    const ajv = new Ajv2020({ ...ajvOptions, code: {} });
    const validate = ajv.compile(readSchema(root, 'export') as object);
    const data = JSON.parse(out);
    expect(validate(data), JSON.stringify(validate.errors)).toBe(true);
    expect(validate({ ...data, settings: [{ sheet: 1 }] })).toBe(false);
  });

  test('a folder gets table, data file and metadata that name the same columns', async () => {
    const folder = demo();
    const { out } = await gaugeleaf(['export', '--format', 'package'], { cwd: folder });
    expect(out.split('\n')).toEqual([
      'print/data/settings.csv',
      'print/data/edition.json',
      'print/data/datapackage.json',
      '',
    ]);
    const read = (name: string) => readFileSync(join(folder, 'print', 'data', name), 'utf8');
    const { resources } = JSON.parse(read('datapackage.json'));
    const head = read('settings.csv').split('\r\n')[0];
    const fields: { name: string }[] = resources[0].schema.fields;
    expect(fields.map(({ name }) => name).join(',')).toBe(head);
    expect(resources[0].path).toBe('settings.csv');
  });

  const office = spawnSync('soffice', ['--version']).status === 0;
  test.skipIf(!office)(
    'a spreadsheet program reads the same cells',
    { timeout: 120_000 },
    async () => {
      const { out } = await gaugeleaf(['export'], { cwd: root });
      const folder = folderWith({ 'settings.csv': Buffer.from(out, 'utf8') });
      execFileSync('soffice', [
        `-env:UserInstallation=file://${folder}/profile`,
        '--headless',
        '--infilter=CSV:44,34,76,1,,0,false,false',
        '--convert-to',
        'csv:Text - txt - csv (StarCalc):44,34,76,1,,0,false,true,false',
        '--outdir',
        join(folder, 'out'),
        join(folder, 'settings.csv'),
      ]);
      const back: string[][] = parse(readFileSync(join(folder, 'out', 'settings.csv')), {
        bom: true,
      });
      const here: string[][] = parse(out);
      const column = (rows: string[][], name: string) => {
        const at = rows[0]?.indexOf(name) ?? -1;
        return rows.map((row) => row[at]);
      };
      for (const name of ['sheet', 'setting', 'written', 'sources']) {
        expect(column(back, name)).toEqual(column(here, name));
      }
    },
  );

  test('what a spreadsheet would run as a formula is made harmless, a signed size is not', async () => {
    const sheet = cleanSheet('one', {
      settings: '  air-bleed: { value: "+0.010 in", note: "=HYPERLINK(1)", from: m48 p. 1 }\n',
    });
    const folder = folderWith({
      'sheets/one.md': sheet,
      'edition.yaml': 'gaugeleaf-edition: 1\ntitle: T\n',
    });
    const { out } = await gaugeleaf(['export'], { cwd: folder });
    expect(out).toContain("'=HYPERLINK(1)");
    expect(out).toContain(',+0.010 in,');
  });
});

describe('compare', () => {
  test('two folders', async () => {
    const [before, after] = [demo(), demo()];
    edit(after, orlo, 'value: 13/64 ± 1/64 in', 'value: 7/32 ± 1/64 in');
    edit(after, orlo, '4. See that the float swings freely on its pin.\n', '');
    const { status, out } = await gaugeleaf(['compare', before, after], { cwd: root });
    expect(status).toBe(0);
    expect(out).toContain('1 sheet changed, 13 sheets the same');
    expect(out).toContain(
      'Float level, setting: 13/64 ± 1/64 in → 7/32 ± 1/64 in (0.016 in more, 0.5 of the old tolerance)',
    );
    expect(out).toContain(
      'Float alignment, step dropped: See that the float swings freely on its pin.',
    );
  });

  test('a data file, from the day it was saved', async () => {
    const folder = demo();
    await gaugeleaf(['export', '-f', 'json', '-o', 'first.json'], { cwd: folder });
    const same = await gaugeleaf(['compare', 'first.json'], { cwd: folder });
    expect(same.out).toContain('14 sheets the same');
    edit(folder, orlo, '500 ± 25 rpm', '550 ± 25 rpm');
    const { out } = await gaugeleaf(['compare', 'first.json', '--format', 'json'], { cwd: folder });
    const { sheets } = JSON.parse(out);
    expect(sheets[0].changes).toEqual([
      expect.objectContaining({
        kind: 'setting-changed',
        about: 'idle-speed',
        before: '500 ± 25 rpm',
        after: '550 ± 25 rpm',
        size: '50 rpm more, 1.0 of the old tolerance',
      }),
    ]);
  });

  test('a git revision, in a folder below the top of the repository', async () => {
    const top = folderWith();
    const folder = join(top, 'club');
    cpSync(demo(), folder, { recursive: true });
    const git = (...args: string[]) =>
      execFileSync('git', [
        '-C',
        top,
        '-c',
        'user.name=A',
        '-c',
        'user.email=a@b.invalid',
        ...args,
      ]);
    git('init', '-q');
    git('add', '.');
    git('commit', '-q', '-m', 'first edition');
    git('tag', 'first');
    edit(folder, orlo, 'status: proof', 'status: released');
    edit(folder, orlo, '# Orlo T71 two-barrel', '# Orlo T71, two barrels');
    const { status, out, err } = await gaugeleaf(['compare', 'first'], { cwd: folder });
    expect(out).toContain('1 sheet changed, 13 sheets the same');
    expect(out).toContain('revision 2 as before');
    expect(err).toContain(
      `${orlo} is released and changed, but its revision is still 2: write \`revision: 3\``,
    );
    expect(status).toBe(1);
    expect(git('status', '--porcelain').toString()).toContain(`${orlo}.md`);
  });

  test.each([
    ['nothing-here', 'there is no folder, data file or revision nothing-here'],
    ['--upload-pack=x', 'unknown option'],
    ['bad.json', 'bad.json is no data file: it is not JSON'],
    ['other.json', 'other.json is no data file that this version of gaugeleaf wrote'],
    ['absent.json', 'absent.json cannot be read: there is no such file'],
  ])('%s is refused in plain words', async (name, words) => {
    const folder = folderWith({
      'sheets/one.md': cleanSheet('one'),
      'bad.json': '{',
      'other.json': '{"gaugeleaf-data": 1, "sheets": [{}]}',
    });
    const { status, err } = await gaugeleaf(['compare', name], { cwd: folder });
    expect(status).toBe(2);
    expect(err).toContain(words);
  });
});
