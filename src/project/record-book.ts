import { join } from 'node:path';
import { leftTexts } from '../conformance/index.ts';
import type { RecordBook, RecordTexts } from '../sheet/index.ts';
import { asciiName } from '../text/index.ts';
import { fileId } from './file-id.ts';
import { readText } from './read-text.ts';
import { locate } from './safe-path.ts';

/** Where the bench records of a project lie. */
export const recordFolder = join('sheets', 'records');

/** A serial number as a part of a file's name: small letters, digits and hyphens; `unit` if none is left. */
export function serialWord(serial: string): string {
  return asciiName(serial).slice(0, 60) || 'unit';
}

/**
 * The bench records of the sheets of a project, by the name that a sheet has for one: the serial number, or the
 * name of its file without `.yaml`. Each is read when it is first asked for.
 */
export function recordBooks(
  root: string,
  show: (path: string) => string,
): (sheetPath: string) => RecordBook {
  const known = new Map<string, RecordTexts | null>();
  return (sheetPath) => (name) => {
    const names = [`${fileId(sheetPath)}.${serialWord(name)}.yaml`, `${name}.yaml`];
    for (const each of names) {
      if (!known.has(each)) known.set(each, readLeft(root, each, show));
      const found = known.get(each);
      if (found) return found;
    }
    return null;
  };
}

function readLeft(root: string, name: string, show: (path: string) => string): RecordTexts | null {
  const found = locate(root, join(root, recordFolder), name);
  if (found.status !== 'found' || /[\\/]/.test(name)) return null;
  const file = show(join(root, recordFolder, name));
  const read = readText(found.path, file);
  return read.ok ? { file, left: leftTexts(read.text) } : null;
}
