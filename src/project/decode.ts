/** What the bytes of a text file turned out to be. */
export interface Decoded {
  /** The text, a byte order mark included; of a file in another encoding, the likeliest reading. */
  readonly text: string;
  /** What is wrong with the encoding, or null. Offsets count in `text`, end exclusive. */
  readonly fault: {
    readonly start: number;
    readonly end: number;
    readonly message: string;
    readonly fix: string;
  } | null;
}

const strict = new TextDecoder('utf-8', { fatal: true, ignoreBOM: true });
const lenient = new TextDecoder('utf-8', { ignoreBOM: true });

const saveAs = 'save the file as UTF-8 (in the editor: Save with encoding)';

/** UTF-16 little or big end first, told by its mark or by a first line of plain letters. */
function wideEncoding(bytes: Uint8Array): { name: string; label: string } | null {
  const [first, second, third, fourth] = bytes;
  if (first === 0xff && second === 0xfe) return { name: 'utf-16le', label: 'UTF-16' };
  if (first === 0xfe && second === 0xff) return { name: 'utf-16be', label: 'UTF-16' };
  // A sheet starts with `---`: in UTF-16 every other of its first bytes is zero.
  if (first === 0x2d && second === 0 && third === 0x2d && fourth === 0) {
    return { name: 'utf-16le', label: 'UTF-16' };
  }
  if (first === 0 && second === 0x2d && third === 0 && fourth === 0x2d) {
    return { name: 'utf-16be', label: 'UTF-16' };
  }
  return null;
}

function wide(bytes: Uint8Array, name: string): string {
  if (name === 'utf-16le') return new TextDecoder('utf-16le').decode(bytes);
  // Node without full ICU knows no utf-16be: swap the pairs by hand.
  const swapped = new Uint8Array(bytes.length & ~1);
  for (let i = 0; i < swapped.length; i += 2) {
    swapped[i] = bytes[i + 1] ?? 0;
    swapped[i + 1] = bytes[i] ?? 0;
  }
  return new TextDecoder('utf-16le').decode(swapped);
}

/** Windows-1252, as old editors wrote it: one character a byte, so offsets are byte offsets. */
function oldSingleByte(bytes: Uint8Array): string {
  return new TextDecoder('windows-1252').decode(bytes);
}

/**
 * Reads the bytes of a sheet, an edition or a kind. UTF-8 with or without a byte order mark is
 * right; UTF-16 and one-byte encodings are read as what they seem to be, so that the rest of the
 * file can still be checked, and the fault is said with its place. Never throws.
 */
export function decodeText(bytes: Uint8Array): Decoded {
  const wideName = wideEncoding(bytes);
  if (wideName !== null) {
    const text = wide(bytes, wideName.name);
    const end = /[\r\n]|$/.exec(text)?.index ?? 0;
    return {
      text,
      fault: {
        start: 0,
        end,
        message: `the file is saved as ${wideName.label}, not as UTF-8`,
        fix: saveAs,
      },
    };
  }
  try {
    return { text: strict.decode(bytes), fault: null };
  } catch {
    // Not UTF-8: find out where.
  }
  const broken = lenient.decode(bytes);
  const at = firstBrokenByte(bytes);
  const text = oldSingleByte(bytes);
  const byte = bytes[at] ?? 0;
  const shown = text.charAt(at);
  const seems = broken.length === text.length;
  return {
    text,
    fault: {
      start: at,
      end: at + 1,
      message:
        `the file is not saved as UTF-8: the byte ${byte.toString(16).toUpperCase()} here ` +
        (seems ? `is ${shown} in an old Western encoding` : 'belongs to no letter'),
      fix: saveAs,
    },
  };
}

/** The offset of the first byte that is no UTF-8 (RFC 3629); the length where all are. */
function firstBrokenByte(bytes: Uint8Array): number {
  let i = 0;
  while (i < bytes.length) {
    const lead = bytes[i] ?? 0;
    const length =
      lead < 0x80 ? 1 : lead < 0xc2 ? 0 : lead < 0xe0 ? 2 : lead < 0xf0 ? 3 : lead < 0xf5 ? 4 : 0;
    if (length === 0) return i;
    try {
      strict.decode(bytes.subarray(i, i + length));
    } catch {
      return i;
    }
    if (i + length > bytes.length) return i;
    i += length;
  }
  return i;
}
