import type { FileSort } from './file-sort.ts';
import { Refusal } from './refusal.ts';

/** Says of a file that is no sheet what it is, and which command reads it. */
export function notASheet(file: string, sort: FileSort): Refusal {
  const [what, cure] = words(file)[sort];
  return new Refusal(
    `${file} ${what}, and no sheet`.replace('no sheet, and no sheet', 'no sheet'),
    cure,
  );
}

function words(file: string): Readonly<Record<FileSort, readonly [string, string]>> {
  return {
    kind: ['describes a kind of unit', `gaugeleaf check ${file} says whether it is in order`],
    edition: ['is an edition', `gaugeleaf check ${file} says whether it is in order`],
    sources: ['describes sources', `gaugeleaf check ${file} says whether it is in order`],
    record: ['is a bench record', `gaugeleaf record ${file} judges it`],
    reading: ['is a second reading', `gaugeleaf reread ${file} compares it`],
    mapping: [
      'says how a list is read',
      `name it with the list: gaugeleaf draft --from LIST --mapping ${file}`,
    ],
    data: ['is the data of an edition', `gaugeleaf compare ${file} says what changed since`],
    list: ['is a list', `gaugeleaf draft --from ${file} writes sheets from it`],
    strange: ['is no sheet', 'name a sheet, which ends in .md'],
  };
}
