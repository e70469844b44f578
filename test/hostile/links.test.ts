import {
  mkdirSync,
  readdirSync,
  readFileSync,
  renameSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { dirname, join } from 'node:path';
import { describe, expect, it, test } from 'vitest';
import { gaugeleaf } from '../cli/console.ts';
import { cleanSheet, folderWith } from '../project/folder.ts';

/** A word that stands in files outside of the project, and may be seen by nobody. */
const secret = 'Zyxwhatlies';

const edition = 'gaugeleaf-edition: 1\ntitle: Club sheets\n';
const kind = readFileSync(
  new URL('../../src/kinds/ignition-distributor.yaml', import.meta.url),
  'utf8',
).replace(/^kind: .*$/m, 'kind: rig');

/** What lies outside, by the place in the project where a link to it stands. */
const outside = {
  'edition.yaml': `gaugeleaf-edition: 1\ntitle: ${secret}\n`,
  'sources.yaml': `gaugeleaf-sources: 1\nsources:\n  ${secret}: { title: ${secret} }\n`,
  'kinds/rig.yaml': kind.replace(/^title: .*$/m, `title: ${secret}`),
  'templates/club.css': `.card { color: red; } /* ${secret} */\n`,
  'templates/wording.yaml': `sources: ${secret}\n`,
  'templates/logo.svg': `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 1 1"><text>${secret}</text></svg>`,
  'templates/partials/cover.hbs': `<p>${secret}</p>`,
  'sheets/a.md': cleanSheet('a').replace('Orlo F27 single-barrel, ', `${secret} `),
  'sheets/records/a.1.yaml': `gaugeleaf-record: 1\nsheet: a\nserial: ${secret}\ndate: 2026-10-03\nby: ${secret}\nreadings: {}\n`,
} as const;

/** A project with these files, and a link out of it at one place. */
function linked(place: string, text: string): string {
  const away = folderWith({ file: text });
  const project = folderWith({ 'edition.yaml': edition, 'sheets/a.md': cleanSheet('a') });
  const link = join(project, place);
  mkdirSync(dirname(link), { recursive: true });
  if (place === 'edition.yaml' || place === 'sheets/a.md') renameSync(link, join(away, 'old'));
  symlinkSync(join(away, 'file'), link);
  return project;
}

describe('a file that is a link out of the project is refused, and nothing of it seen', () => {
  it.each(Object.entries(outside))('%s', async (place, text) => {
    const cwd = linked(place, text);
    const runs = [
      ['check'],
      ['check', place],
      ['export', '--format', 'json'],
      ['pages', '--proof'],
      ['record', place.includes('record') ? place : 'sheets/records/none.yaml'],
    ];
    for (const argv of runs) {
      const { out, err } = await gaugeleaf(argv, { cwd });
      expect(out + err, argv.join(' ')).not.toContain(secret);
    }
    const argv = place.includes('record') ? ['record', place] : ['check'];
    const { status, out, err } = await gaugeleaf(argv, { cwd });
    expect(status).toBeGreaterThan(0);
    expect(out + err).toContain(place);
    expect(out + err).toContain('leads out of the project');
    if (/^(?:edition|sources|kinds)/.test(place)) {
      const named = await gaugeleaf(['check', place], { cwd });
      expect(named.status).toBeGreaterThan(0);
      expect(named.out + named.err).toContain('leads out of the project');
    }
  });
});

describe('a folder that is a link out of the project is refused, and nothing of it seen', () => {
  it.each([
    ['kinds', 'rig.yaml', outside['kinds/rig.yaml']],
    ['templates', 'club.css', outside['templates/club.css']],
    ['templates/partials', 'cover.hbs', outside['templates/partials/cover.hbs']],
    ['sheets', 'a.md', outside['sheets/a.md']],
  ])('%s', async (place, name, text) => {
    const away = folderWith({ [name]: text });
    const cwd = folderWith({
      'edition.yaml': edition,
      ...(place === 'sheets' ? {} : { 'sheets/a.md': cleanSheet('a') }),
    });
    mkdirSync(dirname(join(cwd, place)), { recursive: true });
    symlinkSync(away, join(cwd, place));
    const { status, out, err } = await gaugeleaf(['check'], { cwd });
    expect(out + err).not.toContain(secret);
    expect(status).toBeGreaterThan(0);
    expect(out + err).toContain('leads out of the project');
  });
});

describe('what is written goes through no link out of the project that the command does not name', () => {
  const cases: readonly (readonly [string, string, readonly string[]])[] = [
    ['print', 'folder', ['order', 'a']],
    ['print', 'folder', ['draw', 'a']],
    ['print', 'folder', ['pages', '--proof']],
    ['print/pages-proof', 'folder', ['pages', '--proof']],
    ['print/pages-proof/index.html', 'file', ['pages', '--proof']],
    ['print/pages-proof/files.sha256', 'file', ['pages', '--proof']],
    ['site/units', 'folder', ['pages', '--proof', '--out', 'site']],
    ['sheets/records', 'folder', ['record', 'a']],
    ['schemas', 'folder', ['schema']],
    ['schemas/sheet.schema.json', 'file', ['schema']],
    [
      'sheets',
      'whole',
      [
        'draft',
        '--kind',
        'carburetor',
        '--maker',
        'Orlo',
        '--model',
        'T71',
        '--features',
        'single-barrel,downdraft',
      ],
    ],
    ['kinds', 'folder', ['draft', '--new-kind', 'pump', '--title', 'Pump']],
    ['mine/sheets', 'folder', ['draft', '--club', 'mine']],
  ];
  it.each(cases)('%s (%s): %j', async (place, sort, argv) => {
    const away = folderWith({ file: 'as it was' });
    const cwd = folderWith({
      'edition.yaml': edition,
      ...(sort === 'whole' ? {} : { 'sheets/a.md': cleanSheet('a') }),
    });
    mkdirSync(dirname(join(cwd, place)), { recursive: true });
    symlinkSync(sort === 'file' ? join(away, 'file') : away, join(cwd, place));
    const { status, err } = await gaugeleaf(argv, { cwd });
    expect(readdirSync(away)).toEqual(['file']);
    expect(readFileSync(join(away, 'file'), 'utf8')).toBe('as it was');
    expect(status).toBe(2);
    expect(err).toMatch(/leads out of|was not written by gaugeleaf|holds sheets already/);
  });

  it.each([
    ['order', 'a', '--out', 'link/order.svg'],
    ['draw', 'a', '--out', 'link'],
    ['pages', '--proof', '--out', 'link/pages'],
    ['export', '--out', 'link/settings.csv'],
    ['record', 'a', '--out', 'link/'],
    ['schema', '--out', 'link'],
  ])('but for what it does name: %s %s %s %s', async (...argv) => {
    const away = folderWith();
    const cwd = folderWith({ 'edition.yaml': edition, 'sheets/a.md': cleanSheet('a') });
    symlinkSync(away, join(cwd, 'link'));
    const { status, err } = await gaugeleaf(argv, { cwd });
    expect(status, err).toBe(0);
    expect(readdirSync(away).length).toBeGreaterThan(0);
  });

  it('a file that is named and is a link stays one', async () => {
    const away = folderWith({ file: 'as it was' });
    const cwd = folderWith({ 'edition.yaml': edition, 'sheets/a.md': cleanSheet('a') });
    symlinkSync(join(away, 'file'), join(cwd, 'out.csv'));
    const { status, err } = await gaugeleaf(['export', '--out', 'out.csv'], { cwd });
    expect(status, err).toBe(0);
    expect(readFileSync(join(away, 'file'), 'utf8')).toContain('float-level');
  });
});

test('links that stay within the project are followed', async () => {
  const cwd = folderWith({
    'shared/edition.yaml': edition,
    'shared/kinds/rig.yaml': kind,
    'sheets/a.md': cleanSheet('a'),
    'elsewhere/x': '',
  });
  symlinkSync('shared/edition.yaml', join(cwd, 'edition.yaml'));
  symlinkSync('shared/kinds', join(cwd, 'kinds'));
  symlinkSync('elsewhere', join(cwd, 'print'));
  const { status, out, err } = await gaugeleaf(['check'], { cwd });
  expect(status, out + err).toBe(0);
  expect((await gaugeleaf(['order', 'a'], { cwd })).status).toBe(0);
  expect(readdirSync(join(cwd, 'elsewhere')).length).toBe(2);
  writeFileSync(join(cwd, 'elsewhere', 'x'), '');
});
