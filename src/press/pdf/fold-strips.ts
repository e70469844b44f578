import type { PartPage } from './part.ts';
import { bytesOf, writeNumber } from './values.ts';
import type { PdfWriter } from './write.ts';

/** What keeps a strip along the fold free, on right pages and on left ones. */
export class FoldStrips {
  private readonly strip: readonly [near: number, far: number] | null;
  private readonly writer: PdfWriter;
  private readonly known = new Map<string, number>();

  constructor(strip: readonly [near: number, far: number] | null, writer: PdfWriter) {
    this.strip = strip;
    this.writer = writer;
  }

  /** The contents to draw before those of the page at an index, from 0: right pages are the even ones. */
  take(at: number, { width, height }: PartPage): number[] {
    if (!this.strip) return [];
    const [near, far] = this.strip;
    const x = at % 2 === 0 ? near : width - far;
    const numbers = [0, 0, width, height, x, 0, far - near, height].map(writeNumber);
    const path = `${numbers.slice(0, 4).join(' ')} re ${numbers.slice(4).join(' ')} re W* n\n`;
    const found = this.known.get(path) ?? this.writer.add('<<>>', bytesOf(path));
    this.known.set(path, found);
    return [found];
  }
}
