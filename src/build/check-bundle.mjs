/**
 * Bundles the code of `gaugeleaf check` once more into one file, dist/check.cjs, and keeps beside it
 * what V8 compiled of it while checking a sheet, for the Node at hand alone. src/cli/cached-code.ts
 * makes and loads that file: modules cannot be loaded with compiled code on Node 20. It is of use on
 * this machine only, so it is not packed. Called by bundle.mjs.
 */
import { execFileSync } from 'node:child_process';
import {
  copyFileSync,
  existsSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { build } from 'esbuild';
import { pastDoors } from './past-doors.mjs';

/** A sheet that sends the program through what nearly every sheet does, faults included. */
const SAMPLE = `---
gaugeleaf: 1
sheet: sample
title: "Sample: one of everything"
unit: { kind: carburetor, maker: Orlo, model: "T71", features: [two-barrel, downdraft, pump, unloader], throttle-bore: 1-7/16 in, idle-needle-thread: 10-32 UNF }
fits:
  - { marque: Wexcombe, model: Six, years: 1948-1950 }
revision: 1
date: 2026-10-03
status: proof
sources:
  m48: { title: Manual, kind: manual, year: 1948 }
  b17: { title: Bulletin 17, kind: bulletin, year: 1949 }
settings:
  float-level:
    value: 13/64 ± 1/64 in
    also: [0.203 in, 5.16 mm]
    gauge: 13/64 drill
    at: free end of the float
    gasket: removed # as printed
    from: m48 p. 31
  pump-stroke: { value: 7/16 in, link: middle hole, from: [m48 p. 32, b17] }
  unloader:
    value: No. 29 drill
    also: [0.163 in]
    from: m48 p. 33
    but:
      - { value: No. 30 drill, from: b17, ruling: later units only }
  idle-mixture: { value: 1-1/4 ± 1/4 turns out, travel: 0.039 in, from: m48 }
  idle-speed: { value: 475 ± 25 rpm, from: m48 }
  idle-vacuum: { value: 19 inHg, also: [64 kPa], from: m48 }
  fuel-pressure: { value: 4.5 psi, from: m48 }
  fast-idle-gap: { value: 0.026 in wire, also: [0.018–0.022 in], from: m49 }
  choke-cover-index: { value: 1 notch rich, from: m48 }
---

# Sample

What it is, with *stress*, \`code\`, a [link](#float-level) and an ![picture](pictures/none.png).

:::warning{hazard=gasoline-vapor}
Gasoline vapor burns. No flame.
:::

## Float level

High level floods; see the note[^1].

1. Lift the cover, 13/64 in clear. :state[cover inverted]
2. Pass the gauge under the free end: :value[float-level].
   - a step within a step

| Setting | Value |
| --- | ---: |
| Unloader | :value[unloader] |

## Unlaoder

> Quoted words, 0.136 in.

1. Measure :value[unloader], :value[pump-stroke], :value[idle-mixture] and :value[no-such].

[^1]: A note.
`;

/** Validators of files that few projects have, and the files that they are put into. */
const LATE = { 'validate-kind': 'check-kinds', 'validate-reading': 'check-readings' };

/** In place of such a validator. */
const lateModule = (file) => `export const validate = (data) => {
  const { validate: real } = require('./${file}.cjs');
  const isRight = real(data);
  validate.errors = real.errors;
  return isRight;
};
export default validate;`;

/** Leaves these validators in files of their own, that are loaded when they are first asked for. */
const lateValidators = {
  name: 'late-validators',
  setup(build) {
    build.onResolve({ filter: /^\.\/check-(?:kinds|readings)\.cjs$/ }, ({ path }) => ({
      path,
      external: true,
    }));
    for (const [validator, file] of Object.entries(LATE)) {
      build.onLoad({ filter: new RegExp(`[\\\\/]generated[\\\\/]${validator}\\.js$`) }, () => ({
        contents: lateModule(file),
      }));
    }
  },
};

/** Examples of checks are for the tests and the page of findings: a third of what all checks are. */
function withoutExamples(text, path) {
  if (!/[\\/]src[\\/]checks[\\/]/.test(path)) return text;
  return text.replace(/^ {2}examples: \[\n[\s\S]*?^ {2}\],\n/m, '  examples: [],\n');
}

/**
 * Escapes what the bundler leaves of other signs than ASCII: it writes texts without them, and patterns as they
 * stand. The file is read one byte a character, and a dash in a pattern would be three others.
 */
function escapeSigns(file) {
  const text = readFileSync(file, 'utf8');
  const unit = (sign) => `\\u${sign.charCodeAt(0).toString(16).padStart(4, '0')}`;
  writeFileSync(file, text.replace(/[^\0-\x7f]/g, unit));
}

/**
 * Writes dist/check.cjs and the compiled code; the second is left out where it cannot be made. Gives
 * what the bundler took in.
 */
export async function bundleCheck(root, external) {
  const dist = join(root, 'dist');
  for (const name of readdirSync(dist)) {
    if (/^check.*\.cache$/.test(name)) rmSync(join(dist, name));
  }
  const common = {
    absWorkingDir: root,
    outdir: 'dist',
    outExtension: { '.js': '.cjs' },
    bundle: true,
    metafile: true,
    format: 'cjs',
    platform: 'node',
    target: 'node20',
    external,
    minify: true,
    // Read as one byte a character, and given the address of the entry in place of its own.
    charset: 'ascii',
    define: { 'import.meta.url': '__gaugeleafUrl' },
    legalComments: 'none',
    logLevel: 'warning',
  };
  const { metafile } = await build({
    ...common,
    entryPoints: { check: 'src/cli/quick-check.ts' },
    plugins: [lateValidators, pastDoors(withoutExamples)],
  });
  const entryPoints = Object.entries(LATE).map(([validator, file]) => [
    file,
    `src/generated/${validator}.js`,
  ]);
  await build({ ...common, entryPoints: Object.fromEntries(entryPoints) });
  for (const name of ['check', ...Object.values(LATE)]) escapeSigns(join(dist, `${name}.cjs`));
  const folder = mkdtempSync(join(tmpdir(), 'gaugeleaf-'));
  try {
    writeFileSync(join(folder, 'sample.md'), SAMPLE);
    // A long sheet without faults uses much that the short one does not: what stands in the cache need not be
    // compiled at the start.
    const long = join(root, 'sheets', 'orlo-t71-wexcombe-six.md');
    const samples = ['sample.md', ...(existsSync(long) ? ['long.md'] : [])];
    if (samples.length > 1) copyFileSync(long, join(folder, 'long.md'));
    execFileSync(
      process.execPath,
      [join(dist, 'gaugeleaf.js'), 'check', '--no-cache', ...samples],
      {
        cwd: folder,
        env: { ...process.env, GAUGELEAF_KEEP_CACHE: '1' },
        stdio: 'ignore',
      },
    );
  } catch {
    // The sample has faults, so the command ends in 1; the cache is written all the same.
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
  return metafile;
}
