import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { parse } from 'yaml';
import { validate } from '../../src/generated/validate-reading.js';
import { cleanSheet, folderWith } from '../project/folder.ts';
import { gaugeleaf } from './console.ts';

const settings = `  fuel-pressure: { value: 3-1/2 ± 1/2 psi, from: m48 p. 21 }
  pump-stroke: # kept
    value: 17/64 in
    also: [0.2656 in]
    link: middle hole
    from: m48 p. 32
  idle-vacuum: { value: 18-1/2 inHg min, from: bench }
`;

function club(answers?: string): string {
  const files: Record<string, string> = {
    'sheets/orlo-f27.md': cleanSheet('orlo-f27', { settings }).replace(
      'sources:\n',
      'sources:\n  bench: { title: Three units, kind: measured, units: 3 }\n',
    ),
  };
  if (answers !== undefined) {
    files['sheets/readings/orlo-f27.m48.yaml'] =
      `# mine\ngaugeleaf-reading: 1\nsheet: orlo-f27\nsource: m48\nby: A. Hale\ndate: 2026-11-14\npages:\n${answers}`;
  }
  return folderWith(files);
}

const file = 'sheets/readings/orlo-f27.m48.yaml';
const right = `  p. 21: { fuel-pressure: { value: 3 to 4 psi } }
  p. 32: { pump-stroke: { value: 17/64 in, link: middle hole } }
`;
const wrong = right.replace('17/64', '11/64');

const sheetIn = (cwd: string) => readFileSync(join(cwd, 'sheets/orlo-f27.md'), 'utf8');

describe('a blank of a source', () => {
  test('asks for every setting that cites it by page, passes its schema, and is never written over', async () => {
    const cwd = club();
    const first = await gaugeleaf(['reread', 'orlo-f27', '--source', 'm48'], { cwd });
    expect([first.status, first.out]).toEqual([0, `${file}\n`]);
    const text = readFileSync(join(cwd, file), 'utf8');
    const data = parse(text);
    expect(validate(data), JSON.stringify(validate.errors)).toBe(true);
    expect(data.pages['p. 32']).toEqual({ 'pump-stroke': { value: null, link: null } });
    const second = await gaugeleaf(['reread', 'orlo-f27', '--source', 'm48'], { cwd });
    expect(second.out).toBe('sheets/readings/orlo-f27.m48-2.yaml\n');
  });

  test('holds no figure and no word of what the sheet says', async () => {
    const root = join(import.meta.dirname, '..', '..');
    const { out } = await gaugeleaf(['reread', 'orlo-t71-wexcombe-six', '-s', 'm48', '-o', '-'], {
      cwd: root,
    });
    const bare = out
      .replace(/^(?:#.*|gaugeleaf-reading:.*|sheet:.*|source:.*)$/gm, '')
      .replace(/^ {2}p\. \d+:$/gm, '');
    expect(bare).not.toMatch(/\d/);
    for (const word of ['inverted', 'removed', 'middle', 'bottomed', 'free end', 'highest']) {
      expect(out).not.toContain(word);
    }
  });

  test('is shuffled within its pages by the seed that is written into it', async () => {
    const root = join(import.meta.dirname, '..', '..');
    const { out } = await gaugeleaf(
      ['reread', 'ostrel-n63-tollgarth-eight', '-s', 'ob', '--order', 'shuffled', '-o', '-'],
      { cwd: root },
    );
    const data = parse(out);
    expect(data.order).toBe('shuffled');
    expect(Number.isInteger(data.seed)).toBe(true);
    expect(Object.keys(data.pages)).toEqual(['p. 1', 'p. 2', 'p. 3', 'p. 4', 'p. 5']);
  });

  test.each([
    [
      ['--source', 'bench'],
      'bench is units that somebody measured: there is no page to read again',
    ],
    [['--source', 'm49'], 'sheets/orlo-f27.md cites no source m49'],
    [['--page', 'p. 99'], 'sheets/orlo-f27.md cites nothing on p. 99'],
    [['--settle', 'a=first'], '--settle is for a second reading'],
  ])('%j is refused', async (options, said) => {
    const { status, err } = await gaugeleaf(['reread', 'orlo-f27', ...options], { cwd: club() });
    expect(status).toBe(2);
    expect(err).toContain(said);
  });
});

describe('what came back', () => {
  test('is the same, and kept in the file with its comments', async () => {
    const cwd = club(right);
    const { status, out } = await gaugeleaf(['reread', file], { cwd });
    expect([status, out.split('\n').at(-2)]).toEqual([
      0,
      '2 figures: 1 the same, 1 written otherwise',
    ]);
    const kept = readFileSync(join(cwd, file), 'utf8');
    expect(kept.startsWith('# mine\n')).toBe(true);
    expect(parse(kept).read).toHaveLength(2);
    await gaugeleaf(['reread', file], { cwd });
    expect(readFileSync(join(cwd, file), 'utf8')).toBe(kept);
  });

  test('differs, with both figures and what bears one out', async () => {
    const cwd = club(wrong);
    const { status, out } = await gaugeleaf(['reread', file], { cwd });
    expect(status).toBe(1);
    expect(out).toContain('17/64 in on the sheet, 11/64 in in the second reading');
    expect(out).toContain('the sheet is borne out by 0.2656 in beside it');
  });

  test('says that a page has no such figure, and what was left out', async () => {
    const cwd = club(
      '  p. 32: { pump-stroke: { value: not there } }\n  p. 21: { fuel-pressure: }\nfound: [{ page: p. 21, what: dashpot, value: 3/32 in }]\n',
    );
    const { status, out } = await gaugeleaf(['reread', file, '--json'], { cwd });
    expect(status).toBe(1);
    const told = JSON.parse(out);
    expect(told.figures.map(({ verdict }: { verdict: string }) => verdict)).toEqual([
      'not on that page',
      'unread',
    ]);
    expect(told.found).toEqual([{ page: 'p. 21', what: 'dashpot', value: '3/32 in' }]);
  });

  test.each([
    ['pages: [a]', 'pages'],
    ['pages: {}\nfond: []', 'fond'],
    ['pages: {}\ndate: yesterday', 'yesterday'],
  ])('is told by its place where it is broken: %s', async (text, at) => {
    const cwd = club();
    mkdirSync(join(cwd, 'sheets/readings'));
    const whole = `gaugeleaf-reading: 1\nsheet: orlo-f27\nsource: m48\n${text}\n`;
    writeFileSync(join(cwd, file), whole);
    const { status, err } = await gaugeleaf(['reread', file], { cwd });
    expect([status, err.includes('reading-invalid')]).toEqual([2, true]);
    expect(err).toContain(at);
    expect(readFileSync(join(cwd, file), 'utf8')).toBe(whole);
  });
});

describe('settling', () => {
  const settle = (cwd: string, ...words: string[]) =>
    gaugeleaf(['reread', file, '--settle', ...words], { cwd });
  const who = ['--by', 'H. Marlow', '--why', 'under a lens'];

  test('for the first keeps the sheet as it is', async () => {
    const cwd = club(wrong);
    const before = sheetIn(cwd);
    const { status, out } = await settle(cwd, 'pump-stroke=first', ...who);
    expect([status, out]).toEqual([0, '2 figures: 1 written otherwise, 1 settled\n']);
    expect(sheetIn(cwd)).toBe(before);
    expect(parse(readFileSync(join(cwd, file), 'utf8')).settled).toMatchObject([
      {
        setting: 'pump-stroke',
        for: 'first',
        first: '17/64 in',
        second: '11/64 in',
        by: 'H. Marlow',
      },
    ]);
    // It is known the next time as well.
    expect((await gaugeleaf(['reread', file], { cwd })).status).toBe(0);
  });

  test('for the second writes its figure into the sheet and nothing else', async () => {
    const cwd = club(wrong);
    const before = sheetIn(cwd);
    const { status, err } = await settle(cwd, 'pump-stroke=second', ...who);
    expect(status).toBe(0);
    expect(sheetIn(cwd)).toBe(before.replace('value: 17/64 in', 'value: 11/64 in'));
    expect(err).toContain('pump-stroke is 11/64 in now');
    expect(err).toContain('now sizes-disagree');
  });

  test('for neither writes what a third look found', async () => {
    const cwd = club(wrong);
    const { status } = await settle(cwd, 'pump stroke=both', '--value', '9/32 in', ...who);
    expect(sheetIn(cwd)).toContain('value: 9/32 in');
    expect(status).toBe(0);
  });

  test.each([
    [['pump-stroke=second'], 'needs a name'],
    [['pump-stroke', ...who], 'does not say who is right'],
    [['pump-stroke=both', ...who], 'needs the figure that the page does print'],
    [['fuel-pressure=second', ...who], 'fuel-pressure does not differ'],
    [['dashpot=second', ...who], 'this reading has no dashpot'],
  ])('%j is refused, and nothing written', async (words, said) => {
    const cwd = club(wrong);
    const [sheet, reading] = [sheetIn(cwd), readFileSync(join(cwd, file), 'utf8')];
    const { status, err } = await settle(cwd, ...words);
    expect(status).toBe(2);
    expect(err).toContain(said);
    expect([sheetIn(cwd), readFileSync(join(cwd, file), 'utf8')]).toEqual([sheet, reading]);
    expect(existsSync(join(cwd, 'sheets/readings/orlo-f27.m48-2.yaml'))).toBe(false);
  });

  test('an answer that is no figure is not written', async () => {
    const cwd = club(right.replace('3 to 4 psi', 'as before'));
    const before = sheetIn(cwd);
    expect((await settle(cwd, 'fuel-pressure=second', ...who)).status).toBe(2);
    expect(sheetIn(cwd)).toBe(before);
  });
});
