import {
  chmodSync,
  createReadStream,
  createWriteStream,
  existsSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
} from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { pipeline } from 'node:stream/promises';
import { createBrotliDecompress } from 'node:zlib';
import { PressStopped } from '../../press/index.ts';
import { isAlive } from '../alive.ts';
import { causeInWords } from '../refusal.ts';
import { browserCache } from './cache.ts';

/** The packaged browser, ready to start, or why there is none. */
export type Packaged =
  | { readonly path: string; readonly libraries: string; readonly version: string }
  | { readonly reason: string };

/**
 * The Chromium of `@sparticuz/chromium`, unpacked once into the user's own cache under a name that
 * carries its version. The package's own `executablePath()` is not used: it trusts whatever file
 * already lies at a fixed path in the shared temporary folder. Fails with `PressStopped` where the
 * cache can't be written.
 */
export async function packagedBrowser(around: {
  readonly env: Readonly<Record<string, string | undefined>>;
  readonly platform: NodeJS.Platform;
  readonly arch: string;
  readonly onProgress?: ((message: string) => void) | undefined;
}): Promise<Packaged> {
  if (around.platform !== 'linux' || around.arch !== 'x64') {
    return {
      reason: `None is installed, and the packaged one is for Linux on x64, not ${around.platform} on ${around.arch}.`,
    };
  }
  const folder = packageFolder();
  if (folder === null) {
    return {
      reason: 'None is installed, and the packaged one was left out (npm install brings it).',
    };
  }
  const version = readVersion(folder);
  const cache = browserCache(around.env, around.platform);
  const home = join(cache, `chromium-${version}`);
  // The folder appears only once everything is in it: see the rename below.
  if (!existsSync(home)) {
    around.onProgress?.('Unpacking the browser for printing (once, some seconds)');
    await unpack(join(folder, 'bin'), cache, home);
  }
  return { path: join(home, 'chromium'), libraries: join(home, 'lib'), version };
}

async function unpack(from: string, cache: string, home: string): Promise<void> {
  const { extract } = await import('tar-fs');
  let half: string | null = null;
  sweepUnpacking(cache);
  try {
    half = mkdtempSync(join(cache, `unpacking-${process.pid}-`));
    await pipeline(
      createReadStream(join(from, 'chromium.br')),
      createBrotliDecompress(),
      createWriteStream(join(half, 'chromium')),
    );
    chmodSync(join(half, 'chromium'), 0o700);
    // Network and security libraries that a bare system lacks: the tar holds one folder, `lib`. The
    // package's graphics libraries stay packed: printing is done without them (`--disable-gpu`).
    await pipeline(
      createReadStream(join(from, 'al2023.tar.br')),
      createBrotliDecompress(),
      extract(half),
    );
    renameSync(half, home);
  } catch (error) {
    if (half !== null) rmSync(half, { recursive: true, force: true });
    // Another process was quicker: its copy is as good.
    if (existsSync(home)) return;
    const reason = causeInWords(error);
    throw new PressStopped(
      `The packaged browser could not be unpacked into ${cache}: ${reason}. ` +
        'It needs about 200 MB there; GAUGELEAF_CACHE names another folder.',
    );
  }
}

/** Takes away what a run that was ended left half unpacked: some 200 MB. */
function sweepUnpacking(cache: string): void {
  for (const name of readdirSync(cache)) {
    const owner = /^unpacking-(\d+)-/.exec(name)?.[1];
    if (owner !== undefined && !isAlive(Number(owner))) {
      rmSync(join(cache, name), { recursive: true, force: true });
    }
  }
}

function packageFolder(): string | null {
  let folder: string;
  try {
    folder = dirname(createRequire(import.meta.url).resolve('@sparticuz/chromium'));
  } catch {
    return null;
  }
  while (!existsSync(join(folder, 'bin', 'chromium.br'))) {
    const above = dirname(folder);
    if (above === folder) return null;
    folder = above;
  }
  return folder;
}

function readVersion(folder: string): string {
  const described: unknown = JSON.parse(readFileSync(join(folder, 'package.json'), 'utf8'));
  if (typeof described === 'object' && described !== null && 'version' in described) {
    return String(described.version).replace(/[^\w.-]/g, '_');
  }
  return 'unknown';
}
