import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { folderWith } from '../project/folder.ts';
import { gaugeleaf } from './console.ts';

const demo = readFileSync(
  new URL('../../sheets/orlo-t71-wexcombe-six.md', import.meta.url),
  'utf8',
);

function project(sheet = demo): string {
  return folderWith({
    'edition.yaml': 'gaugeleaf-edition: 1\ntitle: Settings\n',
    'sheets/orlo-t71-wexcombe-six.md': sheet,
  });
}

describe('gaugeleaf draw', () => {
  test('writes a file for each drawing into print/, the same bytes every time', async () => {
    const cwd = project();
    const { status, out, err } = await gaugeleaf(['draw', 'orlo-t71-wexcombe-six'], { cwd });
    expect(status).toBe(0);
    const files = out.trim().split('\n');
    // The sheet has pictures of its own for some: as files they are drawn all the same.
    expect(files).toContain('print/orlo-t71-wexcombe-six-float-level-float-height.svg');
    expect(files).toContain('print/orlo-t71-wexcombe-six-initial-idle-screw-on-lever.svg');
    expect(err).toMatch(/^\d+ drawings, each to be printed at its own size/);
    const before = files.map((file) => readFileSync(join(cwd, file), 'utf8'));
    await gaugeleaf(['draw', 'orlo-t71-wexcombe-six'], { cwd });
    expect(files.map((file) => readFileSync(join(cwd, file), 'utf8'))).toEqual(before);
    expect(readdirSync(join(cwd, 'print')).length).toBe(files.length);
    for (const svg of before)
      expect(svg).toMatch(/^<svg xmlns[\s\S]* textLength="[\s\S]*<\/svg>\n$/);
  });

  test('each file carries the fonts that its lettering has, and no other', async () => {
    const cwd = project();
    await gaugeleaf(['draw', 'orlo-t71-wexcombe-six'], { cwd });
    for (const file of readdirSync(join(cwd, 'print'))) {
      const svg = readFileSync(join(cwd, 'print', file), 'utf8');
      const carried = [
        ...svg.matchAll(/@font-face\{font-family:"([^"]+)";font-weight:(\d+);src:url\(data:font/g),
      ].map(([, family, weight]) => `${family} ${weight}`);
      const texts = [
        ...svg.matchAll(/<text [^>]*font-family="'([^']+)'[^>]*?(font-weight="600")?>/g),
      ];
      const wanted = new Set(
        texts.map(
          ([text, family]) => `${family} ${text.includes('font-weight="600"') ? 600 : 400}`,
        ),
      );
      expect(carried.filter((face) => !/Upper|Lower/.test(face)).sort(), file).toEqual(
        [...wanted].sort(),
      );
      expect(
        carried.some((face) => face.startsWith('Gaugeleaf Upper')),
        file,
      ).toBe(svg.includes("font-family=\"'Gaugeleaf Upper'"));
      expect(svg.indexOf('<style>'), file).toBeGreaterThan(svg.indexOf('</desc>'));
    }
  });

  test('draws one operation, by any name that its heading may have', async () => {
    const cwd = project();
    const argv = ['draw', 'orlo-t71-wexcombe-six', 'Choke unloader', '-o', 'pictures'];
    const { status, out } = await gaugeleaf(argv, { cwd });
    expect(status).toBe(0);
    expect(out).toBe('pictures/orlo-t71-wexcombe-six-unloader-offset-plate-gap.svg\n');
    expect(existsSync(join(cwd, 'print'))).toBe(false);
  });

  test('says which operation was perhaps meant, and what a drawing needs', async () => {
    const cwd = project();
    const misspelt = await gaugeleaf(['draw', 'orlo-t71-wexcombe-six', 'float-dorp'], { cwd });
    expect(misspelt.status).toBe(2);
    expect(misspelt.err).toContain('the sheet has no operation float-dorp');
    expect(misspelt.err).toContain('did you mean float-drop?');
    const none = await gaugeleaf(['draw', 'orlo-t71-wexcombe-six', 'cleaning'], { cwd });
    expect(none.status).toBe(2);
    expect(none.err).toContain('has nothing to draw for cleaning');
    expect(existsSync(join(cwd, 'print'))).toBe(false);
  });
});
