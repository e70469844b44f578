import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { cardModel } from '../../src/press/card/model.ts';
import { unitMatter } from '../../src/press/site/unit-model.ts';
import { examineFile } from '../../src/project/examine-file.ts';
import { openProject } from '../../src/project/project.ts';
import { judgedBy } from '../conformance/stand.ts';
import { cleanSheet, folderWith } from '../project/folder.ts';
import { gaugeleaf } from './console.ts';

// That a source states nothing is a fact of its own: it is printed as such, and nothing is made of it.

const settings = `  main-jet: { value: not stated, from: m48 p. 28 }
  idle-speed: { value: not stated, from: m48 p. 35 }
  float-alignment: { value: not stated, from: m48 p. 30 }
  pump-delivery:
    places: { primary: not stated, secondary: 3 mL per 10 strokes }
    from: m48 p. 34
`;
const path = 'sheets/orlo-f27.md';
const record = (lines: string) =>
  `gaugeleaf-record: 1\nsheet: orlo-f27\nrevision: 1\nserial: 7\nby: A. Hale\ndate: 2026-11-14\naltitude: 0 ft\nsettings:\n${lines}`;

function club(lines: string): string {
  return folderWith({
    [path]: cleanSheet('orlo-f27', { settings }),
    'sheets/records/orlo-f27.7.yaml': record(lines),
  });
}

const out = async (...argv: string[]) => {
  const cwd = club('  main-jet: { left: 1.05 mm, with: caliper }\n');
  const told = await gaugeleaf(argv, { cwd });
  return told.out === '' ? told.err : told.out;
};

describe('not stated', () => {
  test('check finds nothing in it', async () => {
    const findings = JSON.parse(await out('check', path, '--format', 'json')).findings as {
      name: string;
      message: string;
    }[];
    const about = findings.filter(({ message }) => /main-jet|idle-speed|not stated/.test(message));
    expect(about).toEqual([]);
  });

  test('card and page print it', () => {
    const cwd = club('');
    const project = openProject(cwd, cwd);
    const read = examineFile(project, join(cwd, path));
    if (!read.ok) throw new Error(read.refused.message);
    const { sheet } = read;
    const options = {
      paper: 'letter',
      draft: false,
      picture: null,
      capHeights: new Map(),
      readings: null,
    };
    const card = JSON.stringify(cardModel(sheet, [], null, options as never));
    expect(card.match(/not stated/g)?.length).toBeGreaterThanOrEqual(4);
    const facts = { picture: null, texts: new Map(), facts: { altitude: null }, pages: new Set() };
    const page = JSON.stringify(unitMatter({ sheet, findings: [] }, 1, facts as never));
    expect(page.match(/not stated/g)?.length).toBeGreaterThanOrEqual(3);
  });

  test('export has it as the value, and no figure', async () => {
    const lines = (await out('export', '--format', 'csv')).split('\n');
    const row = lines.find((line) => line.includes('idle-speed')) ?? '';
    // Dimension and form, and no unit, nominal or limit behind them.
    expect(row).toContain(',not stated,condition,condition,,,,,,,,,');
  });

  test('sources has it as what the source says', async () => {
    expect(await out('sources', path, '--all')).toMatch(/not stated/);
  });

  test('compare tells the figure that was there before', async () => {
    const was = settings.replace('idle-speed: { value: not stated', 'idle-speed: { value: 475 rpm');
    const before = folderWith({ [path]: cleanSheet('orlo-f27', { settings: was }) });
    const told = await out('compare', join(before, 'sheets'), 'sheets');
    expect(told).toMatch(/475 rpm[\s\S]*not stated/);
    expect(told).not.toContain('less');
  });

  test('a record keeps the reading and does not judge it', () => {
    const judge = judgedBy(settings);
    const left = (name: string, reading: string) =>
      judge(`settings:\n  ${name}: { left: ${reading}, with: caliper }\n`);
    expect(left('main-jet', '1.05 mm')).toMatchObject({
      verdicts: { 'main-jet left': 'no limits: no limits stated' },
      faults: [],
    });
    for (const reading of ['parallel', 'not stated', 'not parallel']) {
      expect(left('float-alignment', reading)).toMatchObject({
        verdicts: { 'float-alignment left': 'no limits: the sheet says not stated' },
        faults: [],
      });
    }
  });
});
