import { mkdirSync, symlinkSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { examineFile } from '../../src/project/examine-file.ts';
import { openProject } from '../../src/project/project.ts';
import { readTemplates } from '../../src/project/templates.ts';
import { cleanSheet, folderWith } from './folder.ts';

function edition(text: string, sheets: readonly string[] = ['orlo-f27', 'orlo-t71']) {
  const files = Object.fromEntries(sheets.map((name) => [`sheets/${name}.md`, cleanSheet(name)]));
  const root = folderWith({ 'edition.yaml': text, ...files });
  const read = openProject(root, root).edition();
  const places = (read.faults?.findings ?? []).map((finding) => {
    const place = read.faults?.lines.place(finding.span.start);
    return `${place?.line}:${place?.column} ${finding.severity} ${finding.check}: ${finding.message}`;
  });
  return { ...read, places };
}

describe('the edition', () => {
  it('is read with its order, paper and words', () => {
    const { edition: found, places } = edition(
      'gaugeleaf-edition: 1\ntitle: Settings\nclub: Wexcombe Register\nedition: 2\npaper: a5\n' +
        'card-paper: letter\nwire-gauge: imperial\norder: [orlo-t71, orlo-f27]\n',
    );
    expect(places).toEqual([]);
    expect(found).toMatchObject({
      facts: { title: 'Settings', club: 'Wexcombe Register', edition: '2' },
      paper: 'a5',
      cardPaper: 'letter',
      sheets: ['orlo-t71', 'orlo-f27'],
      wireGauge: 'imperial',
    });
  });

  it('says where the order is wrong', () => {
    const { places } = edition(
      'gaugeleaf-edition: 1\ntitle: Settings\norder:\n  - orlo-t64\n  - orlo-f27\n',
    );
    expect(places).toEqual([
      '3:1 note edition-sheet-unlisted: `sheets/orlo-t71.md` is not in the order of the booklet',
      '4:5 error edition-sheet-missing: there is no sheet `sheets/orlo-t64.md`',
    ]);
    const twice = edition(
      'gaugeleaf-edition: 1\ntitle: Settings\norder: [orlo-f27, orlo-t71, sheets/orlo-f27.md]\n',
    );
    expect(twice.places).toEqual([
      '3:29 error edition-sheet-missing: the sheet `orlo-f27` is listed twice',
    ]);
  });

  it('cannot reach out of the project by its order', () => {
    const { places } = edition('gaugeleaf-edition: 1\ntitle: x\norder: [../../etc/passwd]\n', []);
    expect(places).toEqual([
      '3:9 error edition-sheet-missing: there is no sheet `sheets/../../etc/passwd.md`',
    ]);
  });

  it('reads the club’s own gauges, and says which it cannot', () => {
    const { edition: found, places } = edition(
      'gaugeleaf-edition: 1\ntitle: x\nwire-gauge: imperial\norder: [orlo-f27, orlo-t71]\nkit:\n' +
        '  - drill index 1-3\n  - 22 SWG\n  - 0.026 in\n  - leaf set 0.002-0.003 in\n  - 60\n',
    );
    expect(found?.facts.kit?.ordinary).toBe(false);
    expect(found?.facts.kit?.gauges.map(({ gauge }) => gauge.label)).toEqual([
      '0.002 in leaf',
      '0.0025 in leaf',
      '0.003 in leaf',
      '22 SWG imperial',
      'No. 3 drill',
      'No. 2 drill',
      'No. 1 drill',
    ]);
    expect(places).toEqual([
      '8:5 error edition-invalid: 0.026 in is a size and names no gauge',
      expect.stringMatching(/^10:5 error edition-invalid: .*60/),
    ]);
  });

  it('without a kit leaves the ordinary one to count, and hands its own to the checks', () => {
    expect(edition('gaugeleaf-edition: 1\ntitle: x\n').edition?.facts.kit).toBeNull();
    const root = folderWith({
      'edition.yaml': 'gaugeleaf-edition: 1\ntitle: x\nkit: [0.026 in wire]\n',
      'sheets/orlo-f27.md': cleanSheet('orlo-f27'),
    });
    const { kit } = openProject(root, root).context(join(root, 'sheets/orlo-f27.md'));
    expect(kit?.gauges.map(({ gauge }) => gauge.label)).toEqual(['0.026 in wire']);
  });

  it('holds the file against its schema, in plain words', () => {
    const { places } = edition('gaugeleaf-edition: 1\ntitle: x\npapper: a5\n');
    expect(places).toHaveLength(1);
    expect(places[0]).toMatch(/^3:1 error edition-invalid: .*papper/);
    expect(places[0]).not.toContain('must NOT');
  });

  it('takes broken, empty and foreign files without a crash', () => {
    expect(edition('title: [unclosed').places.join()).toContain('error edition-invalid');
    expect(edition('').places).toEqual([
      '1:1 error edition-invalid: the edition file says nothing: at least a title is needed',
    ]);
    expect(edition('- a\n- b\n').places.join()).toContain('edition-invalid');
    expect(edition('title: a\0b\n').places.length).toBeGreaterThan(0);
    const root = folderWith({ 'sheets/a.md': '' });
    mkdirSync(join(root, 'edition.yaml'));
    const { faults } = openProject(root, root).edition();
    expect(faults?.findings[0]?.message).toBe('edition.yaml is a folder, not a file');
    expect(openProject(folderWith(), '/').edition()).toEqual({ edition: null, faults: null });
  });
});

describe('a sheet of the project', () => {
  it('is checked with what the project knows', () => {
    const root = folderWith({
      'edition.yaml': 'gaugeleaf-edition: 1\ntitle: x\nwire-gauge: us-steel\n',
      'sheets/orlo-f27.md': cleanSheet('orlo-f27'),
    });
    const project = openProject(join(root, 'sheets/orlo-f27.md'), root);
    expect(project.context(join(root, 'sheets/orlo-f27.md')).wireGauge).toBe('us-steel');
    expect(project.context(join(root, 'sheets/orlo-f27.md')).altitude).toBeNull();
    const examined = examineFile(project, join(root, 'sheets/orlo-f27.md'));
    expect(examined.ok && examined.findings).toEqual([]);
    expect(examined.ok && examined.sheet.file).toBe('sheets/orlo-f27.md');
  });

  it.each([
    ['altitude: 1350 ft\n', '1350 ft'],
    ['altitude: 1,350 ft\r\n', '1,350 ft'],
    ['altitude: "about 400 m" # the hall\n', 'about 400 m'],
    ['# altitude: 1350 ft\n', null],
  ])('knows the altitude of its edition: %j', (line, altitude) => {
    const root = folderWith({
      'edition.yaml': `gaugeleaf-edition: 1\ntitle: x\n${line}`,
      'sheets/orlo-f27.md': cleanSheet('orlo-f27'),
    });
    const path = join(root, 'sheets/orlo-f27.md');
    expect(openProject(path, root).context(path).altitude).toBe(altitude);
  });

  it('is not read through a link that leads out', () => {
    const outside = folderWith({ 'orlo-f27.md': cleanSheet('orlo-f27') });
    const root = folderWith({ 'edition.yaml': 'gaugeleaf-edition: 1\ntitle: x\n' });
    mkdirSync(join(root, 'sheets'));
    symlinkSync(join(outside, 'orlo-f27.md'), join(root, 'sheets/orlo-f27.md'));
    const examined = examineFile(openProject(root, root), join(root, 'sheets/orlo-f27.md'));
    expect(!examined.ok && examined.refused.message).toBe(
      'sheets/orlo-f27.md is a link that leads out of the project; it is not read',
    );
  });

  it('in another encoding has an error at its place, and is not misread', () => {
    const text = cleanSheet('orlo-f27', { work: '\nThrottle shut at 12°.\n' });
    const root = folderWith({ 'orlo-f27.md': Buffer.from(text, 'latin1') });
    const examined = examineFile(openProject(root, root), join(root, 'orlo-f27.md'));
    if (!examined.ok) throw new Error('refused');
    const [first] = examined.findings.filter((finding) => finding.check === 'file-unreadable');
    expect(first?.message).toContain('the byte B0 here is ° in an old Western encoding');
    expect(examined.sheet.text.slice(first?.span.start, first?.span.end)).toBe('°');
  });

  it('of a kind that the club added is known', () => {
    const root = folderWith({ 'kinds/broken.yaml': 'kind: [', 'sheets/a.md': '' });
    const project = openProject(root, root);
    expect(project.kinds.has('carburetor')).toBe(true);
    expect(project.kindFaults.map((fault) => fault.file)).toEqual(['kinds/broken.yaml']);
    expect(project.kindFaults[0]?.findings[0]?.check).toBe('kind-invalid');
  });
});

describe('templates', () => {
  it('are the built-in ones, with the club’s laid over them', () => {
    const plain = readTemplates(folderWith());
    expect([...plain.fonts.keys()]).toContain('sans-regular.woff2');
    const own = readTemplates(
      folderWith({ 'templates/card.hbs': 'own {{title}}', 'templates/partials/x.hbs': 'part' }),
    );
    expect(own.texts.get('card.hbs')).toBe('own {{title}}');
    expect(own.texts.get('partials/x.hbs')).toBe('part');
    expect([...own.fonts.keys()]).toEqual([...plain.fonts.keys()]);
  });

  it('are not read through a link that leads out', () => {
    const outside = folderWith({ 'card.hbs': 'secret' });
    const root = folderWith({ 'templates/other.hbs': '' });
    symlinkSync(join(outside, 'card.hbs'), join(root, 'templates/card.hbs'));
    expect(() => readTemplates(root)).toThrow('leads out of the project');
  });
});
