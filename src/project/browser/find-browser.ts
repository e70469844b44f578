import { existsSync, statSync } from 'node:fs';
import { resolve } from 'node:path';
import { type Browser, PressStopped } from '../../press/index.ts';
import { fontEnvironment } from './fonts.ts';
import { installedBrowser, isProgram, namedBrowser } from './installed.ts';
import { lodge } from './lodging.ts';
import { packagedBrowser } from './packaged.ts';

/** What a search for a browser goes by; everything has the process's own as its default. */
export interface BrowserSearch {
  readonly env?: Readonly<Record<string, string | undefined>>;
  readonly platform?: NodeJS.Platform;
  readonly arch?: string;
  /** Told when something takes long: the packaged browser is unpacked once. */
  readonly onProgress?: (message: string) => void;
}

/**
 * Finds a browser to print with: the `choice` (a path, a name on PATH, or `packaged`; from an
 * option or GAUGELEAF_BROWSER), else an installed Chromium, Chrome or Edge, else the one that came
 * with the package (Linux on x64 only). Two makes of browser give the same pages but not the same
 * bytes: whoever wants the same bytes on every Linux machine chooses `packaged`. Fails with
 * `PressStopped` where there is none, or where the chosen one is not there.
 */
export async function findBrowser(choice?: string, search: BrowserSearch = {}): Promise<Browser> {
  const env = search.env ?? process.env;
  const platform = search.platform ?? process.platform;
  const arch = search.arch ?? process.arch;
  const chosen = (choice ?? env.GAUGELEAF_BROWSER ?? '').trim();
  const found = { env, platform, onProgress: search.onProgress };

  if (chosen !== '' && chosen !== 'packaged') {
    const path = existsSync(resolve(chosen))
      ? resolve(chosen)
      : namedBrowser(chosen, env, platform);
    if (path === null) {
      throw new PressStopped(
        `The browser that was chosen, "${chosen}", is not there. ` +
          'Give the path of Chromium, Chrome or Edge, or `packaged` for the one that came with Gaugeleaf.',
      );
    }
    if (!isProgram(path)) {
      throw new PressStopped(
        `The browser that was chosen, "${chosen}", is no program that may be started. ` +
          'Give the path of Chromium, Chrome or Edge itself.',
      );
    }
    return equipped(path, `the chosen browser, ${path}`, {}, found);
  }
  if (chosen === '') {
    const path = installedBrowser(env, platform);
    if (path !== null) return equipped(path, `the installed browser, ${path}`, {}, found);
  }
  const packaged = await packagedBrowser({ env, platform, arch, onProgress: search.onProgress });
  if ('path' in packaged) {
    return equipped(
      packaged.path,
      `the packaged Chromium ${packaged.version}`,
      { LD_LIBRARY_PATH: packaged.libraries },
      found,
    );
  }
  throw new PressStopped(
    `There is no browser to print with. ${packaged.reason} ` +
      'Install Chromium, Google Chrome or Microsoft Edge, or say where one is: ' +
      'GAUGELEAF_BROWSER=/path/to/chrome, or --browser /path/to/chrome.',
  );
}

interface Surroundings {
  readonly env: Readonly<Record<string, string | undefined>>;
  readonly platform: NodeJS.Platform;
}

function equipped(
  path: string,
  label: string,
  variables: Readonly<Record<string, string>>,
  around: Surroundings,
): Browser {
  // Chromium refuses to run its sandbox as root; anyone else keeps it unless they say otherwise.
  const root = around.platform !== 'win32' && process.getuid?.() === 0;
  const said: Record<string, string> = {};
  for (const [name, value] of Object.entries(around.env))
    if (value !== undefined) said[name] = value;
  const unsandboxed = root || around.env.GAUGELEAF_NO_SANDBOX === '1';
  return {
    path,
    label,
    make: makeOf(path, label),
    env: { ...said, ...variables, ...fontEnvironment(around.env, around.platform) },
    args: unsandboxed ? ['--no-sandbox'] : [],
    lodge,
  };
}

/** A browser that was brought up to date is another file of another size or day. */
function makeOf(path: string, label: string): string {
  const facts = statSync(path, { throwIfNoEntry: false });
  return `${label} ${facts?.size ?? 0} ${facts?.mtimeMs ?? 0}`;
}
