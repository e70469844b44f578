import { accessSync, constants, readFileSync, realpathSync, statSync } from 'node:fs';
import { homedir } from 'node:os';
import { delimiter, join } from 'node:path';

type Environment = Readonly<Record<string, string | undefined>>;

/** Programs looked for on PATH, the lightest first. */
const names = [
  'chrome-headless-shell',
  'chromium-headless-shell',
  'chromium',
  'chromium-browser',
  'google-chrome-stable',
  'google-chrome',
  'microsoft-edge-stable',
  'microsoft-edge',
];

const macPrograms = [
  'Google Chrome.app/Contents/MacOS/Google Chrome',
  'Chromium.app/Contents/MacOS/Chromium',
  'Microsoft Edge.app/Contents/MacOS/Microsoft Edge',
];

const windowsPrograms = [
  'Google/Chrome/Application/chrome.exe',
  'Chromium/Application/chrome.exe',
  'Microsoft/Edge/Application/msedge.exe',
];

/** The path of an installed Chromium, Chrome or Edge; null if none is in the usual places. */
export function installedBrowser(env: Environment, platform: NodeJS.Platform): string | null {
  const places: string[] = [];
  if (platform === 'darwin') {
    for (const root of ['/Applications', join(homedir(), 'Applications')]) {
      places.push(...macPrograms.map((program) => join(root, program)));
    }
  } else if (platform === 'win32') {
    for (const root of [env.ProgramFiles, env['ProgramFiles(x86)'], env.LOCALAPPDATA]) {
      if (root) places.push(...windowsPrograms.map((program) => join(root, program)));
    }
  }
  for (const path of places) if (isUsable(path, platform)) return path;
  for (const name of names) {
    const path = namedBrowser(name, env, platform);
    if (path !== null) return path;
  }
  return null;
}

/** The path of a program of that name on PATH; null if there is none. */
export function namedBrowser(
  name: string,
  env: Environment,
  platform: NodeJS.Platform,
): string | null {
  if (name.includes('/') || name.includes('\\')) return null;
  const endings = platform === 'win32' ? ['.exe', ''] : [''];
  for (const folder of (env.PATH ?? env.Path ?? '').split(delimiter)) {
    if (folder === '') continue;
    for (const ending of endings) {
      const path = join(folder, name + ending);
      if (isUsable(path, platform)) return path;
    }
  }
  return null;
}

/** Whether a path is that of a file that may be started. */
export function isProgram(path: string): boolean {
  try {
    accessSync(path, constants.X_OK);
    return statSync(path).isFile();
  } catch {
    return false;
  }
}

function isUsable(path: string, platform: NodeJS.Platform): boolean {
  try {
    accessSync(path, constants.X_OK);
    const real = realpathSync(path);
    const file = statSync(real);
    if (!file.isFile()) return false;
    return platform !== 'linux' || !isSnap(real, file.size);
  } catch {
    return false;
  }
}

/**
 * Whether it is a snap, or the small script that only sends on to one: a snap sees neither the
 * hidden folder that the font settings are in nor the temporary folder of its profile.
 */
function isSnap(path: string, size: number): boolean {
  if (path.startsWith('/snap/') || path === '/usr/bin/snap') return true;
  return size < 16_384 && readFileSync(path, 'utf8').includes('/snap/');
}
