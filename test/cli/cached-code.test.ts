import { spawnSync } from 'node:child_process';
import {
  cpSync,
  existsSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { cleanSheet } from '../project/folder.ts';

const root = join(import.meta.dirname, '..', '..');
const isBuilt = existsSync(join(root, 'dist', 'check.cjs'));
if (!isBuilt) console.warn('dist is not built: its compiled code is not tried');

let program = '';

beforeAll(() => {
  program = mkdtempSync(join(tmpdir(), 'gaugeleaf-built-'));
  for (const name of ['schemas', 'templates', 'node_modules', 'package.json']) {
    symlinkSync(join(root, name), join(program, name));
  }
});

afterAll(() => rmSync(program, { recursive: true, force: true }));

const dist = (name: string) => join(program, 'dist', name);

function cacheFile(): string {
  const [name, ...more] = readdirSync(join(program, 'dist')).filter((one) =>
    one.endsWith('.cache'),
  );
  expect(more).toEqual([]);
  return name ?? '';
}

/** The built program with one thing about its compiled code changed, and what `check` then says. */
function afterChange(change: () => void): readonly [number | null, string, string] {
  rmSync(join(program, 'dist'), { recursive: true, force: true });
  cpSync(join(root, 'dist'), join(program, 'dist'), { recursive: true });
  change();
  const cwd = mkdtempSync(join(tmpdir(), 'gaugeleaf-club-'));
  try {
    writeFileSync(join(cwd, 'orlo-f27.md'), cleanSheet('orlo-f27'));
    const run = spawnSync(process.execPath, [dist('gaugeleaf.js'), 'check', 'orlo-f27.md'], {
      cwd,
      encoding: 'utf8',
    });
    return [run.status, run.stdout, run.stderr];
  } finally {
    rmSync(cwd, { recursive: true, force: true });
  }
}

/** Makes `check.cjs` say something else in as many letters: who runs it is heard. */
function markCode(): void {
  const code = readFileSync(dist('check.cjs'), 'latin1');
  expect(code.includes('No findings')).toBe(true);
  writeFileSync(dist('check.cjs'), code.replaceAll('No findings', 'Other words'), 'latin1');
}

const clean = [0, 'No findings in 1 sheet\n', ''];

describe.skipIf(!isBuilt)('the code of check in one file', () => {
  const bundled = isBuilt
    ? readdirSync(join(root, 'dist')).filter((name) => name.endsWith('.cjs'))
    : [];

  it.each(bundled)('%s is ASCII, as it is read', (name) => {
    const code = readFileSync(join(root, 'dist', name), 'utf8');
    const [sign] = [...code].filter((one) => (one.codePointAt(0) ?? 0) > 127);
    expect(sign).toBe(undefined);
  });

  it('reads signs that no keyboard has', () => {
    const cwd = mkdtempSync(join(tmpdir(), 'gaugeleaf-signs-'));
    try {
      // An en dash between the years: the pattern has to know it.
      const text = readFileSync(join(root, 'sheets', 'orlo-t71-wexcombe-six.md'), 'utf8').replace(
        '1948-1950',
        '1950\u20131948',
      );
      expect(text).toContain('1950\u20131948');
      writeFileSync(join(cwd, 'orlo-t71-wexcombe-six.md'), text);
      const { stdout } = spawnSync(
        process.execPath,
        [join(root, 'dist', 'gaugeleaf.js'), 'check', '--no-cache', 'orlo-t71-wexcombe-six.md'],
        { cwd, encoding: 'utf8' },
      );
      expect(stdout).toContain('years-reversed');
    } finally {
      rmSync(cwd, { recursive: true, force: true });
    }
  });
});

describe.runIf(isBuilt)('the compiled code of `check`', () => {
  it('is named after this very Node', () => {
    afterChange(() => {});
    const { version, platform, arch } = process;
    expect(cacheFile()).toContain(`check-${version}-${platform}-${arch}-`);
  });

  it('is used only with the code that it was made of', () => {
    expect(afterChange(() => {})).toEqual(clean);
    expect(afterChange(markCode)).toEqual(clean);
  });

  it.each([
    ['is missing', () => rmSync(dist(cacheFile()))],
    [
      'is another release’s',
      () =>
        renameSync(
          dist(cacheFile()),
          dist(cacheFile().replace(process.version, `${process.version}9`)),
        ),
    ],
    [
      'is damaged in one bit',
      () => {
        const path = dist(cacheFile());
        const bytes = readFileSync(path);
        const middle = bytes.length >> 1;
        bytes[middle] = (bytes[middle] ?? 0) ^ 1;
        writeFileSync(path, bytes);
      },
    ],
    [
      'is cut short',
      () => {
        const path = dist(cacheFile());
        writeFileSync(path, readFileSync(path).subarray(0, 1000));
      },
    ],
    ['is empty', () => writeFileSync(dist(cacheFile()), '')],
    [
      'bears another’s name',
      () => {
        const name = cacheFile();
        const bytes = readFileSync(dist(name));
        // As if it had been made under another name and renamed: the name is part of its digest.
        bytes[0] = (bytes[0] ?? 0) ^ 255;
        writeFileSync(dist(name), bytes);
      },
    ],
    ['has lost the code', () => rmSync(dist('check.cjs'))],
  ])('does no harm where it %s', (_, change) => {
    expect(
      afterChange(() => {
        change();
        // Whatever runs now is not the code that the cache belongs to.
        if (existsSync(dist('check.cjs'))) markCode();
      }),
    ).toEqual(clean);
  });
});
