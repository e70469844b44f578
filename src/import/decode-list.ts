/** The text of a CSV file without its byte order mark, and what had to be settled to read it. */
export interface DecodedList {
  readonly text: string;
  /** One sentence where the encoding had to be told from the bytes; null for UTF-8. */
  readonly settled: string | null;
}

/**
 * Reads the bytes of a CSV file: UTF-8, UTF-16 with its mark or told by its zero bytes, else
 * Windows-1252, which is what spreadsheets of the West write where nobody chose.
 */
export function decodeList(bytes: Uint8Array): DecodedList {
  const [first, second, third] = bytes;
  if (first === 0xef && second === 0xbb && third === 0xbf) bytes = bytes.subarray(3);
  const wide = wideEncoding(bytes);
  if (wide !== null) {
    const text = decodeWide(bytes, wide === 'big').replace(/^\ufeff/, '');
    return { text, settled: 'the file was read as UTF-16' };
  }
  try {
    return { text: new TextDecoder('utf-8', { fatal: true }).decode(bytes), settled: null };
  } catch {
    const text = new TextDecoder('windows-1252').decode(bytes);
    const odd = /[^\0-\x7f]/.exec(text)?.[0] ?? '';
    return {
      text,
      settled: `the file is no UTF-8 and was read as Windows-1252 (its first odd sign is then ${odd}); save it as UTF-8 if that is wrong`,
    };
  }
}

/** Which end comes first: by the mark, or because every other byte of the beginning is zero. */
function wideEncoding(bytes: Uint8Array): 'little' | 'big' | null {
  const [first, second] = bytes;
  if (first === 0xff && second === 0xfe) return 'little';
  if (first === 0xfe && second === 0xff) return 'big';
  const looked = bytes.subarray(0, 64);
  if (looked.length < 4) return null;
  let even = 0;
  let odd = 0;
  for (const [index, byte] of looked.entries()) {
    if (byte !== 0) continue;
    if (index % 2 === 0) even += 1;
    else odd += 1;
  }
  const half = looked.length / 2;
  if (odd > half * 0.7 && even === 0) return 'little';
  return even > half * 0.7 && odd === 0 ? 'big' : null;
}

/** By hand for the big end first: Node without full ICU knows no utf-16be. */
function decodeWide(bytes: Uint8Array, bigFirst: boolean): string {
  if (!bigFirst) return new TextDecoder('utf-16le').decode(bytes);
  const swapped = new Uint8Array(bytes.length & ~1);
  for (let i = 0; i < swapped.length; i += 2) {
    swapped[i] = bytes[i + 1] ?? 0;
    swapped[i + 1] = bytes[i] ?? 0;
  }
  return new TextDecoder('utf-16le').decode(swapped);
}
