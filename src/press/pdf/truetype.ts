/** A font that was put together. */
export interface United {
  readonly file: Uint8Array;
  /** Advance by glyph, in thousandths of the size. */
  readonly advances: readonly number[];
}

/**
 * Puts subsets of one font together to a font that has the glyphs of all. A browser's subset keeps
 * every glyph under its own number and leaves the others empty, so that an outline goes where it
 * was. Only the tables that a PDF needs are kept (ISO 32000-1, 9.9). Null where the subsets are of
 * different fonts, or not of the kind. Tables and offsets: OpenType 1.9, `otff`.
 */
export function uniteSubsets(files: readonly Uint8Array[]): United | null {
  const subsets = files.map(readSubset);
  const [first] = subsets;
  if (first === undefined || first === null) return null;
  const outlines: (Buffer | undefined)[] = [];
  const metrics: number[] = [];
  const maxima = Buffer.from(first.maxp);
  for (const subset of subsets) {
    if (subset === null || !isSameFont(first, subset)) return null;
    for (const [glyph, outline] of subset.outlines.entries()) {
      const known = outlines[glyph];
      if (outline.length > 0) {
        if (known !== undefined && !known.equals(outline)) return null;
        outlines[glyph] = outline;
      }
      // An unused glyph may have lost its advance; its bearing goes with the advance.
      metrics[glyph] = Math.max(metrics[glyph] ?? 0, subset.metrics[glyph] ?? 0);
    }
    for (let at = 4; at + 2 <= maxima.length; at += 2) {
      maxima.writeUInt16BE(Math.max(maxima.readUInt16BE(at), subset.maxp.readUInt16BE(at)), at);
    }
  }
  const unitsPerEm = first.head.readUInt16BE(18);
  return {
    file: assemble(first, metrics, outlines, maxima),
    advances: metrics.map((metric) => Math.round((1000 * (metric >>> 16)) / unitsPerEm)),
  };
}

/**
 * What two subsets of one font have in common and others have not: checksum-free facts of its design
 * (revision, units, dates, box). Null for a file that is no TrueType font.
 */
export function designOf(file: Uint8Array): string | null {
  const subset = readSubset(file);
  return subset === null
    ? null
    : subset.head.toString('hex', 4, 8) + subset.head.toString('hex', 18, 36);
}

interface Subset {
  readonly tables: ReadonlyMap<string, Buffer>;
  readonly maxp: Buffer;
  readonly head: Buffer;
  /** By glyph; empty for none. */
  readonly outlines: readonly Buffer[];
  /** Advance and left side bearing together, as they stand in `hmtx`. */
  readonly metrics: readonly number[];
}

function readSubset(file: Uint8Array): Subset | null {
  const bytes = Buffer.from(file.buffer, file.byteOffset, file.byteLength);
  if (bytes.length < 12 || bytes.readUInt32BE(0) !== 0x00010000) return null;
  const tables = new Map<string, Buffer>();
  for (let index = 0; index < bytes.readUInt16BE(4); index++) {
    const at = 12 + 16 * index;
    const start = bytes.readUInt32BE(at + 8);
    const end = start + bytes.readUInt32BE(at + 12);
    tables.set(bytes.toString('latin1', at, at + 4), bytes.subarray(start, end));
  }
  const [head, hhea, maxp, loca, glyf, hmtx] = needed.map((tag) => tables.get(tag));
  if (!head || !hhea || !maxp || !loca || !glyf || !hmtx) return null;
  const isLong = head.readInt16BE(50) === 1;
  const offset = (glyph: number) =>
    isLong ? loca.readUInt32BE(4 * glyph) : 2 * loca.readUInt16BE(2 * glyph);
  const count = maxp.readUInt16BE(4);
  const measured = hhea.readUInt16BE(34);
  const last = hmtx.readUInt16BE(4 * (measured - 1));
  const outlines: Buffer[] = [];
  const metrics: number[] = [];
  for (let glyph = 0; glyph < count; glyph++) {
    outlines.push(glyf.subarray(offset(glyph), offset(glyph + 1)));
    metrics.push(
      glyph < measured
        ? hmtx.readUInt32BE(4 * glyph)
        : last * 65536 + hmtx.readUInt16BE(4 * measured + 2 * (glyph - measured)),
    );
  }
  return { tables, head, maxp, outlines, metrics };
}

const needed = ['head', 'hhea', 'maxp', 'loca', 'glyf', 'hmtx'] as const;
/** The programs that outlines share, where there are any. */
const shared = ['cvt ', 'fpgm', 'prep'] as const;

function isSameFont(first: Subset, other: Subset): boolean {
  // Version to units per em, and what hints and outlines rest on; the rest of `head` may differ.
  if (!first.head.subarray(4, 8).equals(other.head.subarray(4, 8))) return false;
  if (!first.head.subarray(18, 36).equals(other.head.subarray(18, 36))) return false;
  return shared.every((tag) => {
    const [one, two] = [first.tables.get(tag), other.tables.get(tag)];
    return one === undefined || two === undefined ? one === two : one.equals(two);
  });
}

function assemble(
  first: Subset,
  metrics: readonly number[],
  outlines: readonly (Buffer | undefined)[],
  maxima: Buffer,
): Uint8Array {
  const count = metrics.length;
  const loca = Buffer.alloc(4 * (count + 1));
  const pieces: Buffer[] = [];
  let length = 0;
  for (let glyph = 0; glyph < count; glyph++) {
    loca.writeUInt32BE(length, 4 * glyph);
    const outline = outlines[glyph];
    if (outline === undefined) continue;
    const padding = (4 - (outline.length % 4)) % 4;
    pieces.push(outline, Buffer.alloc(padding));
    length += outline.length + padding;
  }
  loca.writeUInt32BE(length, 4 * count);
  const hmtx = Buffer.alloc(4 * count);
  for (const [glyph, metric] of metrics.entries()) hmtx.writeUInt32BE(metric, 4 * glyph);
  const head = Buffer.from(first.head);
  head.writeUInt32BE(0, 8);
  head.writeInt16BE(1, 50);
  const hhea = Buffer.from(first.tables.get('hhea') ?? Buffer.alloc(36));
  hhea.writeUInt16BE(count, 34);
  maxima.writeUInt16BE(count, 4);
  const tables = new Map<string, Buffer>();
  for (const tag of shared) {
    const table = first.tables.get(tag);
    if (table !== undefined) tables.set(tag, table);
  }
  tables.set('glyf', Buffer.concat(pieces));
  tables.set('head', head);
  tables.set('hhea', hhea);
  tables.set('hmtx', hmtx);
  tables.set('loca', loca);
  tables.set('maxp', maxima);
  return fontFile(tables);
}

function fontFile(unsorted: ReadonlyMap<string, Buffer>): Uint8Array {
  const tables = [...unsorted].sort(([one], [two]) => (one < two ? -1 : 1));
  const power = Math.floor(Math.log2(tables.length));
  const directory = Buffer.alloc(12 + 16 * tables.length);
  directory.writeUInt32BE(0x00010000, 0);
  directory.writeUInt16BE(tables.length, 4);
  directory.writeUInt16BE(16 * 2 ** power, 6);
  directory.writeUInt16BE(power, 8);
  directory.writeUInt16BE(16 * (tables.length - 2 ** power), 10);
  const pieces: Buffer[] = [directory];
  let offset = directory.length;
  let headAt = 0;
  for (const [index, [tag, table]] of tables.entries()) {
    const padded = Buffer.concat([table, Buffer.alloc((4 - (table.length % 4)) % 4)]);
    directory.write(tag, 12 + 16 * index, 'latin1');
    directory.writeUInt32BE(sum(padded), 16 + 16 * index);
    directory.writeUInt32BE(offset, 20 + 16 * index);
    directory.writeUInt32BE(table.length, 24 + 16 * index);
    if (tag === 'head') headAt = offset;
    pieces.push(padded);
    offset += padded.length;
  }
  const file = Buffer.concat(pieces);
  file.writeUInt32BE((0xb1b0afba - sum(file)) >>> 0, headAt + 8);
  return file;
}

function sum(bytes: Buffer): number {
  let total = 0;
  for (let at = 0; at < bytes.length; at += 4) total = (total + bytes.readUInt32BE(at)) >>> 0;
  return total;
}
