import { describe, expect, test } from 'vitest';
import { cleanSheet, folderWith } from '../project/folder.ts';
import { gaugeleaf } from './console.ts';

// A club's folder holds files that are no sheets: each is taken for what it is.

const faulty = 'gaugeleaf-kind: 1\nkind: wiper-motor\ntitle: Wiper motor\nsetings: {}\n';
const files = {
  'edition.yaml': 'gaugeleaf-edition: 1\ntitle: Settings\npaper: folio\n',
  'sources.yaml': 'gaugeleaf-sources: 1\nsources:\n  m48: { titel: Manual }\n',
  'kinds/wiper-motor.yaml': faulty,
  'elsewhere/wiper-motor.yaml': faulty,
  'sheets/orlo-f27.md': cleanSheet('orlo-f27'),
  'sheets/records/orlo-f27.7.yaml': 'gaugeleaf-record: 1\nsheet: orlo-f27\nsettings: {}\n',
  'list.csv': 'Model,Float level\nF27,13/64\n',
  'list.yaml': 'gaugeleaf-mapping: 1\nkind: carburetor\n',
  'editions/first.json': '{"gaugeleaf-data":1}\n',
  'notes.yaml': 'milk: 2\n',
  'picture.png': 'PNG',
};
const check = (...paths: string[]) => gaugeleaf(['check', ...paths], { cwd: folderWith(files) });

describe('`check` given a file that is no sheet', () => {
  test.each([
    ['kinds/wiper-motor.yaml', 'kind-invalid'],
    ['elsewhere/wiper-motor.yaml', 'kind-invalid'],
    ['edition.yaml', 'edition-invalid'],
    ['sources.yaml', 'sources-invalid'],
  ])('%s is checked as what it is', async (path, id) => {
    const { status, out } = await check(path);
    expect(status).toBe(1);
    expect(out).toContain(`${path}\n`);
    expect(out).toContain(id);
    expect(out).not.toContain('front-matter');
  });

  test('a sound one has nothing to tell', async () => {
    const sound = folderWith({
      'edition.yaml': 'gaugeleaf-edition: 1\ntitle: Settings\n',
      'sheets/orlo-f27.md': cleanSheet('orlo-f27'),
    });
    const { status, out } = await gaugeleaf(['check', 'edition.yaml'], { cwd: sound });
    expect(out).not.toContain('front-matter');
    expect(status).toBe(0);
  });

  test.each([
    ['sheets/records/orlo-f27.7.yaml', 'is a bench record', 'gaugeleaf record'],
    ['list.csv', 'is a list', 'gaugeleaf draft --from'],
    ['list.yaml', 'says how a list is read', '--mapping'],
    ['editions/first.json', 'is the data of an edition', 'gaugeleaf compare'],
    ['notes.yaml', 'is no sheet', '.md'],
    ['picture.png', 'is no sheet', '.md'],
  ])('%s is refused with the command that reads it', async (path, what, cure) => {
    for (const command of ['check', 'order', 'work', 'card']) {
      const { status, out, err } = await gaugeleaf([command, path], { cwd: folderWith(files) });
      expect(status).toBe(2);
      expect(out).toBe('');
      expect(err.replace(/\s+/g, ' ')).toContain(`${path} ${what}`);
      expect(err).toContain(cure);
    }
  });

  test('a sheet under any other name of a text is still one', async () => {
    const named = folderWith({ 'orlo-f27.txt': cleanSheet('orlo-f27') });
    const { out } = await gaugeleaf(['check', 'orlo-f27.txt'], { cwd: named });
    expect(out).toContain('in 1 sheet');
  });
});

describe('`draft` of a kind whose file is faulty', () => {
  const draft = (kind: string) =>
    gaugeleaf(
      ['draft', '--kind', kind, '--maker', 'Orlo', '--model', 'M19', '--features', '', '-o', '-'],
      { cwd: folderWith(files) },
    );

  test.each(['wiper-motor', 'Wiper motor', ' WIPER MOTOR'])('says so of `%s`', async (kind) => {
    const { status, err } = await draft(kind);
    expect(status).toBe(2);
    const words = err.replace(/\s+/g, ' ');
    expect(words).not.toContain('there is no kind of unit called');
    expect(words).toContain('kinds/wiper-motor.yaml describes the kind');
    expect(words).toContain('gaugeleaf check kinds/wiper-motor.yaml');
  });

  test('a kind that no file describes is none, faulty or not', async () => {
    const { status, err } = await draft('barometer');
    expect(status).toBe(2);
    expect(err).toContain('there is no kind of unit called barometer');
  });
});
