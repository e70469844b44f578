import { readdirSync, readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { buffer } from 'node:stream/consumers';
import { gzipSync } from 'fflate';
import { packageRoot, packageVersion } from './package-root.ts';

export interface PackedProgram {
  readonly name: string;
  readonly bytes: Uint8Array;
}

/**
 * This program as a file that npm installs, the way `npm pack` makes one: what `files` of its
 * package.json lists, below `package/`. The same program gives the same bytes; nothing of the
 * machine that it is packed on is in them. Fails with an `Error` where the package was taken apart.
 */
export async function packedProgram(): Promise<PackedProgram> {
  const root = packageRoot();
  const { pack } = await import('tar-fs');
  const stream = pack(root, {
    entries: [...packedFiles(root)],
    map: ({ name, size, mode, type }) => ({
      name: `package/${name}`,
      size,
      type,
      mode: mode !== undefined && (mode & 0o111) !== 0 ? 0o755 : 0o644,
      mtime: new Date(0),
      uid: 0,
      gid: 0,
    }),
  });
  // Packed by a library, for the reason given in flate.ts.
  const bytes = gzipSync(await buffer(stream), { level: 9, mtime: 0 });
  return { name: `gaugeleaf-${packageVersion()}.tgz`, bytes };
}

/** The files that `files` lists, as npm reads it, with those that are always packed; sorted. */
function packedFiles(root: string): readonly string[] {
  const { files } = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8')) as {
    readonly files: readonly string[];
  };
  const listed = files.filter((name) => !name.startsWith('!'));
  const found = ['package.json', 'README.md', 'LICENSE', ...listed].flatMap((name) =>
    statSync(join(root, name)).isDirectory() ? filesBelow(root, name) : [name],
  );
  // What V8 compiled is of use on one machine only: `!dist/*.cache` there says the same to npm.
  return [...new Set(found)].filter((name) => !name.endsWith('.cache')).sort();
}

function filesBelow(root: string, folder: string): readonly string[] {
  return readdirSync(join(root, folder), { withFileTypes: true }).flatMap((entry) => {
    const name = `${folder}/${entry.name}`;
    return entry.isDirectory() ? filesBelow(root, name) : [name];
  });
}
