/**
 * A PDF object as a plain value (ISO 32000-1, 7.3): a name is a string with its slash, a string is a
 * `PdfText`, a dictionary a map with the slash left in its keys.
 */
export type PdfValue =
  | null
  | boolean
  | number
  | string
  | PdfText
  | PdfRef
  | PdfDict
  | readonly PdfValue[];

export type PdfDict = ReadonlyMap<string, PdfValue>;

/** A reference to the object of that number; generations other than 0 are not read. */
export class PdfRef {
  readonly number: number;

  constructor(number: number) {
    this.number = number;
  }
}

/** A string of a PDF: its bytes, a character each. */
export class PdfText {
  readonly bytes: string;

  constructor(bytes: string) {
    this.bytes = bytes;
  }

  /** Words as a text string: ASCII as it is, anything else in UTF-16 with its mark (7.9.2.2). */
  static of(words: string): PdfText {
    if (/^[\x20-\x7e]*$/.test(words)) return new PdfText(words);
    let bytes = '\xfe\xff';
    for (let at = 0; at < words.length; at++) {
      const unit = words.charCodeAt(at);
      bytes += String.fromCharCode(unit >> 8, unit & 0xff);
    }
    return new PdfText(bytes);
  }

  /** The words of a text string, in UTF-16 with its mark or one byte a character. */
  get words(): string {
    if (!this.bytes.startsWith('\xfe\xff')) return this.bytes;
    let words = '';
    for (let at = 2; at + 1 < this.bytes.length; at += 2) {
      words += String.fromCharCode(this.bytes.charCodeAt(at) * 256 + this.bytes.charCodeAt(at + 1));
    }
    return words;
  }
}

/** An object with bytes of its own, as the file has them. */
export interface PdfStream {
  readonly dict: PdfDict;
  readonly bytes: Uint8Array;
}

export const isDict = (value: PdfValue | undefined): value is PdfDict => value instanceof Map;

/**
 * A value as a PDF writes it, one character a byte. `refer` says how a reference is written: `12 0 R`
 * in a file.
 */
export function writeValue(value: PdfValue, refer: (ref: PdfRef) => string): string {
  if (value === null) return 'null';
  if (typeof value === 'number') return writeNumber(value);
  if (typeof value === 'string') return value;
  if (typeof value === 'boolean') return String(value);
  if (value instanceof PdfText) return writeText(value);
  if (value instanceof PdfRef) return refer(value);
  if (isDict(value)) {
    let text = '<<';
    for (const [key, entry] of value) {
      const written = writeValue(entry, refer);
      text += key + (/^[\w.+@~-]/.test(written) ? ' ' : '') + written;
    }
    return `${text}>>`;
  }
  return `[${value.map((entry) => writeValue(entry, refer)).join(' ')}]`;
}

/** No exponents, which PDF lacks, and no more places than a printer could show. */
export function writeNumber(value: number): string {
  if (Number.isInteger(value)) return String(value);
  const text = value.toFixed(7).replace(/\.?0+$/, '');
  return text === '-0' ? '0' : text.replace(/^(-?)0\./, '$1.');
}

function writeText({ bytes }: PdfText): string {
  // The two that mark references in a part are written by their codes.
  if (/^[\x20-\x7e]*$/.test(bytes)) {
    const escaped = bytes.replace(/[()\\]/g, '\\$&').replaceAll('@', '\\100');
    return `(${escaped.replaceAll('~', '\\176')})`;
  }
  let hex = '';
  for (let at = 0; at < bytes.length; at++) {
    hex += bytes.charCodeAt(at).toString(16).padStart(2, '0');
  }
  return `<${hex}>`;
}

/** A text of one character a byte as these bytes. */
export function bytesOf(text: string): Uint8Array {
  return Buffer.from(text, 'latin1');
}
