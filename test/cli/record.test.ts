import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { parse } from 'yaml';
import { validate } from '../../src/generated/validate-record.js';
import { judgeRecord } from '../../src/project/judge-record.ts';
import { listSheets } from '../../src/project/list-sheets.ts';
import { openProject } from '../../src/project/project.ts';
import { cardReadings } from '../../src/project/record-card.ts';
import { readPdf } from '../press/pdf.ts';
import { browserHere } from '../press/stand.ts';
import { cleanSheet, folderWith } from '../project/folder.ts';
import { gaugeleaf } from './console.ts';

const root = join(import.meta.dirname, '..', '..');
const demo = 'sheets/records/orlo-t71-wexcombe-six.1234.yaml';

const settings = `  fuel-pressure: { value: 3-1/2 ± 1/2 psi, from: m48 p. 21 }
  idle-vacuum: { value: 18-1/2 inHg min, from: m48 }
`;

function club(record?: string): string {
  const files: Record<string, string> = {
    'sheets/orlo-f27.md': cleanSheet('orlo-f27', { settings }),
  };
  if (record !== undefined) {
    files['sheets/records/orlo-f27.7.yaml'] =
      `gaugeleaf-record: 1\nsheet: orlo-f27\nrevision: 1\nserial: 7\nby: A. Hale\ndate: 2026-11-14\naltitude: 0 ft\nsettings:\n${record}`;
  }
  return folderWith(files);
}

const judge = (record: string, ...options: string[]) =>
  gaugeleaf(['record', 'sheets/records/orlo-f27.7.yaml', ...options], { cwd: club(record) });

describe('a blank record', () => {
  test('has every setting in working order with its limits, and passes its schema', async () => {
    const cwd = club();
    const { status, out, err } = await gaugeleaf(['record', 'orlo-f27', '--serial', 'T71/104 A'], {
      cwd,
    });
    expect([status, out]).toEqual([0, 'sheets/records/orlo-f27.t71-104-a.yaml\n']);
    expect(err).toContain('gaugeleaf record sheets/records/orlo-f27.t71-104-a.yaml judges it');
    const text = readFileSync(join(cwd, out.trim()), 'utf8');
    const data = parse(text);
    expect(validate(data), JSON.stringify(validate.errors)).toBe(true);
    expect(data).toMatchObject({ sheet: 'orlo-f27', revision: 1, serial: 'T71/104 A', by: null });
    expect(Object.keys(data.settings)).toEqual([
      'float-level',
      'idle-mixture',
      'fuel-pressure',
      'idle-vacuum',
    ]);
    expect(data.settings['fuel-pressure']).toEqual({
      wanted: '3-1/2 ± 1/2 psi',
      found: null,
      left: null,
      with: null,
      uncertainty: null,
    });
    expect(text).toContain('wanted: 3-1/2 ± 1/2 psi # 3 psi to 4 psi\n');
    expect(text).toContain('wanted: 18-1/2 inHg min # 18.5 inHg or more\n');
    expect(text).toContain('wanted: 13/64 in # no limits stated\n');
    expect(text).toContain('# 1  Float level: free end of the float; gasket removed\n');
  });

  test('never replaces a file, and is no sheet', async () => {
    const cwd = club();
    const first = await gaugeleaf(['record', 'sheets/orlo-f27.md'], { cwd });
    expect(first.out).toBe('sheets/records/orlo-f27.yaml\n');
    const again = await gaugeleaf(['record', 'sheets/orlo-f27.md'], { cwd });
    expect(again.status).toBe(2);
    expect(again.err).toContain('orlo-f27.yaml is there already');
    expect(listSheets(cwd).map((path) => path.slice(cwd.length))).toEqual(['/sheets/orlo-f27.md']);
    expect((await gaugeleaf(['check'], { cwd })).out).toContain('in 1 sheet');
  });

  test('goes to standard output or elsewhere when asked, and can be judged as it is', async () => {
    const cwd = club();
    const { out } = await gaugeleaf(['record', 'orlo-f27', '--out', '-'], { cwd });
    expect(out).toMatch(/^# yaml-language-server: \$schema=\S+record\.schema\.json\n/);
    mkdirSync(join(cwd, 'bench'));
    writeFileSync(join(cwd, 'bench', 'a.yaml'), out);
    const judged = await gaugeleaf(['record', 'bench/a.yaml'], { cwd });
    expect(judged.status).toBe(1);
    expect(judged.out).toContain('As left, 4 have no as-left reading.');
    expect(judged.err).toContain('the record does not say `serial`, `by`, `date`');
  });

  test.each(['orlo-t71-wexcombe-six', 'orlo-m58-wexcombe-marchwood', 'tamsel-t15-drayle-350'])(
    'of the demo sheet %s passes the schema and names its own figures',
    async (id) => {
      const { out } = await gaugeleaf(['record', id, '-o', '-'], { cwd: root });
      expect(validate(parse(out)), JSON.stringify(validate.errors)).toBe(true);
      const cwd = folderWith({
        'sheets/x.md': '',
        [`sheets/${id}.md`]: readFileSync(join(root, 'sheets', `${id}.md`), 'utf8'),
        'sheets/records/a.yaml': out,
      });
      const { err } = await gaugeleaf(['record', 'sheets/records/a.yaml'], { cwd });
      expect(err).not.toContain('record-invalid');
      expect(err).not.toContain('record-outdated');
    },
  );

  test('keeps the words of a hostile sheet inside its comments and quotes', async () => {
    const cwd = folderWith({
      'sheets/a.md':
        '---\ngaugeleaf: 1\nsheet: a\ntitle: "x\\nsettings: {}\\e[31m"\nunit: { kind: carburetor }\n' +
        'settings:\n  "a: b\\n c": { value: "1 in # x\\n  y: 2" }\n---\n',
    });
    const { out } = await gaugeleaf(['record', 'a', '-o', '-'], { cwd });
    expect(Object.keys(parse(out).settings)).toHaveLength(1);
    expect(out).not.toContain('\u001b');
  });
});

describe('the exit status', () => {
  const psi = (reading: string) => `  fuel-pressure: { left: ${reading}, uncertainty: 0.1 psi }\n`;
  test.each([
    ['all conform', psi('3.8 psi'), 0],
    ['all that have limits conform', `${psi('3.8 psi')}  float-level: { left: 0.204 in }\n`, 0],
    ['one is unproven', psi('3.95 psi'), 1],
    ['one does not conform', psi('4.2 psi'), 1],
    ['one has no as-left reading', `${psi('3.8 psi')}  idle-vacuum: { found: 20 inHg }\n`, 1],
    ['nothing could be judged', '  float-level: { left: 0.204 in }\n', 1],
    ['one cannot be read', psi('3.9 pis'), 2],
    ['it is no YAML', '  fuel-pressure: {', 2],
  ])('%s', async (_, record, status) => {
    expect((await judge(record)).status).toBe(status);
    expect((await judge(record, '--json')).status).toBe(status);
  });

  test('of what is not there is 2, with what was perhaps meant', async () => {
    const cwd = club('  float-level: {}\n');
    const missing = await gaugeleaf(['record', 'no.yaml'], { cwd });
    expect([missing.status, missing.err]).toEqual([
      2,
      expect.stringContaining('the record no.yaml cannot be read: there is no such file'),
    ]);
    const sheet = await gaugeleaf(['record', 'orlo-f72'], { cwd });
    expect([sheet.status, sheet.err]).toEqual([2, expect.stringContaining('orlo-f27')]);
    writeFileSync(
      join(cwd, 'a.yaml'),
      'gaugeleaf-record: 1\nsheet: orlo-f72\nsettings: { a: {} }\n',
    );
    const other = await gaugeleaf(['record', 'a.yaml'], { cwd });
    expect(other.status).toBe(2);
    expect(other.err).toContain('a.yaml\n  2:8  error  record-invalid\n');
    expect(other.err).toContain('fix: did you mean `orlo-f27`?');
  });

  test.each([
    [['orlo-f27', '--simple'], '--simple is for a record'],
    [['orlo-f27', '--card'], '--card is for a record'],
    [['a.yaml', '--serial', '3'], '--serial is for a blank record'],
    [['a.yaml', '--paper', 'a4'], '--paper is for printing'],
    [['a.yaml', '--out', 'b'], '--out is for the card or a blank record'],
    [['a.yaml', '--card', '--json'], '--card and --json cannot both be had'],
  ])('of %j is 2', async (args, words) => {
    const { status, err } = await gaugeleaf(['record', ...args], { cwd: club() });
    expect([status, err]).toEqual([2, expect.stringContaining(words)]);
  });
});

describe('the verdicts', () => {
  const record = `  fuel-pressure: { found: 4.5 psi, left: 3.95 psi, with: pressure gauge }
  idle-vacuum: { left: 20.0 inHg, with: mercury column }
  float-level: { left: 0.206 in, with: caliper }
`;

  test('as a table of 80 columns with signs, figures and gauges', async () => {
    const { out, err } = await judge(record);
    expect(err).toBe('');
    expect(out).not.toContain('\u001b');
    for (const line of out.split('\n')) expect(line.length).toBeLessThanOrEqual(80);
    expect(out).toContain('Guarded acceptance (JCGM 106:2012)');
    expect(out).toContain(
      [
        '  ? A   Fuel pressure      3-1/2 ± 1/2 psi      4.5 psi         3.95 psi',
        '    as found  does not conform: 0.5 psi above the upper limit 4 psi',
        '    as left   unproven: 0.05 psi inside the upper limit 4 psi, within the',
        '              0.251 psi of gauge and last figure; 65.5 % likely to be inside',
        '    with      pressure gauge, ± 0.25 psi (common practice, no source), with its',
        '              last figure ± 0.251 psi: accepts 3.251 psi to 3.749 psi',
        '  ✓ B   Idle vacuum        18-1/2 inHg min      —               20.0 inHg',
        '    carried   from sea level to 0 ft by V₂ = V₁ − (B(H₁) − B(H₂)), B the',
        '              standard barometer (idle-vacuum-at-altitude)',
        '    as left   conforms: 1.5 inHg inside the lower limit 18.5 inHg',
        '    with      mercury column, ± 0.1 inHg (common practice, no source), with its',
        '              last figure ± 0.116 inHg: accepts 18.616 inHg or more',
        '  – 1   Float level        13/64 in             —               0.206 in',
        '    as left   no limits stated; 0.002875 in more than the figure',
      ].join('\n'),
    );
    expect(out).toContain(
      'As left, 1 conforms, 1 is unproven, 1 has no limits to be judged by.\n' +
        'Not in the record: idle-mixture.\n',
    );
  });

  test('by the simple rule, which is named in every output', async () => {
    const { out } = await judge(record, '--simple');
    expect(out).toContain('Simple acceptance: the reading alone decides');
    expect(out).toContain('conforms: 0.05 psi inside the upper limit 4 psi');
    expect(out).toContain('As left (simple acceptance), 2 conform');
    expect(out).not.toContain('accepts');
    const { rule } = JSON.parse((await judge(record, '--simple', '--json')).out);
    expect(rule).toBe('simple acceptance');
  });

  test('as JSON with the same figures', async () => {
    const { out } = await judge(record, '--json');
    const told = JSON.parse(out);
    expect(told).toMatchObject({
      sheet: 'orlo-f27',
      serial: '7',
      rule: 'guarded acceptance',
      conforms: false,
      counts: { conforms: 1, unproven: 1, 'does not conform': 0, 'no limits': 1, 'no reading': 0 },
      missing: ['idle-mixture'],
      findings: [],
    });
    expect(told.settings[0]).toMatchObject({
      setting: 'fuel-pressure',
      label: 'Fuel pressure',
      wanted: '3-1/2 ± 1/2 psi',
      found: { reading: '4.5 psi', verdict: 'does not conform' },
      left: {
        reading: '3.95 psi',
        verdict: 'unproven',
        gauge: 'pressure gauge',
        uncertainty: '0.251 psi',
        uncertaintyFrom: 'common practice, no source',
        limits: '3 psi to 4 psi',
        accepted: '3.251 psi to 3.749 psi',
        // The normal distribution at 0.05 / 0.125 = 0.4 standard uncertainties: .6554 (table
        // from memory).
        probability: 0.6554,
      },
    });
  });

  test('with findings of the record, placed and with a cure, and nothing judged', async () => {
    const { status, out, err } = await judge('  fuel-presure: { lfet: 3.5 psi }\n');
    expect([status, out]).toEqual([2, '']);
    expect(err).toContain('sheets/records/orlo-f27.7.yaml\n  9:19  error  record-invalid\n');
    expect(err).toContain('did you mean `left`?');
    expect(err).toContain('Nothing was judged.');
  });

  test('of the demo show one of each', async () => {
    const { status, out } = await gaugeleaf(['record', demo], { cwd: root });
    expect(status).toBe(1);
    expect(out).toMatch(/^ {2}✓ /m);
    expect(out).toMatch(/^ {2}\? /m);
    expect(out).toMatch(/^ {2}✗ /m);
    expect(out).toMatch(/^ {2}– /m);
  });
});

describe('what the card is filled in with', () => {
  const readings = (rule: 'guarded' | 'simple') => {
    const outcome = judgeRecord(openProject(root, root), join(root, demo), rule);
    if (!('judged' in outcome)) throw new Error('the demo has faults');
    return cardReadings(outcome.judged);
  };

  test('is told once for all places, with a mark at uncertainties of the table', () => {
    const { serial, rule, settings } = readings('guarded');
    expect(serial).toBe('1234');
    expect(rule).toMatch(/^Guarded acceptance .*; \* an ordinary instrument's: common practice/);
    expect(settings.get('idle-mixture')).toEqual([
      {
        place: null,
        found: 'left 7/8 turn out; right 1-1/8 turns out',
        left: 'left 1-1/4 turns out; right 1-1/8 turns out',
        gauge: 'counted by eye ± 1/16 turn*',
        verdict: 'conforms',
      },
    ]);
    expect(settings.get('pump-stroke')?.[0]).toMatchObject({
      gauge: 'caliper no. 3 ± 0.001 in',
      verdict: 'no limits',
    });
    expect(settings.has('main-jet')).toBe(false);
  });

  test('names the simple rule beside every verdict that it gave', () => {
    const { rule, settings } = readings('simple');
    expect(rule).toMatch(/^Simple acceptance/);
    expect(settings.get('idle-vacuum')?.[0]?.verdict).toBe('conforms (simple)');
    expect(settings.get('fuel-pressure')?.[0]?.verdict).toBe('does not conform (simple)');
    expect(settings.get('pump-stroke')?.[0]?.verdict).toBe('no limits');
  });
});

const browser = await browserHere();

describe.skipIf(typeof browser === 'string')('the card filled in', () => {
  test('has every figure of the record on it', async () => {
    const out = join(folderWith(), 'filled.pdf');
    const { status, err } = await gaugeleaf(['record', demo, '--card', '-o', out], { cwd: root });
    expect(err).toContain('As left, ');
    expect(status, err).toBe(1);
    expect(existsSync(out)).toBe(true);
    const pages = (await readPdf(new Uint8Array(readFileSync(out)))).pages
      .map(({ text }) => text)
      .join(' ');
    // Fractions are drawn with a bar of their own, and stand behind their whole number without a hyphen.
    const drawn = (words: string) => words.replace(/(\d)-(?=\d+\/\d)/g, '$1 ');
    const text = pages.replace(/\s+/g, ' ').replaceAll('⁄', '/');
    const told = JSON.parse((await gaugeleaf(['record', demo, '--json'], { cwd: root })).out);
    const figures = told.settings.flatMap(
      ({ found, left }: Record<'found' | 'left', { reading: string } | null>) =>
        [found?.reading, left?.reading].filter((each) => each !== undefined),
    );
    expect(figures.length).toBeGreaterThan(12);
    for (const each of [...figures, '1234', 'H. Marlow', '2026-11-14'])
      expect(text).toContain(drawn(each));
    for (const word of ['conforms', 'unproven', 'does not conform', 'Guarded acceptance']) {
      expect(text).toContain(word);
    }
  }, 60_000);
});
