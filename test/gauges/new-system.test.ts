import { cpSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { build } from 'esbuild';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { systemsModule } from '../../src/build/systems.mjs';
import { tablesModule } from '../../src/build/tables.mjs';
import { markedBlocks, root } from '../docs/marked-blocks.ts';
import type * as Program from './program-entry.ts';

/**
 * A program in which the system of the guide is one of its own: the table of the guide, one line in
 * `systems.yaml`, and no other file than those of `src/`.
 */
const [table] = markedBlocks(readFileSync(join(root, 'DEVELOPERS.md'), 'utf8')).filter(
  ({ mark }) => mark === 'gauge-system',
);
const folder = mkdtempSync(join(tmpdir(), 'gaugeleaf-system-'));
let program: typeof Program;

beforeAll(async () => {
  const data = join(folder, 'src/gauges/data');
  mkdirSync(data, { recursive: true });
  cpSync(join(root, 'src/gauges/data'), data, { recursive: true });
  writeFileSync(join(folder, table?.options.get('') ?? ''), table?.text ?? '');
  const list = readFileSync(join(data, 'systems.yaml'), 'utf8');
  writeFileSync(join(data, 'systems.yaml'), `${list.trimEnd()}\n  - kelby-wire\n`);
  const made = new Map([
    ['tables.ts', tablesModule(folder)],
    ['gauge-systems.ts', systemsModule(folder)],
  ]);
  const outfile = join(folder, 'program.mjs');
  await build({
    entryPoints: [join(root, 'test/gauges/program-entry.ts')],
    outfile,
    bundle: true,
    format: 'esm',
    platform: 'node',
    logLevel: 'silent',
    banner: {
      js: "import{createRequire as __createRequire}from'node:module';const require=__createRequire(import.meta.url);",
    },
    plugins: [
      {
        name: 'made-anew',
        setup: ({ onLoad }) => {
          onLoad({ filter: /generated\/(?:tables|gauge-systems)\.ts$/ }, ({ path }) => ({
            contents: made.get(path.split('/').at(-1) ?? '') ?? '',
            loader: 'ts',
          }));
        },
      },
    ],
  });
  program = (await import(pathToFileURL(outfile).href)) as typeof Program;
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

function read(text: string) {
  return program.readStatement(text, { gauges: program.gaugeBook() });
}

function labelOf(text: string): string | null {
  const reading = read(text);
  return reading.ok ? (reading.statement.nominal?.gauge?.label ?? null) : reading.problem.message;
}

function problemOf(text: string) {
  const reading = read(text);
  return reading.ok ? null : reading.problem;
}

describe('a system that one file and one line add', () => {
  test.each([
    '3 KWG',
    'No. 3 KWG',
    'KWG 3',
    'K.W.G. 3',
    '3 k.w.g.',
    '#3 Kelby wire gauge',
    '3 Kelby',
    'Kelby No. 3',
    'No. 3 (.212) KWG',
  ])('is read from %s', (text) => expect(labelOf(text)).toBe('3 KWG'));

  test('is exact, and knows its source', () => {
    const gauge = program.gaugeBook().find('kelby-wire' as never, '3');
    expect(gauge?.mm.toFraction()).toBe('6731/1250');
    expect(gauge?.source).toBe('invented');
  });

  test('says which names it has', () => {
    expect(problemOf('14 KWG')?.message).toBe(
      'there is no KWG 14; Kelby wire gauge runs from 1 to 4 (near it: 4 KWG, 1 KWG)',
    );
    expect(problemOf('No. 3 (.121) KWG')?.message).toContain('3 KWG is 0.2120 in');
  });

  test('is among what a number without a system may mean', () => {
    expect(problemOf('3 wire')?.candidates).toContain('3 KWG');
  });

  test('is found in running text', () => {
    const text = 'Pass a KWG 3 below the float, then the 2 KWG wire.';
    const found = program.scanStatements(text, { gauges: program.gaugeBook() });
    expect(found.map(({ statement }) => statement.nominal?.gauge?.label)).toEqual([
      '3 KWG',
      '2 KWG',
    ]);
  });

  test('is thought of when two figures disagree', () => {
    const misprint = (right: string, wrong: string) => {
      const [one, other] = [read(right), read(wrong)].map((reading) =>
        reading.ok ? reading.statement.nominal : null,
      );
      return one && other ? program.findMisprint(one, other, program.gaugeBook()) : null;
    };
    expect(misprint('0.2190 in', '3 KWG')).toMatchObject({
      kind: 'neighboring-gauge',
      suggestion: '2 KWG',
    });
    expect(misprint('0.2120 in', 'No. 3 music wire')).toMatchObject({
      kind: 'wrong-system',
      suggestion: '3 KWG',
    });
  });

  test('is in a kit, and has its namesakes and twins', () => {
    const entry = program.readKitEntry('3 KWG');
    expect(entry.ok && entry.gauges.map(({ label }) => label)).toEqual(['3 KWG']);
    const gauge = program.gaugeBook().find('kelby-wire' as never, '3');
    const others = gauge ? program.confusable(gauge) : [];
    expect(others.map(({ gauge: { label } }) => label)).toContain('No. 3 drill');
    expect(gauge && program.namesOf(gauge.mm).map(({ label }) => label)).toContain('3 KWG');
    expect(gauge && program.gaugeUncertainty(gauge).toFraction()).toBe('127/5000');
  });

  test('is printed, in the list of what to gather and in a table of its own', () => {
    const sheet = program.sheetWith('3 KWG');
    const { groups, kit } = program.gaugesToGather([{ sheet }]);
    expect(groups.map(({ title }) => title)).toContain('Wire feelers');
    expect(program.gaugeTables(kit)).toContainEqual({
      title: 'Kelby wire gauge',
      rows: ['4', '3', '2'].map((name) => expect.objectContaining({ label: `${name} KWG` })),
    });
  });

  test('is a gauge that the checks hold against its setting', () => {
    expect(program.foundWith('3 KWG').map(({ check }) => check)).toContain('gauge-off-nominal');
    expect(program.foundWith('9 KWG').map(({ check }) => check)).toContain('gauge-nonexistent');
  });
});

test.each([
  ['familly: wire', 'a record has no `familly`'],
  ['named: colour', '`named` is one of'],
  ['bench: perhaps', '`bench` is no flag'],
  ['words: kelby', '`words` is no list'],
])('a record that says `%s` stops the build', (line, reason) => {
  const path = join(folder, table?.options.get('') ?? '');
  const key = line.split(':')[0] ?? '';
  const text = (table?.text ?? '').replace(new RegExp(`^# ${key}:.*\n`, 'm'), '');
  writeFileSync(path, text.replace('# noun:', `# ${line}\n# noun:`));
  expect(() => systemsModule(folder)).toThrow(reason);
  writeFileSync(path, table?.text ?? '');
});
