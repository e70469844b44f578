import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, test } from 'vitest';
import { table, tryPacked } from '../../src/build/try-packed.mjs';

/**
 * The packed program on the oldest release of Node that it is for, and on the newest. It takes a package
 * registry, so it is tried where CI or TRY_INSTALL says so; `npm run packed` tries five releases and
 * the other ways to install it.
 */
const tried = process.env.CI !== undefined || process.env.TRY_INSTALL !== undefined;
const root = join(import.meta.dirname, '..', '..');
const home = mkdtempSync(join(tmpdir(), 'gaugeleaf-nodes-'));
afterAll(() => rmSync(home, { recursive: true, force: true }));

test.runIf(tried)(
  'the packed program checks, exports and prints the same bytes on the oldest and on the newest Node',
  ({ skip }) => {
    let results: ReturnType<typeof tryPacked>;
    try {
      const releases = ['20.19.0', 'latest'];
      results = tryPacked(root, home, { releases, quick: true, browser: 'packaged' });
    } catch (error) {
      console.warn(`the packages can't be had here: ${String(error).slice(0, 300)}`);
      return skip();
    }
    const { lines, good } = table(results);
    expect(good, lines.join('\n')).toBe(true);
    expect(new Set(results.map(({ version }) => version)).size).toBe(2);
  },
  400_000,
);
