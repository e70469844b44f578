/**
 * Bundles the desk's page into a folder: `desk.js` for the window, `worker.js` for its worker, `desk.css`
 * beside them. Plain letters only, so that no server can get their encoding wrong.
 */
import { copyFileSync, mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { build } from 'esbuild';

/** Writes the page of the project at `root` into the folder `out`, and gives what went into it. */
export async function bundleDesk(root, out) {
  mkdirSync(out, { recursive: true });
  const { metafile } = await build({
    absWorkingDir: root,
    entryPoints: { desk: 'src/desk-page/desk.ts', worker: 'src/desk-page/worker.ts' },
    outdir: out,
    bundle: true,
    metafile: true,
    format: 'esm',
    platform: 'browser',
    target: 'es2022',
    charset: 'ascii',
    // Some packages reach for a document unless they are told that there is none in a worker.
    conditions: ['worker'],
    minify: true,
    legalComments: 'none',
    logLevel: 'warning',
  });
  copyFileSync(join(root, 'src', 'desk-page', 'desk.css'), join(out, 'desk.css'));
  return metafile.inputs;
}
