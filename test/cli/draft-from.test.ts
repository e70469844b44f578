import { existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { blockMarked } from '../docs/pages.ts';
import { clubList, listAsCsv, planted } from '../import/club-list.ts';
import { flatSpreadsheet, hasOffice, savedAs } from '../import/spreadsheet.ts';
import { folderWith } from '../project/folder.ts';
import { gaugeleaf } from './console.ts';

const edition = 'gaugeleaf-edition: 1\ntitle: Register\n';

/** The cells that a report lists, with the lines below each. */
function listed(out: string): ReadonlyMap<string, string> {
  const found = new Map<string, string>();
  let at = '';
  for (const line of out.split('\n')) {
    const [, cell = ''] = /^ {2}([A-Z]+\d+(?:(?::| and )[A-Z]+\d+)?) {2}/.exec(line) ?? [];
    if (cell !== '') at = cell;
    if (at !== '' && line.startsWith('  ')) found.set(at, `${found.get(at) ?? ''}${line.trim()}\n`);
  }
  return found;
}

interface Finding {
  readonly file: string;
  readonly name: string;
  readonly severity: string;
}

async function findingsOf(cwd: string): Promise<readonly Finding[]> {
  const { out } = await gaugeleaf(['check', '--format', 'json'], { cwd });
  return (JSON.parse(out) as { findings: Finding[] }).findings;
}

async function drafted(name: string, bytes: Uint8Array | string) {
  const cwd = folderWith({ [name]: bytes, 'edition.yaml': edition });
  mkdirSync(join(cwd, 'sheets'));
  const proposal = await gaugeleaf(['draft', '--from', name], { cwd });
  expect(proposal).toMatchObject({ status: 0, out: 'list.mapping.yaml\n' });
  expect(readdirSync(join(cwd, 'sheets'))).toEqual([]);
  const outcome = await gaugeleaf(['draft', '--from', name], { cwd });
  return { cwd, proposal, outcome };
}

/** What the ten slips have to be told as, whichever file the list came in. */
function expectSlips(slips: ReadonlyMap<string, string>, merged: boolean): void {
  const wanted = Object.values(planted).filter((cell) => merged || !cell.includes(':'));
  expect([...slips.keys()]).toEqual(wanted);
  const told = (name: keyof typeof planted) => slips.get(planted[name]) ?? '';
  expect(told('thousandths as inches')).toContain(
    '203 in lies outside what is usual as Float level, 0 in to 2 in\ncould be: 203 thou\nleft blank',
  );
  expect(told('a date made of 3-8')).toMatch(
    /a day of the calendar.*\ncould be: 3\/8 in\nleft blank/,
  );
  expect(told('two cells that changed places')).toContain('could be: M14 is 475, and N14 is 19');
  expect(told('millimeters in the column of inches')).toContain('could be: 5.16 mm\nleft blank');
  expect(told('a vacuum in kilopascals')).toContain('could be: 64 kPa');
  if (merged) {
    expect(told('a maker merged over two rows')).toContain('row 28 left out');
    expect(told('two settings merged into one cell')).toContain('K31, L31 left blank');
  }
  expect(told('a mark that points to a footnote')).toContain('could be: 7/32 in\nleft blank');
  expect(told('a unit that stands there twice')).toContain('stands in row 12 already');
  expect(told('a stray footnote')).toContain('row 62 is no sheet');
}

/** The sheets with a blank, and everything else that is found in the folder. */
async function expectSheets(cwd: string, merged: boolean): Promise<void> {
  const sheets = readdirSync(join(cwd, 'sheets'));
  expect(sheets).toHaveLength(merged ? 58 : 59);
  // A paper that many sheets share, or a figure far from others', is worth a note and no more.
  const findings = (await findingsOf(cwd)).filter(({ severity }) => severity !== 'note');
  expect(findings.filter(({ name }) => name !== 'blank-to-fill')).toEqual([]);
  const blanks = findings.map(({ file }) => file.replace(/^sheets\/|\.md$/g, '')).sort();
  // The units of rows 5, 9, 14 (two cells), 18, 23, 31 (two) and 36.
  const rows = [5, 9, 14, 14, 18, 23, ...(merged ? [31, 31] : []), 36];
  expect(blanks).toEqual(rows.map(unitOfRow).sort());
}

function unitOfRow(row: number): string {
  const [maker, model] = clubList({ merged: false })[row - 1] ?? [];
  return `${String(maker)}-${String(model)}`.toLowerCase();
}

describe('a list of sixty rows with planted slips', () => {
  it('as CSV: each slip is told at its cell, nothing else, and all other sheets pass', async () => {
    const { cwd, proposal, outcome } = await drafted(
      'list.csv',
      listAsCsv(clubList({ merged: false })),
    );
    expect(proposal.err).toContain('H Float level (in): float-level, unit in (sure');
    expect(proposal.err).not.toContain('not known');
    expect(outcome.status).toBe(1);
    expectSlips(listed(outcome.out), false);
    await expectSheets(cwd, false);
    const sheet = readFileSync(join(cwd, 'sheets', 'orlo-f27.md'), 'utf8');
    expect(sheet).toContain('  list: { title: list.csv, note: row 2 }\n');
    expect(sheet).toContain('  float-level:\n    value: 13/64 in\n');
    expect(sheet).toContain('    from: [s1 p. 20, list H2]\n');
  }, 120_000);

  it.runIf(hasOffice).each(['xlsx', 'ods'] as const)(
    'as %s from a spreadsheet program: all ten',
    async (format) => {
      const flat = flatSpreadsheet([{ name: 'Register', rows: clubList({ merged: true }) }]);
      const bytes = savedAs(format, flat, folderWith());
      const { cwd, outcome } = await drafted(`list.${format}`, bytes);
      expect(outcome.status).toBe(1);
      expectSlips(listed(outcome.out), true);
      await expectSheets(cwd, true);
      const values = (name: string) =>
        /float-level:\n {4}value: (.*)/.exec(
          readFileSync(join(cwd, 'sheets', `${name}.md`), 'utf8'),
        )?.[1];
      // As the cells show them: three places, sixty-fourths, a tolerance, a unit of their own.
      expect(['tarn-l83', 'bressac-r35', 'pellow-1e', 'tarn-t64'].map(values)).toEqual([
        '0.203 in',
        '15/64 in',
        '13/64 ± 1/64 in',
        '5.16 mm',
      ]);
    },
    300_000,
  );
});

describe('a second import', () => {
  const list = (level: string) =>
    `Maker,Model,Float level (in),Float level gasket,Float level at\nOrlo,F27,${level},removed,free end\n`;
  const mapping = ['--features', 'single-barrel,downdraft', '--yes'];

  it('leaves the editor’s work alone and tells where the list says otherwise', async () => {
    const cwd = folderWith({ 'list.csv': list('13/64'), 'edition.yaml': edition });
    mkdirSync(join(cwd, 'sheets'));
    const first = await gaugeleaf(['draft', '--from', 'list.csv', ...mapping], { cwd });
    expect(first).toMatchObject({ status: 0, out: 'list.mapping.yaml\nsheets/orlo-f27.md\n' });
    const path = join(cwd, 'sheets', 'orlo-f27.md');
    // The editor renames the sheet and corrects its value; the list's figure is the same, then another.
    const edited = readFileSync(path, 'utf8')
      .replace('sheet: orlo-f27', 'sheet: orlo-early')
      .replace('value: 13/64 in', 'value: 0.203 in');
    writeFileSync(join(cwd, 'sheets', 'orlo-early.md'), edited);
    writeFileSync(
      path,
      edited.replaceAll('F27', '9Z').replace('sheet: orlo-early', 'sheet: orlo-f27'),
    );
    const again = await gaugeleaf(['draft', '--from', 'list.csv'], { cwd });
    expect(again).toMatchObject({ status: 0, out: '' });
    writeFileSync(join(cwd, 'list.csv'), list('7/32'));
    const other = await gaugeleaf(['draft', '--from', 'list.csv'], { cwd });
    expect(other.out).toContain(
      'sheets/orlo-early.md: float-level is `0.203 in` there; C2 says `7/32 in`',
    );
    expect(other.err).toContain('0 sheets written; 1 there already and left alone');
    expect(readFileSync(join(cwd, 'sheets', 'orlo-early.md'), 'utf8')).toBe(edited);
  });

  it('never writes over a file of the same name', async () => {
    const cwd = folderWith({
      'list.csv': list('13/64'),
      'edition.yaml': edition,
      'sheets/orlo-f27.md': 'mine',
    });
    const outcome = await gaugeleaf(['draft', '--from', 'list.csv', ...mapping], { cwd });
    expect(outcome.out).toContain('a file of this name is there');
    expect(readFileSync(join(cwd, 'sheets', 'orlo-f27.md'), 'utf8')).toBe('mine');
  });

  it('writes nothing at all with --dry-run', async () => {
    const cwd = folderWith({ 'list.csv': list('203'), 'edition.yaml': edition });
    mkdirSync(join(cwd, 'sheets'));
    const outcome = await gaugeleaf(
      ['draft', '--from', 'list.csv', '--features', 'single-barrel,downdraft', '--dry-run'],
      { cwd },
    );
    expect(outcome.status).toBe(1);
    expect(outcome.out).toContain('sheets/orlo-f27.md\n');
    expect(outcome.out).toContain('could be: 203 thou');
    expect(outcome.err).toContain('1 sheet would be written');
    expect(existsSync(join(cwd, 'list.mapping.yaml'))).toBe(false);
    expect(readdirSync(join(cwd, 'sheets'))).toEqual([]);
  });
});

describe('what a list does not say', () => {
  it('is asked for before anything is written', async () => {
    const cwd = folderWith({ 'list.csv': 'Model,Float level\nF27,13/64\nL83,7/32\n' });
    const proposal = await gaugeleaf(['draft', '--from', 'list.csv'], { cwd });
    expect(proposal.err).toContain('To settle: Nothing says who made the units');
    expect(proposal.err).toContain(
      'To settle: Nothing says which of these the units are: single-barrel',
    );
    expect(proposal.err).toContain(
      '2 numbers have no unit, and the head states none: `unit: in` would make all of them usual',
    );
    const outcome = await gaugeleaf(['draft', '--from', 'list.csv'], { cwd });
    expect(outcome.status).toBe(2);
    expect(outcome.err).toContain('list.mapping.yaml does not say enough');
    const path = join(cwd, 'list.mapping.yaml');
    const mended = readFileSync(path, 'utf8')
      .replace(/features: \[\]/, 'features: [single-barrel, downdraft]')
      .replace('kind: carburetor', 'kind: carburetor\nmaker: Orlo');
    writeFileSync(path, mended);
    const bare = await gaugeleaf(['draft', '--from', 'list.csv'], { cwd });
    expect(bare.status).toBe(1);
    expect(bare.out).toContain('B2  `13/64`: a bare number, and neither its head nor the mapping');
    expect(readFileSync(join(cwd, 'orlo-f27.md'), 'utf8')).toContain('value: fill in # B2: a bare');
  });

  it('is refused where the mapping and the list have parted', async () => {
    const cwd = folderWith({ 'list.csv': 'Maker,Model,Float level (in)\nOrlo,F27,13/64\n' });
    const options = ['--features', 'single-barrel,downdraft'];
    await gaugeleaf(['draft', '--from', 'list.csv', ...options], { cwd });
    writeFileSync(join(cwd, 'list.csv'), 'Maker,Model,Float level (mm)\nOrlo,F27,5.16\n');
    const moved = await gaugeleaf(['draft', '--from', 'list.csv'], { cwd });
    expect(moved.status).toBe(2);
    expect(moved.err).toContain(
      'column C is headed `Float level (mm)` in row 1, and the mapping was made for `Float level (in)`',
    );
    const path = join(cwd, 'list.mapping.yaml');
    writeFileSync(path, readFileSync(path, 'utf8').replace('to: float-level', 'to: flaot-level'));
    const bad = await gaugeleaf(['draft', '--from', 'list.csv'], { cwd });
    expect(bad.status).toBe(2);
    expect(bad.err).toMatch(
      /list\.mapping\.yaml:\d+:\d+: `flaot-level` is no setting.*did you mean `float-level`\?/,
    );
  });
});

describe('a list of one setting a row', () => {
  it('is gathered by unit, with a second figure listed', async () => {
    const rows = [
      'Maker;Model;Setting;Value;Units;At;Gasket',
      'Orlo;F27;Float level;13/64;in;free end;removed',
      'Orlo;F27;Idle speed;450;rpm;;',
      'Tarn;K35;Idle speed;475;rpm;;',
      'Orlo;F27;Float level;7/32;in;;',
      'Tarn;K35;Choke thing;3;mm;;',
      'Tarn;K35;Fuel pressure;4,5;psi;;',
    ];
    const cwd = folderWith({ 'list.csv': `${rows.join('\n')}\n` });
    const options = ['--features', 'single-barrel,downdraft', '--yes', '--out', 'drafts'];
    const outcome = await gaugeleaf(['draft', '--from', 'list.csv', ...options], { cwd });
    expect(outcome.err).toContain('its cells are parted by semicolons');
    expect(readdirSync(join(cwd, 'drafts')).sort()).toEqual(['orlo-f27.md', 'tarn-k35.md']);
    const slips = listed(outcome.out);
    expect(slips.get('D5')).toContain('Orlo F27 has this setting in D2 already, as 13/64 in');
    expect(slips.get('C6')).toContain('a carburetor has no setting of that name');
    const orlo = readFileSync(join(cwd, 'drafts', 'orlo-f27.md'), 'utf8');
    expect(orlo).toContain(
      'value: 13/64 in\n    at: free end\n    gasket: removed\n    from: list D2',
    );
    expect(orlo).toContain('note: "rows 2, 3, 5"');
  });
});

describe('the mapping that the guide shows', () => {
  it('reads a list with those heads', async () => {
    const cwd = folderWith({
      'list.csv': 'Maker,Model,Float level (in),Float level (mm),Drill\nOrlo,F27,13/64,5.16,29\n',
      'list.mapping.yaml': blockMarked('mapping').text,
    });
    const outcome = await gaugeleaf(['draft', '--from', 'list.csv'], { cwd });
    expect(outcome).toMatchObject({ status: 0, out: 'orlo-f27.md\n' });
    const sheet = readFileSync(join(cwd, 'orlo-f27.md'), 'utf8');
    expect(sheet).toContain('value: 13/64 in\n    also: [5.16 mm]\n    gasket: removed\n');
    expect(sheet).toContain('value: No. 29 drill\n    from: list E2\n');
  });
});
