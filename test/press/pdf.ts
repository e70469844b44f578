import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';

/** What an independent reader (PDF.js) finds in a PDF. */
export interface ReadPdf {
  readonly title: string;
  readonly language: string | null;
  readonly tagged: boolean;
  readonly outline: readonly string[];
  readonly pages: readonly ReadPage[];
}

export interface ReadPage {
  /** In points. */
  readonly width: number;
  readonly height: number;
  /** The text in reading order, with one space for any space. */
  readonly text: string;
  readonly fonts: readonly { readonly name: string; readonly embedded: boolean }[];
}

interface FontFacts {
  readonly name: string;
  readonly missingFile: boolean;
}

/** Reads a PDF with PDF.js. */
export async function readPdf(bytes: Uint8Array): Promise<ReadPdf> {
  const task = getDocument({ data: bytes.slice(), verbosity: 0, useSystemFonts: false });
  const document = await task.promise;
  const { info } = await document.getMetadata();
  const pages: ReadPage[] = [];
  for (let number = 1; number <= document.numPages; number++) {
    const page = await document.getPage(number);
    const { width, height } = page.getViewport({ scale: 1 });
    const content = await page.getTextContent();
    await page.getOperatorList();
    const names = new Set<string>();
    let text = '';
    for (const item of content.items) {
      if (!('str' in item)) continue;
      text += item.str + (item.hasEOL ? ' ' : '');
      if (item.str.trim() !== '') names.add(item.fontName);
    }
    const fonts = [...names].map((name) => {
      const font = page.commonObjs.get(name) as FontFacts;
      return { name: font.name, embedded: !font.missingFile };
    });
    pages.push({ width, height, text: text.replace(/\s+/g, ' '), fonts });
  }
  const outline = (await document.getOutline()) ?? [];
  const marks = await document.getMarkInfo();
  const read = {
    title: String((info as { Title?: unknown }).Title ?? ''),
    language: (info as { Language?: string | null }).Language ?? null,
    tagged: marks?.Marked === true,
    outline: outline.map(({ title }) => title),
    pages,
  };
  await task.destroy();
  return read;
}

interface StructureNode {
  readonly id?: string;
  readonly children?: readonly StructureNode[];
}

/** Text that is printed as part of what is read, and that no element of the structure leads to: page by page. */
export async function unreadText(bytes: Uint8Array): Promise<readonly string[]> {
  const task = getDocument({ data: bytes.slice(), verbosity: 0, useSystemFonts: false });
  const document = await task.promise;
  const unread: string[] = [];
  for (let number = 1; number <= document.numPages; number++) {
    const page = await document.getPage(number);
    const named = new Set<string>();
    const gather = ({ id, children = [] }: StructureNode): void => {
      if (id !== undefined) named.add(id);
      for (const child of children) gather(child);
    };
    gather((await page.getStructTree()) as StructureNode);
    const open: (string | null)[] = [];
    for (const item of (await page.getTextContent({ includeMarkedContent: true })).items) {
      if ('str' in item) {
        const mark = open.findLast((id) => id !== null);
        if (mark !== undefined && !named.has(mark ?? '')) unread.push(`${number}: ${item.str}`);
      } else if (item.type === 'endMarkedContent') open.pop();
      else open.push(item.id ?? null);
    }
  }
  await task.destroy();
  return unread.filter((text) => /: .*\S/.test(text));
}

/** Every stretch of text of a PDF with its font and type size in mm. */
export async function letteringIn(
  bytes: Uint8Array,
): Promise<readonly { readonly font: string; readonly mm: number; readonly text: string }[]> {
  const task = getDocument({ data: bytes.slice(), verbosity: 0, useSystemFonts: false });
  const document = await task.promise;
  const found: { font: string; mm: number; text: string }[] = [];
  for (let number = 1; number <= document.numPages; number++) {
    const page = await document.getPage(number);
    const content = await page.getTextContent();
    await page.getOperatorList();
    for (const item of content.items) {
      if (!('str' in item) || item.str.trim() === '') continue;
      const [, , c = 0, d = 0] = item.transform as number[];
      const { name } = page.commonObjs.get(item.fontName) as FontFacts;
      found.push({ font: name, mm: (Math.hypot(c, d) * 25.4) / 72, text: item.str });
    }
  }
  await task.destroy();
  return found;
}

/** A stretch of text with the roles of the elements that hold it, outermost first. */
export interface SpokenText {
  readonly roles: readonly string[];
  readonly text: string;
}

interface RoleNode extends StructureNode {
  readonly role?: string;
  readonly type?: string;
  readonly children?: readonly RoleNode[];
}

/** What a reader aloud comes to, in the order of the structure tree, page by page. */
export async function spokenText(bytes: Uint8Array): Promise<readonly SpokenText[]> {
  const task = getDocument({ data: bytes.slice(), verbosity: 0, useSystemFonts: false });
  const document = await task.promise;
  const spoken: SpokenText[] = [];
  for (let number = 1; number <= document.numPages; number++) {
    const page = await document.getPage(number);
    const texts = new Map<string, string>();
    const open: (string | null)[] = [];
    for (const item of (await page.getTextContent({ includeMarkedContent: true })).items) {
      if ('str' in item) {
        const mark = open.findLast((id) => id !== null);
        if (mark != null) texts.set(mark, `${texts.get(mark) ?? ''}${item.str}`);
      } else if (item.type === 'endMarkedContent') open.pop();
      else open.push(item.id ?? null);
    }
    const walk = ({ id, role, children = [] }: RoleNode, roles: readonly string[]): void => {
      const text = id === undefined ? undefined : texts.get(id);
      if (text !== undefined) spoken.push({ roles, text });
      for (const child of children) walk(child, role === undefined ? roles : [...roles, role]);
    };
    walk((await page.getStructTree()) as RoleNode, []);
  }
  await task.destroy();
  return spoken;
}
