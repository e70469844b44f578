import { spawn, spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import {
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { dirname, join, relative } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';
import { beforeAll, describe, expect, test } from 'vitest';
import { browserHere } from '../press/stand.ts';
import { cleanSheet, folderWith } from '../project/folder.ts';

const browser = await browserHere();
if (typeof browser === 'string') console.warn(`Killing a print is not tested: ${browser}`);
const home = typeof browser === 'string' ? '' : dirname(browser.path);

const root = fileURLToPath(new URL('../../', import.meta.url));
const program = join(root, 'node_modules', '.cache', 'gaugeleaf-kill', 'gaugeleaf.mjs');

const patience = { timeout: 400_000 };

/** The command from its sources, in one file: what `npm run build` left may be older. */
async function bundle(): Promise<void> {
  mkdirSync(dirname(program), { recursive: true });
  await build({
    absWorkingDir: root,
    entryPoints: ['src/cli/main.ts'],
    outfile: program,
    bundle: true,
    format: 'esm',
    platform: 'node',
    target: 'node20',
    external: ['puppeteer-core', '@sparticuz/chromium', '@cantoo/pdf-lib', 'tar-fs'],
    banner: {
      js: "import{createRequire as __createRequire}from'node:module';const require=__createRequire(import.meta.url);",
    },
    logLevel: 'silent',
  });
}

describe.skipIf(typeof browser === 'string')('a booklet that is killed', patience, () => {
  let folder: string;
  let env: NodeJS.ProcessEnv;
  const prints = () => readdirSync(join(folder, 'print')).sort();
  const arguments_ = [program, 'booklet'];

  beforeAll(async () => {
    await bundle();
  }, patience.timeout);

  test('leaves the old file or the new one, and the next run nothing besides', async () => {
    folder = folderWith({
      'edition.yaml': 'gaugeleaf-edition: 1\ntitle: Old\npaper: half-letter\n',
      'sheets/a.md': cleanSheet('a'),
    });
    const cache = folderWith();
    if (/^chromium-/.test(home.split('/').at(-1) ?? '')) {
      symlinkSync(home, join(cache, home.split('/').at(-1) ?? ''));
    }
    env = { ...process.env, GAUGELEAF_CACHE: cache };
    const print = () =>
      spawnSync(process.execPath, arguments_, { cwd: folder, env, encoding: 'utf8' });
    const started = performance.now();
    const first = print();
    expect(first.status, first.stderr).toBe(0);
    const whole = performance.now() - started;
    const path = join(folder, 'print', 'booklet.pdf');
    const old = readFileSync(path);
    writeFileSync(
      join(folder, 'edition.yaml'),
      'gaugeleaf-edition: 1\ntitle: New\npaper: half-letter\n',
    );
    // The whole run in steps that are no even parts of it; the last may well come through.
    const seen = new Set<string>();
    for (let moment = 0; moment < 12; moment++) {
      await killedAfter(((moment + 0.5 * Math.random()) / 11) * whole);
      const found = readFileSync(path);
      seen.add(found.equals(old) ? 'old' : 'new');
      if (!found.equals(old)) expect(found.subarray(-6).toString()).toBe('%%EOF\n');
    }
    expect(seen.has('old')).toBe(true);
    writeFileSync(join(folder, 'print', '.booklet.pdf.4194999-1.partial'), 'half');
    const last = print();
    expect(last.status, last.stderr).toBe(0);
    expect(prints()).toEqual(['booklet.pdf']);
    const withStore = readFileSync(path);
    const fresh = spawnSync(process.execPath, [...arguments_, '--no-cache'], { cwd: folder, env });
    expect(fresh.status).toBe(0);
    // What killed runs left in the store did no harm.
    expect(readFileSync(path).equals(withStore)).toBe(true);
  });

  function killedAfter(milliseconds: number): Promise<void> {
    return new Promise((done) => {
      const child = spawn(process.execPath, arguments_, { cwd: folder, env, stdio: 'ignore' });
      const timer = setTimeout(() => child.kill('SIGKILL'), milliseconds);
      child.on('close', () => {
        clearTimeout(timer);
        done();
      });
    });
  }
});

describe('pages that are killed', patience, () => {
  test('are whole, old or new, and all on the list; the first page names none that is not there', async () => {
    await bundle();
    const edition = (title: string, order: string) =>
      `gaugeleaf-edition: 1\ntitle: ${title}\norder: [${order}]\n`;
    const folder = folderWith({
      'edition.yaml': edition('Old', 'a, b'),
      'sheets/a.md': cleanSheet('a'),
      'sheets/b.md': cleanSheet('b'),
    });
    const site = join(folder, 'print', 'pages');
    const run = () =>
      spawnSync(process.execPath, [program, 'pages'], { cwd: folder, encoding: 'utf8' });
    const started = performance.now();
    expect(run().status).toBe(0);
    const whole = performance.now() - started;
    writeFileSync(join(folder, 'sheets', 'c.md'), cleanSheet('c'));
    writeFileSync(join(folder, 'edition.yaml'), edition('New', 'b, c'));
    const seen = new Set<string>();
    for (let moment = 0; moment < 8; moment++) {
      // Writing is the last part of a run.
      await killedAfter(folder, (0.6 + 0.06 * moment) * whole);
      const list = readFileSync(join(site, 'files.sha256'), 'utf8');
      const files = readdirSync(site, { recursive: true, withFileTypes: true })
        .filter((entry) => entry.isFile() && !/^files\.sha256$|\.partial$/.test(entry.name))
        .map((entry) => join(entry.parentPath, entry.name));
      for (const file of files) {
        const digest = createHash('sha256').update(readFileSync(file)).digest('hex');
        expect(list).toContain(`${digest}  ${relative(site, file)}\n`);
      }
      const home = readFileSync(join(site, 'index.html'), 'utf8');
      for (const [, page = ''] of home.matchAll(/href="(units\/[^"#]+)"/g)) {
        expect(existsSync(join(site, page)), page).toBe(true);
      }
      seen.add(/<title>(\w+)/.exec(home)?.[1] ?? '');
    }
    expect([...seen].sort()).toEqual(expect.arrayContaining(['Old']));
    expect(run().status).toBe(0);
    expect(readdirSync(join(site, 'units')).sort()).toEqual(['b.html', 'c.html']);
    expect(readdirSync(site).filter((name) => name.endsWith('.partial'))).toEqual([]);
  });

  function killedAfter(cwd: string, milliseconds: number): Promise<void> {
    return new Promise((done) => {
      const child = spawn(process.execPath, [program, 'pages'], { cwd, stdio: 'ignore' });
      const timer = setTimeout(() => child.kill('SIGKILL'), milliseconds);
      child.on('close', () => {
        clearTimeout(timer);
        done();
      });
    });
  }
});
