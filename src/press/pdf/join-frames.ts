import type { Flate } from '../orders/model.ts';
import { unpackedThing } from './gather.ts';
import type { Part, Resources } from './part.ts';
import { bytesOf } from './values.ts';
import type { PdfWriter } from './write.ts';

/** Puts what is drawn over a page behind its contents, in the state that the page began with. */
export class Covers {
  private readonly writer: PdfWriter;
  private save: number | null = null;

  constructor(writer: PdfWriter) {
    this.writer = writer;
  }

  put(contents: readonly (number | string)[], over: string | null): readonly (number | string)[] {
    if (over === null) return contents;
    this.save ??= this.writer.add('<<>>', bytesOf('q\n'));
    return [
      this.save,
      ...contents,
      this.writer.pack('', bytesOf(`Q\n/Artifact BMC\n${over}\nEMC\n`)),
    ];
  }
}

/**
 * The furniture, page by page. Its names of fonts and states are put apart from those of the page
 * that it frames, and it is marked as no part of what is read.
 */
export class Frames {
  private readonly part: Part | null;
  private readonly refer: (text: string) => string;
  private readonly flate: Flate;
  private readonly writer: PdfWriter;

  constructor(part: Part | null, refer: (text: string) => string, flate: Flate, writer: PdfWriter) {
    this.part = part;
    this.refer = refer;
    this.flate = flate;
    this.writer = writer;
  }

  take(
    index: number,
    refer: (text: string) => string,
    under: Resources,
  ): { contents: number[]; resources: string } {
    const page = this.part?.pages[index];
    const categories = new Map<string, string>();
    const put = (category: string, name: string, value: string) => {
      const written = `${name}${/^[\w.+-]/.test(value) ? ' ' : ''}${value}`;
      categories.set(category, (categories.get(category) ?? '') + written);
    };
    for (const [category, named] of Object.entries(under)) {
      for (const [name, value] of Object.entries(named)) put(category, name, refer(value));
    }
    let content = '';
    for (const thing of page?.contents ?? []) {
      const stream = this.part?.things[thing];
      if (stream !== undefined) content += `${unpackedThing(stream, this.flate)}\n`;
    }
    const isDrawn = /T[jJ]|\bf\b|\bS\b|\bDo\b/.test(content);
    if (isDrawn) {
      for (const [category, named] of Object.entries(page?.resources ?? {})) {
        for (const [name, value] of Object.entries(named)) {
          put(category, `/H${name.slice(1)}`, this.refer(value));
          content = content.replaceAll(new RegExp(`${name}(?![\\w.-])`, 'g'), `/H${name.slice(1)}`);
        }
      }
    }
    const resources = [...categories].map(([category, entries]) => `${category}<<${entries}>>`);
    return {
      contents: isDrawn
        ? [this.writer.pack('', bytesOf(`/Artifact<</Type/Pagination>>BDC\nq\n${content}Q\nEMC\n`))]
        : [],
      resources: `<<${resources.join('')}>>`,
    };
  }
}
