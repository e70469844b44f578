/**
 * Tries the packed program as its users have it: packed, installed beside several releases of Node (their
 * binaries come as npm packages), and run by each on a copy of the demo: `check` of every sheet, cards,
 * booklet, pages, export. All must end well and give the same bytes. Then it is installed in the other
 * ways that the README offers. Run by `npm run packed -- [--quick] [releases...]`; needs a package
 * registry and some minutes.
 */
import { execFileSync, spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import {
  cpSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { delimiter, join, resolve } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';

/** The floor, the newest of its line, the two lines after it, and the newest of all. */
const RELEASES = ['20.19.0', '20', '22', '24', 'latest'];
const QUICK = ['20.19.0', 'latest'];

/** What is run, with where its output lies, if not on standard output. */
const COMMANDS = [
  { name: 'check', argv: ['check'] },
  { name: 'check --format json', argv: ['check', '--format', 'json'] },
  { name: 'export', argv: ['export', '--format', 'json'] },
  { name: 'pages', argv: ['pages', '--out', 'out/pages'] },
  { name: 'card', argv: ['card', '--out', 'out/cards/'], sheets: 2, prints: true },
  {
    name: 'booklet',
    argv: ['booklet', '--no-cache', '--out', 'out/booklet.pdf'],
    prints: true,
    long: true,
  },
];

/**
 * The program of `root` installed in `home` with each of the releases: for every command and release the
 * exit status, the digest of all that it wrote, and what it said where it failed.
 */
export function tryPacked(root, home, { releases, quick, browser }) {
  const tarball = pack(root, home);
  const place = join(home, 'installed');
  mkdirSync(place, { recursive: true });
  writeFileSync(join(place, 'package.json'), '{ "name": "trial", "private": true }\n');
  const nodes = releases.map((release) => `node-${release}@npm:node@${release}`);
  npm(place, 'install', tarball, ...nodes);
  const results = [];
  for (const release of releases) {
    const node = nodeOf(place, release);
    const version = execFileSync(node, ['--version'], { encoding: 'utf8' }).trim();
    const project = join(home, `project-${release}`);
    copyDemo(root, project);
    const sheets = readdirSync(join(project, 'sheets')).filter((name) => name.endsWith('.md'));
    for (const { name, argv, sheets: count, prints, long } of COMMANDS) {
      if (quick && long) continue;
      if (prints && browser === null) continue;
      const program = join(place, 'node_modules', 'gaugeleaf', 'dist', 'gaugeleaf.js');
      const some = count ? sheets.slice(0, count).map((sheet) => join('sheets', sheet)) : [];
      const chosen = prints ? ['--browser', browser] : [];
      const { status, stdout, stderr } = spawnSync(node, [program, ...argv, ...some, ...chosen], {
        cwd: project,
        encoding: 'utf8',
        maxBuffer: 1 << 28,
        timeout: 300_000,
      });
      results.push({
        version,
        name,
        status,
        said: stderr,
        digest: digest(stdout, join(project, 'out')),
      });
      rmSync(join(project, 'out'), { recursive: true, force: true });
    }
  }
  return results;
}

/**
 * The ways to install it, each with the version that the installed program says: globally, by `npx` from
 * the packed file, and from a git address, which builds it.
 */
export function tryWays(root, home) {
  const tarball = pack(root, home);
  const bare = join(home, 'bare');
  mkdirSync(bare, { recursive: true });
  npm(home, 'install', '--global', '--prefix', join(home, 'global'), tarball);
  const fromGit = join(home, 'git');
  mkdirSync(fromGit, { recursive: true });
  writeFileSync(join(fromGit, 'package.json'), '{ "name": "trial", "private": true }\n');
  npm(fromGit, 'install', `git+${pathToFileURL(root)}`);
  const bin = process.platform === 'win32' ? join(home, 'global') : join(home, 'global', 'bin');
  const says = (program, argv, cwd) =>
    execFileSync(program, [...argv, '--version'], {
      cwd,
      encoding: 'utf8',
      env: { ...process.env, PATH: `${bin}${delimiter}${process.env.PATH}` },
    }).trim();
  return [
    { way: 'npm install --global', said: says('gaugeleaf', [], bare) },
    { way: 'npx', said: says('npx', ['--yes', '--package', tarball, 'gaugeleaf'], bare) },
    { way: 'a git address', said: says('npx', ['gaugeleaf'], fromGit) },
  ];
}

/** The lines of a table, a command by release, and whether all ended well with the same bytes. */
export function table(results) {
  const names = [...new Set(results.map(({ name }) => name))];
  const lines = [];
  let good = results.length > 0;
  for (const name of names) {
    const runs = results.filter((each) => each.name === name);
    const same = new Set(runs.map((run) => run.digest)).size === 1;
    const failed = runs.filter(({ status }) => status !== 0);
    good &&= same && failed.length === 0;
    lines.push(
      `${name}: ${runs.map(({ version, status }) => `${version} ${status === 0 ? 'good' : `ended in ${status}`}`).join(', ')}; ` +
        `${same ? 'the same bytes' : 'bytes differ'}`,
      ...failed.map(({ version, said }) => `  ${version}: ${said.trim().slice(0, 400)}`),
    );
  }
  return { lines, good };
}

function pack(root, home) {
  const packed = npm(root, 'pack', '--silent', '--ignore-scripts', '--pack-destination', home);
  return join(home, packed.trim().split('\n').at(-1) ?? '');
}

function npm(cwd, ...argv) {
  return execFileSync('npm', [...argv, '--no-audit', '--no-fund', '--prefer-offline'], {
    cwd,
    encoding: 'utf8',
    stdio: ['ignore', 'pipe', 'pipe'],
    shell: process.platform === 'win32',
  });
}

function nodeOf(place, release) {
  const folder = join(place, 'node_modules', `node-${release}`, 'bin');
  return join(folder, process.platform === 'win32' ? 'node.exe' : 'node');
}

function copyDemo(root, to) {
  mkdirSync(to, { recursive: true });
  for (const name of ['edition.yaml', 'editions', 'sheets']) {
    cpSync(join(root, name), join(to, name), { recursive: true });
  }
}

function digest(stdout, folder) {
  const hash = createHash('sha256').update(stdout);
  const files = filesIn(folder);
  for (const name of files) hash.update(name).update(readFileSync(join(folder, name)));
  return `${files.length} ${hash.digest('hex')}`;
}

function filesIn(folder) {
  try {
    const entries = readdirSync(folder, { recursive: true, withFileTypes: true });
    return entries
      .filter((entry) => entry.isFile())
      .map((entry) => join(entry.parentPath, entry.name).slice(folder.length + 1))
      .sort();
  } catch {
    return [];
  }
}

if (import.meta.url === pathToFileURL(process.argv[1] ?? '').href) {
  const root = resolve(fileURLToPath(import.meta.url), '..', '..', '..');
  const given = process.argv.slice(2);
  const quick = given.includes('--quick');
  const named = given.filter((word) => word !== '--quick');
  const home = mkdtempSync(join(tmpdir(), 'gaugeleaf-packed-'));
  try {
    const releases = named.length > 0 ? named : quick ? QUICK : RELEASES;
    const { lines, good } = table(tryPacked(root, home, { releases, quick, browser: 'packaged' }));
    console.log(lines.join('\n'));
    if (!quick) for (const { way, said } of tryWays(root, home)) console.log(`${way}: ${said}`);
    if (!good) process.exitCode = 1;
  } finally {
    rmSync(home, { recursive: true, force: true });
  }
}
