import type { Flate } from '../orders/model.ts';
import { bytesOf } from './values.ts';

/** Objects that are held in one packed stream; a reader unpacks all of them for any. */
const together = 200;

interface Entry {
  readonly text: string;
  readonly bytes: Uint8Array | null;
}

/** A PDF that is being put together, object by object. */
export class PdfWriter {
  private readonly entries: (Entry | null)[] = [];
  private readonly flate: Flate;

  constructor(flate: Flate) {
    this.flate = flate;
  }

  /** The number for an object that is set later. */
  reserve(): number {
    return this.entries.push(null);
  }

  set(number: number, text: string, bytes: Uint8Array | null = null): void {
    this.entries[number - 1] = { text, bytes };
  }

  /** Adds an object; for a stream, `text` is its dictionary without `/Length`. */
  add(text: string, bytes: Uint8Array | null = null): number {
    return this.entries.push({ text, bytes });
  }

  /** Adds a stream that is packed here. */
  pack(entries: string, bytes: Uint8Array): number {
    return this.add(`<<${entries}/Filter/FlateDecode>>`, this.flate.pack(bytes));
  }

  /**
   * The file (ISO 32000-1, 7.5): everything but streams packed in object streams, in the order of
   * its numbers, and a packed table of where things are. Nothing is put in that was not added.
   */
  finish(root: number, info: number): Uint8Array {
    const pieces: Uint8Array[] = [Buffer.from('%PDF-1.7\n%\xe2\xe3\xcf\xd3\n', 'latin1')];
    let offset = pieces[0]?.length ?? 0;
    const places: [type: number, where: number, index: number][] = [[0, 0, 65535]];
    const emit = (number: number, text: string, bytes: Uint8Array): void => {
      places[number] = [1, offset, 0];
      const length = `/Length ${bytes.length}>>`;
      const head = `${number} 0 obj\n${text.slice(0, -2)}${length}\nstream\n`;
      for (const piece of [bytesOf(head), bytes, bytesOf('\nendstream\nendobj\n')]) {
        pieces.push(piece);
        offset += piece.length;
      }
    };
    const plain: [number, string][] = [];
    for (const [index, entry] of this.entries.entries()) {
      if (entry === null) throw new Error(`object ${index + 1} was never set`);
      if (entry.bytes === null) plain.push([index + 1, entry.text]);
      else emit(index + 1, entry.text, entry.bytes);
    }
    let next = this.entries.length + 1;
    for (let start = 0; start < plain.length; start += together) {
      const chunk = plain.slice(start, start + together);
      let heads = '';
      let texts = '';
      for (const [index, [number, text]] of chunk.entries()) {
        places[number] = [2, next, index];
        heads += `${number} ${texts.length} `;
        texts += `${text}\n`;
      }
      const dict = `<</Type/ObjStm/N ${chunk.length}/First ${heads.length}/Filter/FlateDecode>>`;
      emit(next, dict, this.flate.pack(bytesOf(heads + texts)));
      next++;
    }
    const start = offset;
    places[next] = [1, start, 0];
    const table = Buffer.alloc(7 * places.length);
    for (const [number, [type, where, index]] of places.entries()) {
      table.writeUInt8(type, 7 * number);
      table.writeUInt32BE(where, 7 * number + 1);
      table.writeUInt16BE(index, 7 * number + 5);
    }
    const trailer = `/Root ${root} 0 R/Info ${info} 0 R`;
    const dict = `<</Type/XRef/Size ${next + 1}/W[1 4 2]${trailer}/Filter/FlateDecode/DecodeParms<</Predictor 12/Columns 7>>>>`;
    emit(next, dict, this.flate.pack(rowsAgainstTheOneBefore(table, 7)));
    pieces.push(bytesOf(`startxref\n${start}\n%%EOF\n`));
    return new Uint8Array(Buffer.concat(pieces));
  }
}

/** PNG's filter 2 (up), which makes a table of offsets pack well (7.4.4.4). */
function rowsAgainstTheOneBefore(table: Buffer, columns: number): Uint8Array {
  const rows = table.length / columns;
  const out = Buffer.alloc(rows * (columns + 1));
  for (let row = 0; row < rows; row++) {
    out[row * (columns + 1)] = 2;
    for (let column = 0; column < columns; column++) {
      const at = row * columns + column;
      const above = row === 0 ? 0 : (table[at - columns] ?? 0);
      out[row * (columns + 1) + 1 + column] = ((table[at] ?? 0) - above) & 0xff;
    }
  }
  return out;
}
