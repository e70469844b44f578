import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, test } from 'vitest';
import { wholeSheet } from '../checks/examples.ts';
import { gaugeleaf } from './console.ts';

const club = mkdtempSync(join(tmpdir(), 'gaugeleaf-across-'));
mkdirSync(join(club, 'sheets'));
writeFileSync(join(club, 'edition.yaml'), 'gaugeleaf-edition: 1\ntitle: Club\n');
afterAll(() => rmSync(club, { recursive: true, force: true }));

function put(id: string, front: string, settings = ''): void {
  const whole = wholeSheet({ front: `sheet: ${id}\n${front}`, settings });
  // A paper of its own, so that nothing is said of papers.
  const text = whole
    .replaceAll('m48', `m48${id.at(-1)}`)
    .replace('Four Workshop Manual', `Manual ${id}`);
  writeFileSync(join(club, 'sheets', `${id}.md`), text);
}

const unit = (more: string) =>
  `unit:\n  kind: carburetor\n  maker: Orlo\n  model: F27\n  features: [single-barrel, downdraft, pump]\n  ${more}`;

describe('check of a project', () => {
  put('orlo-f27', unit('part-numbers: [F27-20]'));
  put(
    'orlo-z19',
    unit('part-numbers: [F27-20]'),
    'idle-mixture: { value: 1-3/4 turns out, from: m48 p. 40 }',
  );

  test('tells what lies between its sheets last, with the place in the other file', async () => {
    const { status, out } = await gaugeleaf(['check'], { cwd: club });
    expect(status).toBe(0);
    expect(out).toBe(`sheets/orlo-z19.md
  10:18  warning  part-number-repeated
         \`F27-20\` is also a part number of \`orlo-f27\`
         fix: take it off one of the two sheets, or make one sheet of them
         see: sheets/orlo-f27.md:10:18 the same number there
  26:26  warning  same-unit-differs
         Idle mixture baseline is 1-3/4 turns out here and 1-1/4 turns out on \`orlo-f27\`, for the same unit (1/2 turn less there)
         fix: correct one of the two, or say in \`part-numbers:\` or \`fits:\` how the units differ
         see: sheets/orlo-f27.md:26:26 stated there

2 warnings in 1 of 2 sheets
`);
  });

  test('does so for the folder named, and not for sheets that are named', async () => {
    const whole = await gaugeleaf(['check', '.'], { cwd: club });
    expect(whole.out).toContain('same-unit-differs');
    for (const paths of [['sheets'], ['orlo-f27', 'orlo-z19']]) {
      const { out } = await gaugeleaf(['check', ...paths], { cwd: club });
      expect(out).toBe('No findings in 2 sheets\n');
    }
  });

  test('carries the other file into JSON and SARIF', async () => {
    const json = await gaugeleaf(['check', '--format', 'json'], { cwd: club });
    const { findings } = JSON.parse(json.out);
    expect(findings[1].file).toBe('sheets/orlo-z19.md');
    expect(findings[1].related).toEqual([
      {
        line: 26,
        column: 26,
        endLine: 26,
        endColumn: 41,
        label: 'stated there',
        file: 'sheets/orlo-f27.md',
      },
    ]);
    const sarif = await gaugeleaf(['check', '--format', 'sarif'], { cwd: club });
    const [run] = JSON.parse(sarif.out).runs;
    const result = run.results.find(
      (each: { ruleId: string }) => each.ruleId === 'same-unit-differs',
    );
    expect(run.tool.driver.rules[result.ruleIndex].id).toBe('same-unit-differs');
    const uri = (place: { physicalLocation: { artifactLocation: { uri: string } } }) =>
      place.physicalLocation.artifactLocation.uri;
    expect(result.locations.map(uri)).toEqual(['sheets/orlo-z19.md']);
    expect(result.relatedLocations.map(uri)).toEqual(['sheets/orlo-f27.md']);
  });

  test('stops the press where either sheet is released', async () => {
    put('orlo-f27', `status: released\n${unit('part-numbers: [F27-20]')}`);
    expect((await gaugeleaf(['check'], { cwd: club })).status).toBe(1);
    put('orlo-f27', unit('part-numbers: [F27-20]'));
    expect((await gaugeleaf(['check'], { cwd: club })).status).toBe(0);
    put(
      'orlo-z19',
      `status: released\n${unit('part-numbers: [F27-20]')}`,
      'idle-mixture: { value: 1-3/4 turns out, from: m48 p. 40 }',
    );
    expect((await gaugeleaf(['check'], { cwd: club })).status).toBe(1);
    expect((await gaugeleaf(['check', 'orlo-z19'], { cwd: club })).status).toBe(0);
  });

  test('takes the reason of either sheet, and tells of one that is no longer needed', async () => {
    const accept = (finding: string, at: string) =>
      `{ finding: ${finding}, at: ${at}, reason: both left the works }`;
    put(
      'orlo-f27',
      `${unit('part-numbers: [F27-20]')}\naccept:\n  - ${accept('part-number-repeated', 'F27-20')}\n  - ${accept('same-unit-differs', 'Idle mixture')}`,
    );
    const { out, status } = await gaugeleaf(['check'], { cwd: club });
    expect(out).toBe('No findings in 2 sheets; 2 accepted by the editor\n');
    expect(status).toBe(0);
    put(
      'orlo-z19',
      unit('part-numbers: [F27-21]'),
      'idle-mixture: { value: 1-3/4 turns out, from: m48 p. 40 }',
    );
    const after = await gaugeleaf(['check'], { cwd: club });
    expect(after.out).toMatch(
      /19:16 {2}warning {2}acceptance-unused\n {9}`part-number-repeated` is accepted, but it is not found between this sheet and another\n/,
    );
    const alone = await gaugeleaf(['check', 'orlo-f27'], { cwd: club });
    expect(alone.out).toBe('No findings in 1 sheet\n');
  });
});
