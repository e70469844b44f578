import { strFromU8, unzipSync } from 'fflate';
import { ListFault, listBounds } from './list-model.ts';

/** Parts of a spreadsheet's file by their names, as text. */
export type Parts = ReadonlyMap<string, string>;

/**
 * Unpacks the wanted parts of a zip file. No part is unpacked beyond the size that the file states
 * for it, and none that states more than the bounds, or stands there twice. Fails with `ListFault`.
 */
export function unpack(bytes: Uint8Array, wants: (name: string) => boolean): Parts {
  const seen = new Set<string>();
  let entries = 0;
  let total = 0;
  let files: Readonly<Record<string, Uint8Array>>;
  try {
    files = unzipSync(bytes, {
      filter: ({ name, originalSize }) => {
        entries += 1;
        if (entries > listBounds.entries) {
          throw new ListFault(`the file names more than ${listBounds.entries} parts`);
        }
        if (!wants(name)) return false;
        if (seen.has(name)) throw new ListFault(`the file has ${name} twice`);
        seen.add(name);
        total += originalSize;
        if (!(originalSize <= listBounds.part) || total > listBounds.parts) {
          throw new ListFault(
            `its part ${name} would unpack to ${originalSize} bytes; no list needs so much`,
            'copy the list alone into a new spreadsheet, and save that',
          );
        }
        return true;
      },
    });
  } catch (error) {
    if (error instanceof ListFault) throw error;
    throw new ListFault(
      'the file is damaged: it cannot be unpacked',
      'open it in a spreadsheet program and save it again',
    );
  }
  refuseTags(Object.values(files));
  return new Map(Object.entries(files).map(([name, part]) => [name, decoded(part)]));
}

/** Counted before anything is parsed: empty cells by the million are small in a file and long to read. */
function refuseTags(parts: readonly Uint8Array[]): void {
  let tags = 0;
  for (const part of parts) {
    for (let at = part.indexOf(0x3c); at !== -1; at = part.indexOf(0x3c, at + 1)) tags += 1;
  }
  if (tags <= listBounds.tags) return;
  throw new ListFault(
    'the file has more cells, empty ones among them, than any list needs',
    'copy the list alone into a new spreadsheet, and save that',
  );
}

function decoded(part: Uint8Array): string {
  const [first, second] = part;
  if (first === 0xff && second === 0xfe) return new TextDecoder('utf-16le').decode(part);
  return strFromU8(part).replace(/^\ufeff/, '');
}
