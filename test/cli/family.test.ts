import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, test } from 'vitest';
import { wholeSheet } from '../checks/examples.ts';
import { gaugeleaf } from './console.ts';

const club = mkdtempSync(join(tmpdir(), 'gaugeleaf-family-'));
const pathOf = (id: string) => join(club, 'sheets', `${id}.md`);
mkdirSync(join(club, 'sheets'));
writeFileSync(join(club, 'edition.yaml'), 'gaugeleaf-edition: 1\ntitle: Club\n');
afterAll(() => rmSync(club, { recursive: true, force: true }));

const unit = (more: string) =>
  `unit:\n  kind: carburetor\n  maker: Orlo\n  model: F27\n  features: [single-barrel, downdraft, pump]\n  ${more}`;

function putBase(settings = ''): void {
  const front = `sheet: orlo-base\n${unit('part-numbers: [F27-20]')}`;
  writeFileSync(pathOf('orlo-base'), wholeSheet({ front, settings }));
}

function putVariant(settings: string, body = '', more = ''): void {
  writeFileSync(
    pathOf('orlo-van'),
    `---
gaugeleaf: 1
sheet: orlo-van
title: Orlo F27, Wexcombe Van
based-on: orlo-base
unit: { part-numbers: [F27-30] }
revision: 1
date: 2026-10-03
status: proof
${more}settings:
  ${settings}
---
${body}`,
  );
}

const check = async (...argv: string[]) => gaugeleaf(['check', ...argv], { cwd: club });

describe('a variant in a project', () => {
  test('is clean where its base is and its own figures are', async () => {
    putBase();
    putVariant('idle-mixture: { value: 1-1/2 turns out, from: m48 p. 40 }');
    expect((await check()).out).toBe('No findings in 2 sheets\n');
    expect((await check('orlo-van')).out).toBe('No findings in 1 sheet\n');
  });

  test('does not say again what its base has', async () => {
    putBase(
      'float-level: { value: 13/64 in, also: 0.230 in, at: center, gasket: removed, from: m48 p. 31 }',
    );
    const whole = await check();
    expect(whole.out.match(/sizes-disagree/g)).toHaveLength(1);
    expect(whole.out).toMatch(/^sheets\/orlo-base\.md\n.*\n\n1 error in 1 of 2 sheets/s);
    // Checked by itself, it does: the card of the variant would have the wrong figure.
    const alone = await check('orlo-van');
    expect(alone.status).toBe(1);
    expect(alone.out).toMatch(/^sheets\/orlo-base\.md\n {2}\d+:\d+ {2}error {2}sizes-disagree\n/);
    expect(alone.out).toContain('see: sheets/orlo-van.md:1:1 which is based on this\n');
    // And what it states in that place is no longer the base's.
    putVariant('float-level: { value: 13/64 in, also: 0.203 in, from: m48 p. 31 }');
    expect((await check('orlo-van')).out).toBe('No findings in 1 sheet\n');
  });

  test('tells at the base what comes of the variant alone', async () => {
    putBase();
    putVariant('pump-stroke: none', '## Pump stroke\n\n1. Leave it.\n');
    const { out } = await check();
    expect(out).toContain('sheets/orlo-base.md\n');
    expect(out).toContain('feature');
    expect(out).toContain('see: sheets/orlo-van.md:1:1 which is based on this\n');
  });

  test('keeps a reason of the base for the base’s own words, and not for a new figure', async () => {
    const doubtful =
      'float-level: { value: 9/64 in, also: .140 in, at: center, gasket: removed, from: m48 p. 31 }';
    const accept = 'accept: [{ finding: size-chopped, at: float-level, reason: as printed }]';
    const front = `sheet: orlo-base\n${unit('part-numbers: [F27-20]')}\n${accept}`;
    writeFileSync(pathOf('orlo-base'), wholeSheet({ front, settings: doubtful }));
    putVariant('idle-mixture: { value: 1-1/2 turns out, from: m48 p. 40 }');
    expect((await check('orlo-van')).out).toBe(
      'No findings in 1 sheet; 1 accepted by the editor\n',
    );
    putVariant('float-level: { value: 11/64 in, also: .171 in, from: m48 p. 31 }');
    const { out } = await check('orlo-van');
    expect(out).toMatch(/^sheets\/orlo-van\.md\n {2}11:41 {2}note {2}size-chopped\n/);
    expect(out).not.toContain('acceptance-unused');
  });

  test('is mended in its own file, and its base is not touched through it', async () => {
    putBase();
    putVariant('Float levle: { value: 13/64 in, from: m48 }');
    const before = readFileSync(pathOf('orlo-base'), 'utf8');
    const text = readFileSync(pathOf('orlo-van'), 'utf8');
    await check('--fix', 'orlo-van');
    const after = readFileSync(pathOf('orlo-van'), 'utf8');
    expect([text, text.replace('Float levle', 'float-level')]).toContain(after);
    expect(readFileSync(pathOf('orlo-base'), 'utf8')).toBe(before);
  });

  test('says that it has no part number of its own', async () => {
    putBase();
    putVariant('idle-mixture: { value: 1-1/2 turns out, from: m48 p. 40 }');
    writeFileSync(
      pathOf('orlo-van'),
      readFileSync(pathOf('orlo-van'), 'utf8').replace('unit: { part-numbers: [F27-30] }\n', ''),
    );
    const { out } = await check();
    expect(out).toContain(
      '`F27-20` is the part number of `orlo-base`, on which this sheet is based; it states none of its own',
    );
    expect(out).toContain('sheets/orlo-van.md\n    3:8  warning  part-number-repeated\n');
  });
});

describe('what is made of a variant', () => {
  test('export and order of work have it in full', async () => {
    putBase();
    putVariant(
      'idle-mixture: { value: 1-1/2 turns out, from: m48 p. 40 }',
      '# Orlo F27 of the van\n\n## Initial idle\n\n1. Turn the needle in until it seats lightly.\n2. Back it out: :value[idle-mixture].\n',
    );
    const exported = await gaugeleaf(['export', '--format', 'json'], { cwd: club });
    const { sheets } = JSON.parse(exported.out);
    const [base, van] = sheets;
    expect(van.title).toBe('Orlo F27, Wexcombe Van');
    expect(van.settings.map(({ name }: { name: string }) => name)).toEqual(
      base.settings.map(({ name }: { name: string }) => name),
    );
    const trace = await check('--trace', 'orlo-van');
    expect(trace.out).toMatch(/^ +sheets\/orlo-base\.md:\d+ {2}Float level 1 /m);
    expect(trace.out).toMatch(/^ +\d+ {2}Initial idle 1$/m);
  });
});
