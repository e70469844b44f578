import { closeSync, openSync, readSync } from 'node:fs';
import { basename, dirname } from 'node:path';

/** What a file of a club's folder is, apart from a sheet; `strange` is none that the program reads. */
export type FileSort =
  | 'kind'
  | 'edition'
  | 'sources'
  | 'record'
  | 'reading'
  | 'mapping'
  | 'data'
  | 'list'
  | 'strange';

const byKey: Readonly<Record<string, FileSort>> = {
  'gaugeleaf-kind': 'kind',
  'gaugeleaf-edition': 'edition',
  'gaugeleaf-sources': 'sources',
  'gaugeleaf-record': 'record',
  'gaugeleaf-reading': 'reading',
  'gaugeleaf-mapping': 'mapping',
};

const byFolder: Readonly<Record<string, FileSort>> = {
  kinds: 'kind',
  records: 'record',
  readings: 'reading',
};
const byName: Readonly<Record<string, FileSort>> = { edition: 'edition', sources: 'sources' };

/** As much of a file as its first key stands in, comments before it included. */
const head = 8192;

/**
 * What a file is that is no sheet, by its ending and its first key, and where that is missing by its
 * name and folder; null for a sheet and whatever else may be one. A folder, or what cannot be read,
 * gives null: reading it says what is wrong.
 */
export function fileSort(path: string): FileSort | null {
  const ending = /\.([a-z]+)$/i.exec(path)?.[1]?.toLowerCase() ?? '';
  if (['csv', 'tsv', 'xlsx', 'xls', 'ods'].includes(ending)) return 'list';
  if (ending === 'json') return 'data';
  if (['png', 'jpg', 'jpeg', 'gif', 'svg', 'webp', 'pdf', 'zip', 'html'].includes(ending)) {
    return 'strange';
  }
  if (ending !== 'yaml' && ending !== 'yml') return null;
  const key = /^["']?(gaugeleaf-[a-z]+)["']?[ \t]*:/m.exec(startOf(path))?.[1];
  return (
    (key === undefined ? undefined : byKey[key]) ??
    byFolder[basename(dirname(path))] ??
    byName[basename(path).replace(/\.ya?ml$/i, '')] ??
    'strange'
  );
}

function startOf(path: string): string {
  try {
    const file = openSync(path, 'r');
    try {
      const bytes = Buffer.alloc(head);
      return bytes.toString('utf8', 0, readSync(file, bytes, 0, head, 0));
    } finally {
      closeSync(file);
    }
  } catch {
    return '';
  }
}
