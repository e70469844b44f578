import { readdirSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { SaxesParser } from 'saxes';
import type { SheetToPrint } from '../../../src/press/index.ts';
import { type SiteFile, type SiteOrder, siteFiles } from '../../../src/press/site/site.ts';
import { examineFile } from '../../../src/project/examine-file.ts';
import { pictureData } from '../../../src/project/pictures.ts';
import { openProject, type Project } from '../../../src/project/project.ts';
import { readTemplates } from '../../../src/project/templates.ts';

const root = fileURLToPath(new URL('../../../', import.meta.url));

/** The demo's sheets with what their pages need, and the project they lie in. */
export function demoOrder(): { readonly project: Project; readonly order: SiteOrder } {
  const project = openProject(root, root);
  const edition = project.edition().edition;
  if (edition === null) throw new Error('the demo has no edition');
  const paths = readdirSync(`${root}sheets`)
    .filter((name) => name.endsWith('.md'))
    .sort();
  const byFile = new Map<string, string>();
  const sheets = paths.map((name): SheetToPrint => {
    const examined = examineFile(project, `${root}sheets/${name}`, null);
    if (!examined.ok) throw new Error(`${name} cannot be read`);
    byFile.set(examined.sheet.file, examined.path);
    return { sheet: examined.sheet, findings: examined.findings };
  });
  return {
    project,
    order: {
      sheets,
      edition: edition.facts,
      templates: readTemplates(root),
      picture: (url, file) => {
        const path = byFile.get(file);
        return path === undefined ? null : pictureData(root, path, url);
      },
      draft: false,
    },
  };
}

/** The pages of an order by their path, as text. */
export async function pagesOf(order: SiteOrder): Promise<ReadonlyMap<string, string>> {
  return pagesIn(await siteFiles(order));
}

/** The pages among the files of a site by their path, as text. */
export function pagesIn(files: readonly SiteFile[]): ReadonlyMap<string, string> {
  return new Map(
    files.flatMap(({ path, content }) =>
      path.endsWith('.html') ? [[path, content.toString()] as const] : [],
    ),
  );
}

/** An element of a page, as a strict reader of XML sees it. */
export interface PageElement {
  readonly name: string;
  readonly attributes: Readonly<Record<string, string>>;
  /** All words in it, spaces as one. */
  text: string;
}

/** Elements of HTML that have no end tag. */
const alone = 'meta|link|input|br|hr|img';

/**
 * The elements of a page in order, read by a strict reader of XML, which wants every element closed in
 * its turn. Throws where one is not.
 */
export function elementsOf(html: string): readonly PageElement[] {
  const known = read.get(html) ?? readElements(html);
  read.set(html, known);
  return known;
}

const read = new Map<string, readonly PageElement[]>();

function readElements(html: string): readonly PageElement[] {
  const strict = html
    .replace(/^<!doctype html>/i, '')
    .replace(new RegExp(`<(${alone})\\b((?:"[^"]*"|[^">])*?)/?>`, 'g'), '<$1$2/>')
    .replace(/ (data-footnote-ref|data-footnotes)(?=[ >])/g, ' $1=""');
  const elements: PageElement[] = [];
  const open: PageElement[] = [];
  const parser = new SaxesParser({ fragment: false });
  parser.on('error', (error) => {
    throw error;
  });
  parser.on('opentag', ({ name, attributes }) => {
    const element = { name, attributes: attributes as Record<string, string>, text: '' };
    elements.push(element);
    open.push(element);
  });
  parser.on('text', (text) => {
    for (const element of open) element.text += text;
  });
  parser.on('closetag', () => {
    const closed = open.pop();
    if (closed !== undefined) closed.text = closed.text.replace(/\s+/g, ' ').trim();
  });
  parser.write(strict).close();
  return elements;
}
