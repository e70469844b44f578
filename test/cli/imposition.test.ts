import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { PDFDocument } from '@cantoo/pdf-lib';
import { describe, expect, test } from 'vitest';
import { browserHere } from '../press/stand.ts';
import { cleanSheet, folderWith } from '../project/folder.ts';
import { gaugeleaf } from './console.ts';

const project = () =>
  folderWith({
    'edition.yaml': 'gaugeleaf-edition: 1\ntitle: Settings\n',
    'sheets/orlo-f27.md': cleanSheet('orlo-f27'),
  });

async function refused(...argv: string[]): Promise<string> {
  const cwd = project();
  const { status, out, err } = await gaugeleaf(['booklet', ...argv], { cwd });
  expect(status).toBe(2);
  expect(out).toBe('');
  expect(existsSync(join(cwd, 'print'))).toBe(false);
  return err;
}

describe('gaugeleaf booklet --imposed', () => {
  test('takes a thickness in millimeters or with its unit, and no other', async () => {
    expect(await refused('--imposed', '--paper-thickness', 'thick')).toContain(
      'gaugeleaf: --paper-thickness thick is no thickness\n',
    );
    expect(await refused('--imposed', '--paper-thickness', '4')).toContain(
      '--paper-thickness 4 is thicker than card\n',
    );
    expect(await refused('--imposed', '--paper-thickness', '0.004')).toContain(
      '--paper-thickness 0.004 is thinner than tissue\n',
    );
    expect(await refused('--imposed', '--paper-thickness', '8 psi')).toContain('is no thickness');
    expect(await refused('--imposed', '--signatures', '0')).toContain(
      '--signatures 0 is no number of sheets\n',
    );
  });

  test('is wanted by what only sheets to fold can have', async () => {
    for (const [option, ...value] of [
      ['--marks'],
      ['--signatures', '4'],
      ['--paper-thickness', '0.1'],
    ]) {
      expect(await refused(option ?? '', ...value)).toBe(
        `gaugeleaf: ${option} is about sheets to fold\n           add --imposed to print them\n`,
      );
    }
  });
});

const browser = await browserHere();
if (typeof browser === 'string') console.warn(`no booklet is imposed: ${browser}`);

describe.skipIf(typeof browser === 'string')('a booklet to fold', { timeout: 120_000 }, () => {
  const env = process.env;
  const pagesOf = async (bytes: Uint8Array) => (await PDFDocument.load(bytes)).getPageCount();

  test('is written beside the one to read, with how to print and fold it', async () => {
    const cwd = project();
    const argv = ['booklet', '--imposed', '--paper-thickness', '0.004 in', '--no-cache'];
    const { status, out, err } = await gaugeleaf(argv, { cwd, env });
    expect(err).toMatch(
      /^\d+ pages\n\d+ sheets of Letter, (no|[123]) blank pages?( at the end)?: /,
    );
    expect(err).toContain('flipped on the short edge, at 100 % with no fitting\n');
    expect(err).toContain('fold the sheets together, and staple them through the fold\n');
    expect(err).toMatch(/pages in the middle stand \d\.\d\d mm nearer to the fold\n$/);
    expect(status).toBe(0);
    expect(out).toBe('print/booklet.pdf\nprint/booklet-imposed.pdf\n');
    const [read, sheets] = await Promise.all(
      out
        .trim()
        .split('\n')
        .map((file) => pagesOf(readFileSync(join(cwd, file)))),
    );
    expect(sheets).toBe(2 * Math.ceil((read ?? 0) / 4));
    const again = await gaugeleaf([...argv, '-o', '-'], { cwd, env });
    expect(again.err).toContain('sheets of Letter');
    const printed = readFileSync(join(cwd, 'print/booklet-imposed.pdf'));
    expect(Buffer.from(again.out, 'latin1').equals(printed)).toBe(true);
  });
});
