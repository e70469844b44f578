import { ListFault, type ListRead, listBounds } from './list-model.ts';
import { readCsv } from './read-csv.ts';
import { readOds } from './read-ods.ts';
import { readXlsx } from './read-xlsx.ts';

/**
 * Reads a list from the bytes of a CSV, XLSX or ODS file, told apart by what is in it and not by its
 * name. Never throws: a file that is none of them, is damaged or beyond the bounds comes back with
 * the reason.
 */
export function readList(bytes: Uint8Array): ListRead {
  try {
    if (bytes.length > listBounds.file) {
      throw new ListFault(
        `it has ${bytes.length} bytes; at most ${listBounds.file} are read`,
        'copy the list alone into a new file',
      );
    }
    return { ok: true, list: listIn(bytes) };
  } catch (error) {
    if (error instanceof ListFault) return { ok: false, message: error.message, fix: error.fix };
    throw error;
  }
}

function listIn(bytes: Uint8Array) {
  const [first, second, third, fourth] = bytes;
  if (first === 0x50 && second === 0x4b && third === 3 && fourth === 4) {
    const list = holds(bytes, 'xl/workbook.xml') ? readXlsx(bytes) : readOds(bytes);
    if (list.tables.length === 0) throw new ListFault('the file holds no table');
    return list;
  }
  if (first === 0xd0 && second === 0xcf) {
    throw new ListFault(
      'it is a spreadsheet of the old kind (.xls) or one that is locked with a password',
      'open it and save it as XLSX, ODS or CSV, without a password',
    );
  }
  if (first === 0x25 && second === 0x50) {
    throw new ListFault('it is a PDF', 'save the list itself as XLSX, ODS or CSV');
  }
  return readCsv(bytes);
}

/** Whether the zip's directory, at its end, names a part. */
function holds(bytes: Uint8Array, part: string): boolean {
  const wanted = [...part].map((letter) => letter.charCodeAt(0));
  for (let at = bytes.length - wanted.length; at >= 0; at -= 1) {
    if (wanted.every((code, index) => bytes[at + index] === code)) return true;
  }
  return false;
}
