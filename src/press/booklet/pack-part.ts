import type { PrintedPart } from './part-press.ts';

/** A printed part as bytes, to be kept: its data as JSON, and after it what is bytes already. */
export function packPart({ part, ...rest }: PrintedPart): Uint8Array {
  const blobs: Uint8Array[] = [];
  const lengthOf = (bytes: Uint8Array | null) => {
    if (bytes !== null) blobs.push(bytes);
    return bytes?.length ?? null;
  };
  const things = part.things.map(({ text, bytes }) => ({ text, bytes: lengthOf(bytes) }));
  const fonts = part.fonts.map((font) => ({ ...font, file: lengthOf(font.file) }));
  const head = Buffer.from(JSON.stringify({ ...rest, part: { ...part, things, fonts } }), 'utf8');
  const length = Buffer.alloc(4);
  length.writeUInt32BE(head.length);
  return Buffer.concat([length, head, ...blobs]);
}

/** A part from the bytes that `packPart` gave. */
export function unpackPart(bytes: Uint8Array): PrintedPart {
  const all = Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  let at = 4 + all.readUInt32BE(0);
  const packed = JSON.parse(all.toString('utf8', 4, at));
  const take = (length: number | null) => {
    if (length === null) return null;
    at += length;
    return all.subarray(at - length, at);
  };
  for (const thing of packed.part.things) thing.bytes = take(thing.bytes);
  for (const font of packed.part.fonts) font.file = take(font.file);
  return packed;
}
