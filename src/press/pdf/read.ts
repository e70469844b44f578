import { PressStopped } from '../orders/model.ts';
import { isDict, type PdfDict, PdfRef, type PdfStream, PdfText, type PdfValue } from './values.ts';

/** A PDF that was read: its objects by number, each parsed when it is first asked for. */
export interface PdfFile {
  readonly trailer: PdfDict;
  /** The value of a reference, and of anything else itself; null where the object is missing. */
  get(value: PdfValue | undefined): PdfValue;
  dict(value: PdfValue | undefined): PdfDict | null;
  /** The stream that a reference leads to; null where it leads to something else. */
  stream(value: PdfValue | undefined): PdfStream | null;
}

/**
 * Reads the PDF of a browser. Chromium writes the plain form of PDF 1.4, a table of offsets and no
 * object in another; what comes otherwise is put into that form first. Fails with `PressStopped`
 * where it can't be read.
 */
export async function readPdfFile(bytes: Uint8Array): Promise<PdfFile> {
  try {
    return plainFile(bytes) ?? (await plainFormOf(bytes));
  } catch (error) {
    if (error instanceof PressStopped) throw error;
    const reason = error instanceof Error ? error.message : String(error);
    throw new PressStopped(`The browser's PDF can't be read: ${reason}.`);
  }
}

async function plainFormOf(bytes: Uint8Array): Promise<PdfFile> {
  const { PDFDocument } = await import('@cantoo/pdf-lib');
  const document = await PDFDocument.load(bytes, { updateMetadata: false });
  const plain = plainFile(await document.save({ useObjectStreams: false }));
  if (plain === null) throw new Error('it has no table of its objects');
  return plain;
}

function plainFile(bytes: Uint8Array): PdfFile | null {
  const text = Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength).toString('latin1');
  const start = /startxref\s+(\d+)\s+%%EOF\s*$/.exec(text.slice(-200))?.[1];
  if (start === undefined || !text.startsWith('xref', Number(start))) return null;
  const reader = new Reader(text, Number(start) + 4);
  const offsets = new Map<number, number>();
  for (;;) {
    const first = reader.value();
    if (first === 'trailer') break;
    const count = reader.value();
    if (typeof first !== 'number' || typeof count !== 'number')
      throw new Error('a table is broken');
    for (let number = first; number < first + count; number++) {
      const offset = reader.value();
      reader.value();
      if (reader.value() === 'n' && typeof offset === 'number') offsets.set(number, offset);
    }
  }
  const trailer = reader.value();
  // Parts added later, or objects inside of others, are for a reader that knows all forms.
  if (!isDict(trailer) || trailer.has('/Prev') || trailer.has('/XRefStm')) return null;
  const parsed = new Map<number, PdfValue | PdfStream>();
  const object = (number: number): PdfValue | PdfStream => {
    const known = parsed.get(number);
    if (known !== undefined) return known;
    const offset = offsets.get(number);
    const value = offset === undefined ? null : objectAt(text, bytes, offset);
    parsed.set(number, value);
    return value;
  };
  const get = (value: PdfValue | undefined): PdfValue => {
    let found: PdfValue | PdfStream = value ?? null;
    for (let step = 0; found instanceof PdfRef && step < 9; step++) found = object(found.number);
    return isStream(found) ? found.dict : found;
  };
  return {
    trailer,
    get,
    dict: (value) => {
      const found = get(value);
      return isDict(found) ? found : null;
    },
    stream: (value) => {
      if (!(value instanceof PdfRef)) return null;
      const found = object(value.number);
      return isStream(found) ? found : null;
    },
  };
}

function isStream(value: PdfValue | PdfStream): value is PdfStream {
  return typeof value === 'object' && value !== null && 'dict' in value;
}

function objectAt(text: string, bytes: Uint8Array, offset: number): PdfValue | PdfStream {
  const head = /^\s*\d+ 0 obj\b/.exec(text.slice(offset, offset + 40))?.[0];
  if (head === undefined) throw new Error(`there is no object at byte ${offset}`);
  const reader = new Reader(text, offset + head.length);
  const value = reader.value();
  if (!isDict(value)) return value;
  const after = /^\s*stream\r?\n/.exec(text.slice(reader.at, reader.at + 20))?.[0];
  if (after === undefined) return value;
  const length = value.get('/Length');
  if (typeof length !== 'number') throw new Error('a stream does not say how long it is');
  const start = reader.at + after.length;
  return { dict: value, bytes: bytes.subarray(start, start + length) };
}

/** A word of letters, such as `obj` or `R`, comes as the plain string that it is. */
class Reader {
  readonly text: string;
  at: number;

  constructor(text: string, at: number) {
    this.text = text;
    this.at = at;
  }

  value(): PdfValue {
    this.space();
    const { text } = this;
    const character = text[this.at];
    if (character === '/') return this.name();
    if (character === '(') return this.literal();
    if (character === '[') return this.array();
    if (character === '<') return text[this.at + 1] === '<' ? this.dict() : this.hex();
    reference.lastIndex = this.at;
    const referred = reference.exec(text)?.[1];
    if (referred !== undefined) {
      this.at = reference.lastIndex;
      return new PdfRef(Number(referred));
    }
    token.lastIndex = this.at;
    const word = token.exec(text)?.[0];
    if (word === undefined) throw new Error(`byte ${this.at} begins no value`);
    this.at += word.length;
    if (word === 'null') return null;
    if (word === 'true' || word === 'false') return word === 'true';
    const number = Number(word);
    return Number.isNaN(number) ? word : number;
  }

  private space(): void {
    spaces.lastIndex = this.at;
    spaces.exec(this.text);
    this.at = spaces.lastIndex;
  }

  private name(): string {
    nameToken.lastIndex = this.at;
    const found = nameToken.exec(this.text)?.[0] ?? '/';
    this.at += found.length;
    return found;
  }

  private array(): PdfValue[] {
    this.at++;
    const values: PdfValue[] = [];
    for (;;) {
      this.space();
      if (this.text[this.at] === ']') break;
      values.push(this.value());
    }
    this.at++;
    return values;
  }

  private dict(): PdfDict {
    this.at += 2;
    const dict = new Map<string, PdfValue>();
    for (;;) {
      this.space();
      if (this.text.startsWith('>>', this.at)) break;
      if (this.text[this.at] !== '/') throw new Error(`byte ${this.at} begins no key`);
      const key = this.name();
      dict.set(key, this.value());
    }
    this.at += 2;
    return dict;
  }

  private hex(): PdfText {
    const end = this.text.indexOf('>', this.at);
    if (end < 0) throw new Error('a string has no end');
    const digits = this.text.slice(this.at + 1, end).replace(/\s+/g, '');
    this.at = end + 1;
    return new PdfText(
      Buffer.from(digits.length % 2 ? `${digits}0` : digits, 'hex').toString('latin1'),
    );
  }

  private literal(): PdfText {
    const { text } = this;
    let depth = 1;
    let bytes = '';
    let at = this.at + 1;
    for (; depth > 0; at++) {
      const character = text[at];
      if (character === undefined) throw new Error('a string has no end');
      if (character === '\\') {
        const octal = /^[0-7]{1,3}/.exec(text.slice(at + 1, at + 4))?.[0];
        if (octal !== undefined) {
          bytes += String.fromCharCode(Number.parseInt(octal, 8) & 0xff);
          at += octal.length;
        } else {
          at++;
          bytes += escapes[text[at] ?? ''] ?? text[at] ?? '';
        }
        continue;
      }
      if (character === '(') depth++;
      else if (character === ')') depth--;
      if (depth > 0) bytes += character;
    }
    this.at = at;
    return new PdfText(bytes);
  }
}

const spaces = /(?:[\0\t\n\f\r ]|%[^\r\n]*)*/y;
const reference = /(\d+)[ \r\n]+0[ \r\n]+R(?![A-Za-z])/y;
const token = /[^\0\t\n\f\r ()<>[\]{}/%]+/y;
const nameToken = /\/[^\0\t\n\f\r ()<>[\]{}/%]*/y;
const escapes: Readonly<Record<string, string>> = {
  n: '\n',
  r: '\r',
  t: '\t',
  b: '\b',
  f: '\f',
  '\n': '',
};
