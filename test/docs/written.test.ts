import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { gaugeBook } from '../../src/gauges/index.ts';
import { readStatement } from '../../src/quantity/index.ts';
import { writeStatement } from '../../src/quantity/write.ts';
import { change, demoCopy, root, show } from './marked-blocks.ts';
import { blockMarked } from './pages.ts';

describe('what the guide tells a club to write', () => {
  test('two lines are an edition, and a draft in its folder has blanks and nothing else', async () => {
    const folder = mkdtempSync(join(tmpdir(), 'gaugeleaf-own-'));
    try {
      mkdirSync(join(folder, 'sheets'));
      writeFileSync(join(folder, 'edition.yaml'), blockMarked('edition').text);
      const features = 'single-barrel,downdraft,hand-choke,pump';
      const draft = `gaugeleaf draft --kind carburetor --maker Tarn --model K35 --features ${features}`;
      expect((await show(draft, folder)).text).toContain('sheets/tarn-k35.md');
      const { status, text } = await show('gaugeleaf check --format json', folder);
      const { findings } = JSON.parse(text) as { findings: { name: string; file: string }[] };
      expect(status).toBe(1);
      expect(new Set(findings.map(({ name, file }) => `${file} ${name}`))).toEqual(
        new Set(['sheets/tarn-k35.md blank-to-fill']),
      );
    } finally {
      rmSync(folder, { recursive: true, force: true });
    }
  });

  test('the kit can be read', async () => {
    const folder = mkdtempSync(join(tmpdir(), 'gaugeleaf-kit-'));
    try {
      mkdirSync(join(folder, 'sheets'));
      writeFileSync(join(folder, 'sheets', 'one.md'), '# One\n');
      writeFileSync(join(folder, 'edition.yaml'), blockMarked('kit').text);
      const { text } = await show('gaugeleaf check --format json', folder);
      const { findings } = JSON.parse(text) as { findings: { file: string }[] };
      expect(findings.filter(({ file }) => file === 'edition.yaml')).toEqual([]);
      expect(findings).not.toEqual([]);
    } finally {
      rmSync(folder, { recursive: true, force: true });
    }
  });

  test('the sheet is clean', async () => {
    const folder = mkdtempSync(join(tmpdir(), 'gaugeleaf-sheet-'));
    try {
      mkdirSync(join(folder, 'sheets'));
      const { options, text: sheet } = blockMarked('sheet');
      writeFileSync(join(folder, options.get('') ?? ''), sheet);
      const shown = await show('gaugeleaf check --all', folder);
      expect(shown).toEqual({ status: 0, text: 'No findings in 1 sheet\n' });
    } finally {
      rmSync(folder, { recursive: true, force: true });
    }
  });

  test('the variant is clean, and prints what its base says', async () => {
    const folder = mkdtempSync(join(tmpdir(), 'gaugeleaf-variant-'));
    try {
      mkdirSync(join(folder, 'sheets'));
      for (const mark of ['sheet', 'variant']) {
        const { options, text: sheet } = blockMarked(mark);
        writeFileSync(join(folder, options.get('') ?? ''), sheet);
      }
      const shown = await show('gaugeleaf check --all', folder);
      expect(shown).toEqual({ status: 0, text: 'No findings in 2 sheets\n' });
      const { text } = await show('gaugeleaf export --format csv', folder);
      const rows = text.split('\n').filter((row) => row.startsWith('orlo-f27-wexcombe-export,'));
      expect(rows).toHaveLength(2);
      expect(rows[0]).toContain('7/32 ± 1/64 in');
      expect(rows[0]).toContain('free end of the float');
      expect(rows[1]).toContain('1-1/4 ± 1/4 turns out');
    } finally {
      rmSync(folder, { recursive: true, force: true });
    }
  });

  test('rules of a unit’s own are understood, and turn two headings about', async () => {
    const { folder, remove } = demoCopy();
    try {
      const file = 'sheets/orlo-t71-wexcombe-six.md';
      change(join(folder, file), 'settings:\n', `${blockMarked('work').text}settings:\n`);
      const { text } = await show(`gaugeleaf check --format json ${file}`, folder);
      const { findings } = JSON.parse(text) as { findings: { name: string; message: string }[] };
      expect(findings.map(({ name }) => name)).toContain('operation-early');
      expect(findings.filter(({ name }) => name.startsWith('work-rule'))).toEqual([]);
      expect(findings.find(({ name }) => name === 'operation-early')?.message).toMatch(
        /Unloader.*Fast idle gap/,
      );
    } finally {
      remove();
    }
  });

  test('operations, parts, stages and hazards of a unit’s own are understood', async () => {
    const { folder, remove } = demoCopy();
    try {
      const file = 'sheets/orlo-t71-wexcombe-six.md';
      const sheet = join(folder, file);
      change(sheet, 'settings:\n', `${blockMarked('own-work').text}settings:\n`);
      change(
        sheet,
        '## Pump stroke\n',
        '## Centering the jet\n\n1. Slacken the gland.\n\n## Pump stroke\n',
      );
      const { text } = await show(`gaugeleaf check --format json ${file}`, folder);
      const { findings } = JSON.parse(text) as { findings: { name: string; message: string }[] };
      const names = findings.map(({ name }) => name);
      expect(
        names.filter((name) => /^(work-rule|operation-unknown|front-matter)/.test(name)),
      ).toEqual([]);
      const told = findings.map(({ name, message }) => `${name}: ${message}`).join('\n');
      expect(told).toMatch(/setting-disturbed: .*float-level/);
      expect(told).toMatch(/state-unmet: .*ignition lock/);
    } finally {
      remove();
    }
  });

  test('a warning that is accepted this way no longer stops a released sheet', async () => {
    const { folder, remove } = demoCopy();
    try {
      const file = 'sheets/orlo-t71-wexcombe-six.md';
      const sheet = join(folder, file);
      const drop =
        '    value: 23/32 ± 1/32 in\n    also: [0.71875 in, 18.256 mm, 17.463–19.050 mm]\n';
      change(
        sheet,
        `${drop}    gauge: 23/32 drill\n    travel: 33/64 in\n`,
        '    value: 5-3/4 ± 1/32 in\n',
      );
      change(sheet, 'status: proof\n', 'status: released\n');
      const before = await show(`gaugeleaf check ${file}`, folder);
      expect(before.status).toBe(1);
      expect(before.text).toContain('size-unusual');
      const accept = blockMarked('accept').text;
      change(sheet, 'settings:\n', `${accept}settings:\n`);
      const after = await show(`gaugeleaf check --all ${file}`, folder);
      expect(after.text).toContain('Measured on three units. The bowl of this one is deep.');
      expect(after.status).toBe(0);
    } finally {
      remove();
    }
  });

  test('each file of a folder is read where it is said to stand', async () => {
    const folder = mkdtempSync(join(tmpdir(), 'gaugeleaf-folder-'));
    try {
      const places = [...blockMarked('folder').text.matchAll(/^(\S+)/gm)].map(
        ([, place = '']) => place,
      );
      const faulty = [
        'edition.yaml',
        'sources.yaml',
        'sheets/one.md',
        'kinds/one.yaml',
        'templates/wording.yaml',
      ];
      for (const file of faulty) {
        mkdirSync(join(folder, dirname(file)), { recursive: true });
        writeFileSync(join(folder, file), 'no-such-key: 1\n');
      }
      const { text } = await show('gaugeleaf check --format json', folder);
      const { findings } = JSON.parse(text) as { findings: { file: string }[] };
      expect([...new Set(findings.map(({ file }) => file))].sort()).toEqual([...faulty].sort());
      const read = faulty.map((file) => (places.includes(file) ? file : `${dirname(file)}/`));
      // Pictures are named by sheets, records by `record`, and what comes out is not read.
      expect(
        [...read, 'sheets/pictures/', 'sheets/records/', 'sheets/readings/', 'print/'].sort(),
      ).toEqual([...places].sort());
    } finally {
      rmSync(folder, { recursive: true, force: true });
    }
  });

  test('the table is that of the demo', () => {
    const sheet = readFileSync(join(root, 'sheets/brennick-b12-larkmoor-ten.md'), 'utf8');
    expect(sheet).toContain(blockMarked('table').text);
  });

  test('statements and shared sources are read', async () => {
    const { folder, remove } = demoCopy();
    try {
      const file = 'sheets/orlo-t71-wexcombe-six.md';
      const sheet = readFileSync(join(folder, file), 'utf8');
      const unloader = /^ {2}unloader:\n(?: {4}.*\n)+/m;
      writeFileSync(join(folder, file), sheet.replace(unloader, blockMarked('statements').text));
      writeFileSync(join(folder, 'sources.yaml'), blockMarked('sources').text);
      const { text } = await show(`gaugeleaf check --format json ${file}`, folder);
      const { findings } = JSON.parse(text) as {
        findings: { severity: string; message: string }[];
      };
      expect(findings.filter(({ severity }) => severity === 'error')).toEqual([]);
      const { text: table } = await show('gaugeleaf sources orlo-t71-wexcombe-six', folder);
      expect(table).toContain('for the plate of the later part only');
    } finally {
      remove();
    }
  });
});

describe('how sizes are written', () => {
  const section = readFileSync(join(root, 'docs/sizes.md'), 'utf8');
  const forms = [...section.matchAll(/^\| (`.*?) \|/gm)].flatMap(([, cell = '']) =>
    [...cell.matchAll(/`([^`]+)`/g)].map(([, form = '']) => form),
  );

  test('every row is looked at', () => expect(forms.length).toBeGreaterThan(40));

  test.each(forms)('%s', (form) => {
    const reading = readStatement(form, { gauges: gaugeBook() });
    expect(reading.ok).toBe(true);
    if (reading.ok) expect(writeStatement(reading.statement)).toBe(form);
  });

  test('a bare number is refused, and a bare SWG is doubtful', () => {
    expect(readStatement('No. 60', { gauges: gaugeBook() }).ok).toBe(false);
    const wire = readStatement('22 SWG', { gauges: gaugeBook() });
    expect(wire.ok && wire.statement.ambiguous.map((gauge) => gauge.label)).toEqual([
      'No. 22 US steel wire',
    ]);
  });
});
