import { render } from '../html/index.ts';
import { gaugesToGather, hasError } from '../matter/index.ts';
import {
  type EditionFacts,
  type PictureSource,
  PressStopped,
  type SheetToPrint,
  type Templates,
} from '../orders/model.ts';
import { cautionGroups } from './caution-model.ts';
import { gaugeGroups } from './gauge-model.ts';
import { byMarque, byPartNumber, type UnitToList } from './home-model.ts';
import { idMaker } from './ids.ts';
import type {
  CautionsPage,
  GaugesPage,
  HomePage,
  PageFrame,
  PageLink,
  UnitPage,
  WorkedPage,
} from './model.ts';
import { pageStyle } from './style.ts';
import { type UnitMatter, unitMatter } from './unit-model.ts';
import { type UnitToWork, workedModel } from './worked-model.ts';

/** What the pages of an edition are made of. */
export interface SiteOrder {
  /** In the order of the edition; no two of one file name. */
  readonly sheets: readonly SheetToPrint[];
  readonly edition: EditionFacts;
  readonly templates: Templates;
  readonly picture: PictureSource | null;
  /** Says DRAFT on every page; without it a sheet with an error is refused. */
  readonly draft: boolean;
  readonly onProgress?: (message: string) => void;
}

/** A file of the site. */
export interface SiteFile {
  /** Below the folder of the site, with `/`. */
  readonly path: string;
  readonly content: string | Uint8Array;
}

/**
 * What a page may load: the style and fonts beside it, and the pictures in it. `file:` is said because
 * some browsers don't count a folder on a disk as its own source; on a server it allows nothing.
 */
export const sitePolicy =
  "default-src 'none'; style-src 'self' file:; font-src 'self' file:; img-src data:; " +
  "form-action 'none'; base-uri 'none'";

/** The general pages; the words of a link go by their key. */
const generalPages: readonly { readonly href: string; readonly key: string }[] = [
  { href: 'index.html', key: 'site-units' },
  { href: 'cautions.html', key: 'site-cautions' },
  { href: 'gauges.html', key: 'site-gauges' },
  { href: 'worked.html', key: 'site-worked' },
];

/**
 * The edition as pages for a club's site, in the order that they are to be written in: the first page
 * comes last, so that it never names one that is not there. No page has a script. Fails with
 * `PressStopped` where a sheet has an error and no draft was asked for, where there is no sheet, or
 * where a template or a font does not work.
 */
export async function siteFiles(order: SiteOrder): Promise<readonly SiteFile[]> {
  const { sheets, edition, templates, picture, onProgress } = order;
  if (sheets.length === 0) throw new PressStopped('The edition has no sheet to print.');
  const wrong = sheets.filter(({ findings }) => hasError(findings));
  if (wrong.length > 0 && !order.draft) {
    const names = wrong.map(({ sheet }) => sheet.file).join(', ');
    throw new PressStopped(`Pages are made only as a draft while there are errors in ${names}.`);
  }
  const style = pageStyle(templates);
  const files: SiteFile[] = [
    ...[...style.fonts].map(([path, content]) => ({ path, content })),
    { path: 'style.css', content: style.css },
  ];
  const page = async (path: string, template: string, model: object) => {
    files.push({ path, content: await render(template, model, templates) });
  };
  const names = sheets.map(({ sheet }) => fileName(sheet.file));
  const gathering = gaugesToGather(sheets, edition.kit ?? undefined);
  const altitude = edition.altitude ?? null;
  const facts = { altitude, kit: edition.kit ?? null, gathered: gathering.kit };
  const pages = new Set(names);
  const matters: UnitMatter[] = [];
  for (const [index, entry] of sheets.entries()) {
    onProgress?.(`Making page ${index + 1} of ${sheets.length}`);
    const options = { facts, picture, texts: templates.texts, pages };
    matters.push(unitMatter(entry, index + 1, options));
    // The line of progress is drawn between two pages.
    await new Promise((resolve) => setTimeout(resolve, 0));
  }
  const workedId = idMaker();
  const workedIds = names.map((name) => workedId('worked', name));
  const links = matters.map(({ face }, at) => ({
    href: `units/${encodeURIComponent(names[at] ?? '')}.html`,
    label: face.title,
  }));
  const toWork = sheets.map(({ sheet }, at): UnitToWork => {
    const settings = matters[at]?.settings ?? [];
    const settingIds = new Map(settings.map(({ name, id }) => [name, id]));
    const page = links[at] ?? { href: '', label: '' };
    return { sheet, page, id: workedIds[at] ?? '', settingIds };
  });
  const workedUnits = workedModel(toWork, altitude);
  const worksOut = new Set(workedUnits.units.map(({ id }) => id));
  for (const [at, matter] of matters.entries()) {
    const model: UnitPage = {
      ...frame(order, matter.face.title, '../', null),
      ...matter,
      workedHref: `../worked.html${worksOut.has(workedIds[at] ?? '') ? `#${workedIds[at]}` : ''}`,
      previous: beside(links[at - 1]),
      next: beside(links[at + 1]),
    };
    await page(`units/${names[at]}.html`, 'pages/unit.hbs', model);
  }
  const cautions: CautionsPage = {
    ...frame(order, said(order, 'before-any-work'), '', 'cautions.html'),
    groups: cautionGroups(sheets),
    clubSafety: edition.safety ?? [],
  };
  await page('cautions.html', 'pages/cautions.hbs', cautions);
  const gauges: GaugesPage = {
    ...frame(order, said(order, 'gauges-to-gather'), '', 'gauges.html'),
    ...gaugeGroups(gathering, links),
  };
  await page('gauges.html', 'pages/gauges.hbs', gauges);
  const worked: WorkedPage = {
    ...frame(order, said(order, 'worked-numbers'), '', 'worked.html'),
    ...workedUnits,
  };
  await page('worked.html', 'pages/worked.hbs', worked);
  await page('index.html', 'pages/index.hbs', home(order, matters, links));
  return files;
}

function home(
  order: SiteOrder,
  matters: readonly UnitMatter[],
  links: readonly PageLink[],
): HomePage {
  const { sheets, edition } = order;
  const units = sheets.flatMap(({ sheet }, at): UnitToList[] => {
    const [link, matter] = [links[at], matters[at]];
    if (link === undefined || matter === undefined) return [];
    const { number, face } = matter;
    const partNumbers = sheet.unit.partNumbers.map(({ value }) => value);
    return [{ sheet, entry: { ...link, number, kind: face.kind, partNumbers, mark: face.mark } }];
  });
  const settings = matters.reduce((sum, matter) => sum + matter.settings.length, 0);
  return {
    ...frame(order, null, '', 'index.html'),
    subtitle: edition.subtitle ?? null,
    introduction: edition.introduction ?? [],
    altitude: edition.altitude ?? null,
    counts: `${counted(units.length, 'unit')}, ${counted(settings, 'setting')}`,
    hasMarks: units.some(({ entry }) => entry.mark !== null),
    marques: byMarque(units),
    partNumbers: byPartNumber(units),
  };
}

/** What all pages say. `name` is the page's own, null for the first; `here` is which of the general ones it is. */
function frame(
  order: SiteOrder,
  name: string | null,
  root: string,
  here: string | null,
): PageFrame {
  const { edition, draft, sheets } = order;
  return {
    language: edition.language ?? 'en',
    windowTitle: windowTitle(name, edition.title),
    siteTitle: edition.title,
    club: edition.club ?? null,
    edition: edition.edition ?? null,
    date: edition.date ?? null,
    notice: edition.notice ?? null,
    draft: draft || sheets.some(({ findings }) => hasError(findings)),
    mayLoad: sitePolicy,
    root,
    pages: generalPages.map(({ href, key }) => ({
      href: `${root}${href}`,
      label: said(order, key),
      isHere: href === here,
    })),
  };
}

/** The page's own name, and the edition's behind it where a window and a list of marks have room for both. */
function windowTitle(name: string | null, edition: string): string {
  if (name === null) return edition;
  const both = `${name} – ${edition}`;
  return both.length <= titleRoom ? both : name;
}

/** The longest title that is shown whole, in characters, as html-validate has it (`long-title`). */
const titleRoom = 70;

/** A link from one unit's page to another's. */
function beside(link: PageLink | undefined): PageLink | null {
  return link === undefined ? null : { ...link, href: link.href.replace(/^units\//, '') };
}

function counted(count: number, what: string): string {
  return `${count} ${what}${count === 1 ? '' : 's'}`;
}

function fileName(path: string): string {
  return (path.split('/').at(-1) ?? path).replace(/\.md$/i, '');
}

/** Fixed words of the club by their key. */
function said({ templates }: SiteOrder, key: string): string {
  return templates.wording.get(key) ?? key;
}
