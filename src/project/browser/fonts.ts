import { createHash } from 'node:crypto';
import { existsSync, renameSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { PressStopped } from '../../press/index.ts';
import { makeFolder } from '../make-folder.ts';
import { browserCache } from './cache.ts';

/**
 * The variables that make a browser find one fallback font and no other. On a machine that has no
 * font at all Chromium prints blank pages and says nothing, even though the pages bring their own
 * fonts; and on machines that have many, the fallback would differ from one to the next. Systems
 * without fontconfig need nothing.
 */
export function fontEnvironment(
  env: Readonly<Record<string, string | undefined>>,
  platform: NodeJS.Platform,
): Record<string, string> {
  if (platform === 'darwin' || platform === 'win32') return {};
  const fonts = fallbackFolder();
  const cache = browserCache(env, platform);
  const text = `<?xml version="1.0"?>
<!DOCTYPE fontconfig SYSTEM "fonts.dtd">
<fontconfig>
  <dir>${escapeXml(fonts)}</dir>
  <cachedir>${escapeXml(join(cache, 'fontconfig'))}</cachedir>
</fontconfig>
`;
  // Named by its content: two checkouts on one machine don't overwrite one another's.
  const name = `fonts-${createHash('sha256').update(text).digest('hex').slice(0, 12)}.conf`;
  const path = join(cache, name);
  if (!existsSync(path)) {
    const half = `${path}.${process.pid}.part`;
    makeFolder(cache);
    writeFileSync(half, text);
    renameSync(half, path);
  }
  return { FONTCONFIG_FILE: path };
}

/** `templates/fonts/fallback` of the package that this file is in, from source or from a build. */
function fallbackFolder(): string {
  let folder = dirname(fileURLToPath(import.meta.url));
  for (;;) {
    const fonts = join(folder, 'templates', 'fonts', 'fallback');
    if (existsSync(fonts)) return fonts;
    const above = dirname(folder);
    if (above === folder) break;
    folder = above;
  }
  throw new PressStopped(
    'The fallback font is missing: templates/fonts/fallback is not beside the program. ' +
      'Install Gaugeleaf again.',
  );
}

function escapeXml(text: string): string {
  return text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;');
}
