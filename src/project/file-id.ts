import { basename } from 'node:path';

/** The name of a sheet by its file: the file's own without `.md`. */
export function fileId(path: string): string {
  return basename(path).replace(/\.md$/i, '');
}
