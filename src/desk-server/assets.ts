import { join } from 'node:path';
import { builtInFolder, packageRoot, readBounded } from '../project/index.ts';

const largestAsset = 16 * 1024 * 1024;

/** The page's own files, by the names they are asked for: nothing else is ever read. */
const types: ReadonlyMap<string, string> = new Map([
  ['desk.js', 'text/javascript; charset=utf-8'],
  ['worker.js', 'text/javascript; charset=utf-8'],
  ['desk.css', 'text/css; charset=utf-8'],
]);

const fonts: ReadonlySet<string> = new Set(
  ['sans-regular', 'sans-semibold', 'sans-italic', 'condensed-regular', 'condensed-semibold'].map(
    (name) => `${name}.woff2`,
  ),
);

export interface Asset {
  readonly type: string;
  readonly bytes: Uint8Array;
}

/** Where the build puts the page. */
export function builtPage(): string {
  return join(packageRoot(), 'dist', 'desk');
}

/** One of the page's files from `folder`; null for any other name, and where it was not built. */
export function assetNamed(name: string, folder: string): Asset | null {
  const type = types.get(name) ?? (fonts.has(name) ? 'font/woff2' : undefined);
  if (type === undefined) return null;
  const path = fonts.has(name) ? join(builtInFolder(), 'fonts', name) : join(folder, name);
  const read = readBounded(path, largestAsset);
  return read.ok ? { type, bytes: read.bytes } : null;
}

/** The page itself, with the nonce of its answer put in. */
export function pageHtml(nonce: string, title: string): string {
  const escaped = title.replace(/[&<>"]/g, (sign) => `&#${sign.charCodeAt(0)};`);
  return `<!doctype html>
<html lang="en" data-nonce="${nonce}">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta name="color-scheme" content="light dark">
<title>${escaped}</title>
<link rel="stylesheet" href="assets/desk.css">
<link rel="icon" href="data:,">
<script type="module" src="assets/desk.js"></script>
</head>
<body>
<noscript>The desk needs JavaScript: switch it on for this address.</noscript>
</body>
</html>
`;
}
