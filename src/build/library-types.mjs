/**
 * The types of the library, from src/library: what the compiler says of it and of what that names, copied
 * into dist/types. Run by `node src/build/library-types.mjs`, after bundle.mjs.
 */
import { execFileSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { dirname, join, relative, resolve } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';

/** Writes dist/types for the project at `root`. Fails with what the compiler says. */
export function libraryTypes(root) {
  const made = mkdtempSync(join(tmpdir(), 'gaugeleaf-types-'));
  const types = join(root, 'dist', 'types');
  try {
    const compiler = join(
      dirname(createRequire(import.meta.url).resolve('typescript/package.json')),
      'bin',
      'tsc',
    );
    execFileSync(
      process.execPath,
      [compiler, '-p', join(root, 'src', 'library', 'tsconfig.json'), '--outDir', made],
      { stdio: ['ignore', 'inherit', 'inherit'] },
    );
    rmSync(types, { recursive: true, force: true });
    const from = join(made, 'src');
    for (const path of named(join(from, 'library', 'index.d.ts'))) {
      const to = join(types, relative(from, path));
      mkdirSync(dirname(to), { recursive: true });
      // A package's types name its files as they run.
      writeFileSync(
        to,
        readFileSync(path, 'utf8').replace(RELATIVE, (_, name) => `from '${name}.js'`),
      );
    }
  } finally {
    rmSync(made, { recursive: true, force: true });
  }
}

const RELATIVE = /from '(\.[^']*)\.ts'/g;

/** The file and all that it and they name. */
function named(path, found = new Set()) {
  if (found.has(path)) return found;
  found.add(path);
  for (const [, name] of readFileSync(path, 'utf8').matchAll(RELATIVE)) {
    named(join(dirname(path), `${name}.d.ts`), found);
  }
  return found;
}

if (import.meta.url === pathToFileURL(process.argv[1] ?? '').href) {
  libraryTypes(resolve(fileURLToPath(import.meta.url), '..', '..', '..'));
}
