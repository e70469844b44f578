/**
 * Bundles src/cli/main.ts into dist/gaugeleaf.js, src/library into dist/library.js, what they share into
 * dist/chunks, so that what a command does not need it does not load, and the desk's page into dist/desk.
 * Run by `node src/build/bundle.mjs`, after generate.mjs. Templates, schemas and
 * fonts are read from the package's root, above dist, and are not copied.
 */
import { chmodSync, mkdirSync, rmSync, writeFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { build } from 'esbuild';
import { bundleCheck } from './check-bundle.mjs';
import { bundleDesk } from './desk-bundle.mjs';
import { EXTERNAL, forNode } from './for-node.mjs';
import { notices } from './notices.mjs';
import { pastDoors } from './past-doors.mjs';

/** Writes dist for the project at `root`. Fails with the bundler's own message. */
export async function bundle(root) {
  const dist = join(root, 'dist');
  mkdirSync(dist, { recursive: true });
  rmSync(join(dist, 'chunks'), { recursive: true, force: true });
  const entry = join(dist, 'gaugeleaf.js');
  rmSync(entry, { force: true });
  const { metafile } = await build({
    ...forNode,
    absWorkingDir: root,
    entryPoints: { gaugeleaf: 'src/cli/main.ts', library: 'src/library/index.ts' },
    outdir: 'dist',
    chunkNames: 'chunks/[name]-[hash]',
    metafile: true,
    splitting: true,
    plugins: [pastDoors()],
    minifyWhitespace: true,
    minifySyntax: true,
    legalComments: 'external',
    logLevel: 'warning',
    // Handlebars offers a hook for Node's old `require.extensions`; nothing here uses it.
    logOverride: { 'unsupported-require-call': 'silent' },
  });
  // The entry's own `#!` line comes through, so the file can be run as a program.
  chmodSync(entry, 0o755);
  const checked = await bundleCheck(root, EXTERNAL);
  const desk = await bundleDesk(root, join(dist, 'desk'));
  const inputs = [metafile.inputs, checked.inputs, desk].flatMap((each) => Object.keys(each));
  writeFileSync(join(dist, 'third-party-notices.txt'), notices(root, inputs));
}

if (import.meta.url === pathToFileURL(process.argv[1] ?? '').href) {
  // The bundler has said by then what it could not do.
  await bundle(resolve(fileURLToPath(import.meta.url), '..', '..', '..')).catch((error) => {
    if (error.errors === undefined) console.error(error.message);
    process.exitCode = 1;
  });
}
