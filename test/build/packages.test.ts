import { execFileSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { join, posix } from 'node:path';
import { expect, test } from 'vitest';
import { EXTERNAL } from '../../src/build/for-node.mjs';

const root = join(import.meta.dirname, '..', '..');
const read = (name: string) => readFileSync(join(root, name), 'utf8');

interface Packages {
  readonly dependencies: Record<string, string>;
  readonly devDependencies: Record<string, string>;
  readonly optionalDependencies: Record<string, string>;
}

const { dependencies, devDependencies, optionalDependencies } = JSON.parse(
  read('package.json'),
) as Packages;

test('who installs the program gets the packages that are not bundled, and no others', () => {
  const installed = [...Object.keys(dependencies), ...Object.keys(optionalDependencies)];
  expect(installed.sort()).toEqual([...EXTERNAL].sort());
});

test('the notices name each bundled package once, with its version and the words of its license', () => {
  const [, ...entries] = read('dist/third-party-notices.txt').split(`\n${'-'.repeat(72)}\n\n`);
  const titles = entries.map((entry) => entry.split('\n')[0] ?? '');
  expect(new Set(titles).size).toBe(titles.length);
  for (const entry of entries) {
    expect(entry).toMatch(/^(@[\w.-]+\/)?[\w.-]+ \d\S* \([\w. ()-]+\)\n\n\S/);
    expect(entry).toMatch(/permi(t|ssion)|license/i);
  }
  // Two that are known to be in it, and one that is installed and not bundled.
  const locked = JSON.parse(read('package-lock.json')) as {
    readonly packages: Record<string, { readonly version: string }>;
  };
  for (const name of ['yaml', 'handlebars']) {
    expect(devDependencies[name]).toBeDefined();
    expect(titles).toContainEqual(
      expect.stringMatching(
        new RegExp(`^${name} ${locked.packages[`node_modules/${name}`]?.version} `),
      ),
    );
  }
  expect(titles.join()).not.toMatch(/puppeteer-core/);
});

test('no page that is packed leads to a file that is not', () => {
  const packed = execFileSync('npm', ['pack', '--dry-run', '--json', '--ignore-scripts'], {
    cwd: root,
    encoding: 'utf8',
    stdio: ['ignore', 'pipe', 'ignore'],
    shell: process.platform === 'win32',
  });
  const [{ files } = { files: [] }]: { files: { path: string }[] }[] = JSON.parse(packed);
  const paths = files.map(({ path }) => path);
  const pages = paths.filter((path) => path.endsWith('.md') && !path.startsWith('templates/club/'));
  expect(pages.length).toBeGreaterThan(20);
  const lost = pages.flatMap((page) =>
    [
      ...read(page)
        .replace(/^(`{3,})[\s\S]*?^\1$/gm, '')
        .matchAll(/\]\(([^)\s#]+)/g),
    ]
      .map(([, link = '']) => link)
      .filter((link) => !link.includes('://'))
      .filter((link) => {
        const to = posix.join(posix.dirname(page), link);
        return !paths.some((path) => path === to || path.startsWith(`${to}/`));
      })
      .map((link) => `${page}: ${link}`),
  );
  expect(lost).toEqual([]);
});
