import { describe, expect, it } from 'vitest';
import { cleanSheet, folderWith } from '../project/folder.ts';
import { gaugeleaf } from './console.ts';

const cwd = () => folderWith({ 'sheets/orlo-f27.md': cleanSheet('orlo-f27') });

async function fails(...argv: string[]): Promise<string> {
  const { status, out, err } = await gaugeleaf(argv, { cwd: cwd() });
  expect(status).toBe(2);
  expect(out).toBe('');
  expect(err).not.toMatch(/\n\s+at /);
  return err;
}

describe('arguments that will not do', () => {
  it('are told with what was passed and what was perhaps meant', async () => {
    expect(await fails('chek')).toContain("unknown command 'chek'\n(Did you mean check?)");
    expect(await fails('check', '--fromat', 'json')).toContain('(Did you mean --format?)');
    expect(await fails('check', '--format', 'xml')).toMatch(/'xml' is invalid.*text, json, sarif/);
    expect(await fails('card')).toBe(
      'gaugeleaf: no sheet is named\n           name one, or print those of the edition with --all\n',
    );
    expect(await fails('card', 'orlo-f27', '--all')).toContain(
      'sheets by name and --all cannot be had together',
    );
    expect(await fails('card', '--kind', 'carburettor')).toContain('perhaps carburetor was meant');
    expect(await fails('card', 'orlo-f72')).toBe(
      'gaugeleaf: there is no sheet orlo-f72\n           perhaps sheets/orlo-f27.md was meant\n',
    );
    expect(await fails('check', 'sheets/orlo-f72.md')).toContain(
      'perhaps sheets/orlo-f27.md was meant',
    );
    expect(await fails('check', 'nowhere/at/all.md')).toContain(
      'there is no folder nowhere/at either',
    );
    expect(await fails('booklet')).toContain('there is no edition.yaml');
    expect(await fails('explain', 'seting-unused')).toContain('perhaps setting-unused was meant');
    expect(await fails('card', 'orlo-f27', '--paper', 'a3')).toContain(
      'letter, a4, half-letter, a5',
    );
  });

  it('of nothing at all show the help', async () => {
    expect(await fails()).toContain('Usage: gaugeleaf');
    const { status, err } = await gaugeleaf(['check'], { cwd: folderWith() });
    expect(status).toBe(2);
    expect(err).toContain('there is no folder `sheets` here or above');
  });

  it('are no concern of help and version', async () => {
    for (const command of ['check', 'card', 'booklet', 'size', 'draft', 'explain']) {
      const { status, out, err } = await gaugeleaf([command, '--help'], { cwd: '/' });
      expect(status).toBe(0);
      expect(err).toBe('');
      expect(out).toContain(`Usage: gaugeleaf ${command}`);
    }
    expect((await gaugeleaf(['--help'], { cwd: '/' })).out).toContain('Exit status: 0');
    const version = await gaugeleaf(['--version'], { cwd: '/' });
    expect(version.status).toBe(0);
    expect(version.out).toMatch(/^\d+\.\d+\.\d+\n$/);
  });
});

describe('gaugeleaf explain', () => {
  it('tells of one, and lists all', async () => {
    const one = await gaugeleaf(['explain', 'setting-unused'], { cwd: '/' });
    expect(one.status).toBe(0);
    expect(one.out).toContain('setting-unused (warning');
    expect(one.out).toContain('Wrong: ');
    expect(one.out).toContain('Right: ');
    const all = await gaugeleaf(['explain'], { cwd: '/' });
    expect(all.out).toMatch(/^ {2}setting-unused +warning +A setting is given/m);
    expect(all.out).toMatch(/^ {2}edition-invalid +error/m);
  });
});

describe('printing', () => {
  it('is stopped by findings, which are shown, and nothing is written', async () => {
    const bad = cleanSheet('bad', { settings: '  float-drop: { value: 1 in, from: m49 }\n' });
    const folder = folderWith({
      'edition.yaml': 'gaugeleaf-edition: 1\ntitle: x\n',
      'sheets/bad.md': bad,
    });
    for (const argv of [['card', 'bad'], ['booklet']]) {
      const { status, out, err } = await gaugeleaf(argv, { cwd: folder });
      expect(status).toBe(1);
      expect(out).toBe('');
      expect(err).toContain('source-unknown');
      expect(err).toContain('1 error in 1 sheet');
      expect(err).toContain('Nothing was printed.');
    }
  });

  it('cannot put two cards in one file', async () => {
    const folder = folderWith({
      'sheets/a.md': cleanSheet('a'),
      'sheets/b.md': cleanSheet('b'),
    });
    const { status, err } = await gaugeleaf(['card', 'a', 'b', '--out', 'x.pdf'], { cwd: folder });
    expect(status).toBe(2);
    expect(err).toContain('2 cards cannot go to one file, x.pdf');
  });
});
