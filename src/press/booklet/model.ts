import {
  type Gathering,
  gaugesToGather,
  hasError,
  type SafetyGroup,
  safetyGroups,
} from '../matter/index.ts';
import {
  barsMm,
  bookletMargins,
  type Margins,
  type PaperSize,
  papers,
  type Wording,
} from '../orders/index.ts';
import type { EditionFacts, LastEdition, SheetToPrint } from '../orders/model.ts';
import { sourcesAcross, type UnitConcordance, unitConcordances } from '../sources/model.ts';
import { type AltitudeTable, altitudePage } from './altitude-page.ts';
import { type ChangesPage, changesPage } from './changes-page.ts';
import { bookletChapter, type Chapter, type ChapterOptions } from './chapter.ts';
import { type Fault, faultFinding } from './fault-finding.ts';
import { type FormulaLine, formulaPage } from './formula-page.ts';
import { type GaugeTable, gaugeTables } from './gauge-tables.ts';
import { bookletIndex, type IndexLetter } from './subject-index.ts';

/** A gauge, the chapters that use it and what for. */
export interface GatherLine {
  readonly label: string;
  readonly inch: string | null;
  readonly mm: string | null;
  readonly usedBy: readonly {
    readonly number: number;
    readonly anchor: string;
    /** Labels of its settings, parted by commas. */
    readonly settings: string;
  }[];
}

/**
 * A part of the booklet with a heading of its own in the contents. A new one needs: an entry in
 * `sections` below, which gives it its anchor and running head; what it prints, in the model; a
 * partial that is one element, `<section class="part" style="page: {{sections.NAME.anchor}}">` with
 * an `<h1 id="{{sections.NAME.anchor}}">`; its place among the partials of `booklet.hbs`, and a line
 * in `contents.hbs`. `{{pageOf anchor}}` gives the page of any id in any part, and `<a href="#id">`
 * leads there. A part without a page number in it is printed once; one with some is laid out first
 * and printed when all lengths are known, so a number needs a field of fixed width
 * (`.page-number` is one). Parts are kept from one print to the next, each under its own HTML.
 */
export interface Section {
  readonly anchor: string;
  readonly title: string;
}

/** Everything a booklet prints, as plain data: what the template `booklet.hbs` is given. */
export interface BookletModel {
  readonly title: string;
  readonly subtitle: string | null;
  readonly club: string | null;
  /** `Second edition`. */
  readonly edition: string | null;
  readonly date: string | null;
  readonly notice: string | null;
  readonly altitude: string | null;
  readonly language: string;
  readonly paper: PaperSize;
  readonly margins: Margins;
  /** How far bars reach out of the text on either side, and what that leaves of the margins; in mm. */
  readonly bars: { readonly reachMm: number; readonly innerMm: number; readonly outerMm: number };
  readonly draft: boolean;
  /** Whether every chapter ends with the picture of its order of work, and not only where a page is left. */
  readonly orderGraphs: boolean;
  /** Whether marks tell how far figures are proved. */
  readonly hasProofs: boolean;
  /** The worst mark among the sheets; null where all are released. */
  readonly mark: string | null;
  readonly sections: {
    readonly introduction: Section;
    readonly reading: Section;
    readonly safety: Section;
    readonly changes: Section;
    readonly quick: Section;
    readonly altitude: Section;
    readonly faults: Section;
    readonly gauges: Section;
    readonly tables: Section;
    readonly concordance: Section;
    readonly formulas: Section;
    readonly index: Section;
  };
  readonly introduction: readonly string[];
  /** For all units first, then kind by kind. */
  readonly safety: readonly SafetyGroup[];
  /** What the club adds to the general cautions, a string a paragraph. */
  readonly clubSafety: readonly string[];
  /** What changed since the last edition; null where nobody says. */
  readonly changes: ChangesPage | null;
  /** Vacuum readings by altitude; empty where no sheet has one. */
  readonly altitudes: readonly AltitudeTable[];
  readonly chapters: readonly Chapter[];
  /** What the cover lists: titles of the units, none where they are too many for it. */
  readonly coverUnits: readonly string[];
  readonly faults: readonly Fault[];
  /** Formulas of the worked figures; empty where none is printed. */
  readonly formulas: readonly FormulaLine[];
  readonly gaugeTables: readonly GaugeTable[];
  readonly index: readonly IndexLetter[];
  readonly gauges: readonly { readonly title: string; readonly gauges: readonly GatherLine[] }[];
  /** Units on whose settings several sources speak, in the order of the chapters. */
  readonly concordances: readonly UnitConcordance[];
  /** How few gauges serve the settings that name none; null where every setting names its own. */
  readonly fewest: string | null;
  /** Settings that no gauge at hand serves, each with its chapter. */
  readonly ungauged: readonly {
    readonly number: number;
    readonly anchor: string;
    readonly text: string;
  }[];
}

/** What a booklet is made with besides its sheets. */
interface BookletOptions extends ChapterOptions {
  readonly draft: boolean;
  /** The edition before this one, to tell what changed; nothing is told if null or absent. */
  readonly last?: LastEdition | null;
  /** Whether every chapter gets the picture of its order of work; not, if absent. */
  readonly orderGraphs?: boolean;
  /** The fixed words, for the headings of the parts; the built-in ones if absent. */
  readonly wording?: Wording;
}

/** The headings of a booklet's parts and where they stand; a club's style may name pages by them. */
export const builtInSections: BookletModel['sections'] = {
  introduction: { anchor: 'introduction', title: 'Introduction' },
  reading: { anchor: 'how-to-read', title: 'How to read a sheet' },
  safety: { anchor: 'before-any-work', title: 'Before any work' },
  changes: { anchor: 'what-changed', title: 'What changed' },
  quick: { anchor: 'quick-reference', title: 'Quick reference' },
  altitude: { anchor: 'vacuum-by-altitude', title: 'Vacuum by altitude' },
  faults: { anchor: 'symptoms', title: 'Fault finding' },
  gauges: { anchor: 'gauges-to-gather', title: 'Gauges to gather' },
  tables: { anchor: 'gauge-sizes', title: 'Sizes of the gauges' },
  concordance: { anchor: 'what-the-sources-say', title: 'What the sources say' },
  formulas: { anchor: 'worked-figures', title: 'Worked figures' },
  index: { anchor: 'index', title: 'Index' },
};

/** The same under the headings that the club gives them; `section-NAME` is the key of each. */
function sectionsSaid(wording: Wording | undefined): BookletModel['sections'] {
  const said = Object.entries(builtInSections).map(([name, section]) => [
    name,
    { ...section, title: wording?.get(`section-${name}`) ?? section.title },
  ]);
  return Object.fromEntries(said) as BookletModel['sections'];
}

/** The booklet of an edition. One sheet with an error finding makes a draft of the whole. */
export function bookletModel(
  sheets: readonly SheetToPrint[],
  edition: EditionFacts,
  options: BookletOptions,
): BookletModel {
  const sections = sectionsSaid(options.wording);
  const gathering = gaugesToGather(sheets, edition.kit ?? undefined);
  const facts = {
    altitude: edition.altitude ?? null,
    kit: edition.kit ?? null,
    gathered: gathering.kit,
  };
  const last = options.last ?? null;
  const changed = new Map(last?.changes.sheets.map((each) => [each.id, each]));
  const chapters = sheets.map((entry, index) => {
    const changes = changed.get(entry.sheet.id?.value ?? '') ?? null;
    return bookletChapter(entry, index, options, facts, changes);
  });
  const paper = papers[options.paper];
  const margins = bookletMargins(paper);
  const faults = faultFinding(chapters);
  const altitudes = altitudePage(sheets, chapters, facts.altitude, paper.small ? 4 : 6);
  const formulas = formulaPage(sheets, chapters, facts.altitude);
  const tables = gaugeTables(gathering.kit);
  const gathered = gauges(gathering, chapters);
  const concordances = unitConcordances(sheets, chapters, sourcesAcross(paper));
  const parts = [
    sections.reading,
    sections.safety,
    ...(last === null ? [] : [sections.changes]),
    sections.quick,
    ...(altitudes.length === 0 ? [] : [sections.altitude]),
    ...(faults.length === 0 ? [] : [sections.faults]),
    ...(gathered.gauges.length === 0 ? [] : [sections.gauges]),
    ...(tables.length === 0 ? [] : [sections.tables]),
    ...(concordances.length === 0 ? [] : [sections.concordance]),
    ...(formulas.length === 0 ? [] : [sections.formulas]),
  ];
  return {
    title: edition.title,
    subtitle: edition.subtitle ?? null,
    club: edition.club ?? null,
    edition: editionWords(edition.edition ?? null),
    date: edition.date ?? null,
    notice: edition.notice ?? null,
    altitude: facts.altitude,
    language: edition.language ?? 'en',
    paper,
    margins,
    bars: {
      reachMm: barsMm,
      innerMm: margins.innerMm - barsMm,
      outerMm: margins.outerMm - barsMm,
    },
    draft: options.draft || sheets.some(({ findings }) => hasError(findings)),
    orderGraphs: options.orderGraphs === true,
    hasProofs: sheets.some(({ proofs }) => proofs != null),
    mark: worstMark(chapters.map(({ face }) => face.mark)),
    sections,
    introduction: edition.introduction ?? [],
    safety: safetyGroups(sheets),
    clubSafety: edition.safety ?? [],
    changes: last === null ? null : changesPage(last, sheets, chapters),
    altitudes,
    chapters,
    coverUnits: chapters.length > mostOnCover ? [] : chapters.map(({ face }) => face.title),
    faults,
    formulas,
    gaugeTables: tables,
    concordances,
    index: bookletIndex(sheets, chapters, parts),
    ...gathered,
  };
}

/** More units than this have no room on the cover. */
const mostOnCover = 18;

/** `Second edition` of `second`, `Edition 2` of `2`; words that say it themselves stay as they are. */
function editionWords(written: string | null): string | null {
  if (written === null || /edition/i.test(written)) return written;
  if (/^\d+$/.test(written)) return `Edition ${written}`;
  return `${written.charAt(0).toUpperCase()}${written.slice(1)} edition`;
}

function worstMark(marks: readonly (string | null)[]): string | null {
  if (marks.includes('DRAFT')) return 'DRAFT';
  return marks.includes('PROOF') ? 'PROOF' : null;
}

function gauges(
  { groups, minimum, unmet }: Gathering,
  chapters: readonly Chapter[],
): Pick<BookletModel, 'gauges' | 'fewest' | 'ungauged'> {
  const chapterOf = (sheet: number) => {
    const { number = sheet + 1, anchor = '' } = chapters[sheet] ?? {};
    return { number, anchor };
  };
  return {
    gauges: groups.map(({ title, gauges: lines }) => ({
      title,
      gauges: lines.map((line) => ({
        ...line,
        usedBy: line.usedBy.map(({ sheet, settings }) => ({ ...chapterOf(sheet), settings })),
      })),
    })),
    fewest: minimum,
    ungauged: unmet.map(({ sheet, words }) => ({ ...chapterOf(sheet), text: words })),
  };
}
