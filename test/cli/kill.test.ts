import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import {
  cpSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { basename, dirname, join, relative } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { forNode } from '../../src/build/for-node.mjs';
import { browserHere } from '../press/stand.ts';
import { cleanSheet, folderWith } from '../project/folder.ts';
import { isQuick } from '../suite/part.ts';

/*
 * The program is killed not after so many milliseconds, which no two machines agree on, but at its
 * first, second, ... change to the disk, before it or in the middle of it: see kill-switch.mjs. Of many
 * such moments a seed chooses some; the same ones are tried on every machine.
 */

const browser = await browserHere();
if (typeof browser === 'string') console.warn(`Killing a print is not tested: ${browser}`);
const home = typeof browser === 'string' ? '' : dirname(browser.path);

const root = fileURLToPath(new URL('../../', import.meta.url));
const killSwitch = new URL('../suite/kill-switch.mjs', import.meta.url).href;
const patience = { timeout: 400_000 };

let program = '';

/** The command from its sources, in one file: what `npm run build` left may be older. */
beforeAll(async () => {
  const cache = join(root, 'node_modules', '.cache');
  mkdirSync(cache, { recursive: true });
  program = join(mkdtempSync(join(cache, 'gaugeleaf-kill-')), 'gaugeleaf.mjs');
  await build({
    ...forNode,
    absWorkingDir: root,
    entryPoints: ['src/cli/main.ts'],
    outfile: program,
    logLevel: 'silent',
  });
}, patience.timeout);

afterAll(() => rmSync(dirname(program), { recursive: true, force: true }));

/** A club's folder and the user's cache beside it: all that a run may change. */
interface Place {
  readonly club: string;
  readonly cache: string;
}

function placeIn(folder: string): Place {
  return { club: join(folder, 'club'), cache: join(folder, 'cache') };
}

interface Ended {
  readonly wasKilled: boolean;
  readonly status: number | null;
  readonly stderr: string;
}

function run({ club, cache }: Place, argv: readonly string[], kill: NodeJS.ProcessEnv = {}): Ended {
  const { status, signal, stderr } = spawnSync(
    process.execPath,
    ['--import', killSwitch, program, ...argv],
    {
      cwd: club,
      env: { ...process.env, GAUGELEAF_CACHE: cache, KILL_WITHIN: dirname(club), ...kill },
      encoding: 'utf8',
    },
  );
  return { wasKilled: signal === 'SIGKILL', status, stderr };
}

/** A copy of a place to have a run killed in. */
function copyOf(place: Place): Place {
  const folder = folderWith();
  cpSync(dirname(place.club), folder, { recursive: true, verbatimSymlinks: true });
  return placeIn(folder);
}

/** How often a run changes something on the disk when nobody ends it. */
function changesOf(place: Place, argv: readonly string[]): number {
  const file = join(folderWith(), 'count');
  const { status, stderr } = run(place, argv, { KILL_COUNT: file });
  expect(status, stderr).toBe(0);
  return Number(readFileSync(file, 'utf8'));
}

/** The first change, the last `ends` and `more` others, ascending. */
function moments(changes: number, ends: number, more: number): readonly number[] {
  const chosen = new Set([1, ...Array.from({ length: ends }, (_, back) => changes - back)]);
  // A linear congruence (Park and Miller), for the same numbers everywhere.
  for (let seed = 1948; chosen.size < 1 + ends + more; ) {
    seed = (seed * 48_271) % 2_147_483_647;
    chosen.add(1 + (seed % changes));
  }
  return [...chosen].sort((one, other) => one - other);
}

describe.skipIf(typeof browser === 'string')('a booklet that is killed', patience, () => {
  const edition = (title: string) => `gaugeleaf-edition: 1\ntitle: ${title}\npaper: half-letter\n`;
  const bookletOf = ({ club }: Place) => readFileSync(join(club, 'print', 'booklet.pdf'));

  test('leaves the old file or the new one, and the next run nothing besides', () => {
    const old = placeIn(
      folderWith({ 'club/edition.yaml': edition('Old'), 'club/sheets/a.md': cleanSheet('a') }),
    );
    mkdirSync(old.cache);
    // A packaged browser that has been unpacked already need not be unpacked once more.
    if (/^chromium-/.test(basename(home))) symlinkSync(home, join(old.cache, basename(home)));
    const first = run(old, ['booklet']);
    expect(first.status, first.stderr).toBe(0);
    writeFileSync(join(old.club, 'edition.yaml'), edition('New'));

    const whole = copyOf(old);
    const changes = changesOf(whole, ['booklet']);
    const [before, after] = [bookletOf(old), bookletOf(whole)];
    expect(after.equals(before)).toBe(false);
    // The last changes are those to the booklet itself; the others are to what is kept of its parts.
    const seen = new Set<string>();
    for (const moment of moments(changes, 4, 3)) {
      const place = copyOf(old);
      expect(run(place, ['booklet'], { KILL_AT: String(moment) }).wasKilled).toBe(true);
      const found = bookletOf(place);
      const age = found.equals(before) ? 'old' : found.equals(after) ? 'new' : 'neither';
      expect(age, `killed at change ${moment} of ${changes}`).not.toBe('neither');
      seen.add(age);
      if (moment !== 1 && moment !== changes - 1) continue;
      // What killed runs left does no harm, and goes.
      writeFileSync(join(place.club, 'print', '.booklet.pdf.4194999-1.partial'), 'half');
      const next = run(place, ['booklet']);
      expect(next.status, next.stderr).toBe(0);
      expect(readdirSync(join(place.club, 'print'))).toEqual(['booklet.pdf']);
      expect(bookletOf(place).equals(after)).toBe(true);
    }
    expect(seen.has('old')).toBe(true);
    const fresh = run(whole, ['booklet', '--no-cache']);
    expect(fresh.status, fresh.stderr).toBe(0);
    expect(bookletOf(whole).equals(after)).toBe(true);
  });
});

describe('pages that are killed', patience, () => {
  test('are whole, old or new, and all on the list; the first page names none that is not there', () => {
    const edition = (title: string, order: string) =>
      `gaugeleaf-edition: 1\ntitle: ${title}\norder: [${order}]\n`;
    const old = placeIn(
      folderWith({
        'club/edition.yaml': edition('Old', 'a, b'),
        'club/sheets/a.md': cleanSheet('a'),
        'club/sheets/b.md': cleanSheet('b'),
      }),
    );
    expect(run(old, ['pages']).status).toBe(0);
    writeFileSync(join(old.club, 'sheets', 'c.md'), cleanSheet('c'));
    writeFileSync(join(old.club, 'edition.yaml'), edition('New', 'b, c'));
    const changes = changesOf(copyOf(old), ['pages']);
    const seen = new Set<string>();
    let place = old;
    for (const moment of moments(changes, isQuick ? 2 : 4, isQuick ? 0 : 6)) {
      place = copyOf(old);
      expect(run(place, ['pages'], { KILL_AT: String(moment) }).wasKilled).toBe(true);
      seen.add(titleOfWhole(join(place.club, 'print', 'pages')));
    }
    expect([...seen].sort()).toEqual(['New', 'Old']);
    expect(run(place, ['pages']).status).toBe(0);
    const site = join(place.club, 'print', 'pages');
    expect(readdirSync(join(site, 'units')).sort()).toEqual(['b.html', 'c.html']);
    expect(readdirSync(site).filter((name) => name.endsWith('.partial'))).toEqual([]);
  });

  /** The title of the first page, when all files of the folder are on its list and all links lead somewhere. */
  function titleOfWhole(site: string): string {
    const list = readFileSync(join(site, 'files.sha256'), 'utf8');
    const files = readdirSync(site, { recursive: true, withFileTypes: true })
      .filter((entry) => entry.isFile() && !/^files\.sha256$|\.partial$/.test(entry.name))
      .map((entry) => join(entry.parentPath, entry.name));
    for (const file of files) {
      const digest = createHash('sha256').update(readFileSync(file)).digest('hex');
      expect(list).toContain(`${digest}  ${relative(site, file)}\n`);
    }
    const page = readFileSync(join(site, 'index.html'), 'utf8');
    for (const [, unit = ''] of page.matchAll(/href="(units\/[^"#]+)"/g)) {
      expect(existsSync(join(site, unit)), unit).toBe(true);
    }
    return /<title>(\w+)/.exec(page)?.[1] ?? '';
  }
});
