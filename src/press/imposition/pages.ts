import type { PDFDocument, PDFRef } from '@cantoo/pdf-lib';

type Library = typeof import('@cantoo/pdf-lib');

/** A page as a form, which can be drawn anywhere. */
export interface DrawnPage {
  readonly ref: PDFRef;
  /** In points. */
  readonly width: number;
  readonly height: number;
}

/**
 * Makes a form of each page, in place, and takes page tree and contents away. The library's own way
 * would carry each content twice, once as a form and once as it was.
 */
export function takePages(lib: Library, document: PDFDocument): DrawnPage[] {
  const { context, catalog } = document;
  const { PDFName, PDFRef, PDFArray, PDFRawStream } = lib;
  const spent = new Set<PDFRef>();
  const drawn = document.getPages().map((page) => {
    const { width, height } = page.getSize();
    const contents = page.node.get(PDFName.of('Contents'));
    const list = context.lookup(contents);
    if (list instanceof PDFArray && contents instanceof PDFRef) spent.add(contents);
    const refs = list instanceof PDFArray ? list.asArray() : [contents];
    const texts: string[] = [];
    for (const ref of refs) {
      const stream = context.lookup(ref);
      if (!(stream instanceof PDFRawStream)) continue;
      if (ref instanceof PDFRef) spent.add(ref);
      texts.push(Buffer.from(lib.decodePDFRawStream(stream).decode()).toString('latin1'));
    }
    const form = context.flateStream(Buffer.from(texts.join('\n'), 'latin1'), {
      Type: 'XObject',
      Subtype: 'Form',
      BBox: [0, 0, width, height],
      Resources: page.node.get(PDFName.of('Resources')) ?? context.obj({}),
    });
    spent.add(page.ref);
    return { ref: context.register(form), width, height };
  });
  const tree = catalog.get(PDFName.of('Pages'));
  catalog.Pages().traverse((node, ref) => {
    if (!(node instanceof lib.PDFPageLeaf)) spent.add(ref);
  });
  for (const ref of spent) context.delete(ref);
  if (tree instanceof PDFRef) context.delete(tree);
  return drawn;
}
