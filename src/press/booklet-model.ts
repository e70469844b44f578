import { type OperationBody, sheetBody } from './body.ts';
import { type SourceLine, sourceLines } from './citations.ts';
import { sourcesAcross, type UnitConcordance, unitConcordances } from './concordance-model.ts';
import { type EditorsNote, editorsNotes } from './editors-notes.ts';
import { type Gathering, gaugesToGather } from './gauges-to-gather.ts';
import { type BodyStore, keptBody } from './kept-body.ts';
import type { EditionFacts, Paper, PictureSource, SheetToPrint, Templates } from './orders.ts';
import { bookletMargins, type Margins, type PaperSize, papers } from './paper.ts';
import { ruleNotes } from './rule-notes.ts';
import { type SafetyLine, safetyLines } from './safety.ts';
import { type SettingRow, settingRows } from './setting-rows.ts';
import { hasError, type SheetFace, sheetFace } from './sheet-face.ts';
import { stepFigures } from './step-figures.ts';
import type { WorkedFacts } from './worked-lines.ts';

/** One unit's chapter. */
export interface Chapter {
  readonly number: number;
  /** Its place to link to, plain ASCII: `unit-3`. */
  readonly anchor: string;
  readonly face: SheetFace;
  /** HTML. */
  readonly intro: string;
  readonly settings: readonly SettingRow[];
  readonly operations: readonly (OperationBody & { readonly number: number })[];
  /** Footnotes, as HTML; empty for none. */
  readonly footnotes: string;
  readonly notes: readonly EditorsNote[];
  readonly sources: readonly SourceLine[];
  /** Settings that sources differ on. */
  readonly rulings: readonly SettingRow[];
  /** The picture of its order of work, as SVG; null for none. */
  readonly order: string | null;
}

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
  readonly edition: string | null;
  readonly date: string | null;
  readonly notice: string | null;
  readonly altitude: string | null;
  readonly language: string;
  readonly paper: PaperSize;
  readonly margins: Margins;
  readonly draft: boolean;
  /** The worst mark among the sheets; null where all are released. */
  readonly mark: string | null;
  readonly sections: {
    readonly introduction: Section;
    readonly reading: Section;
    readonly safety: Section;
    readonly quick: Section;
    readonly gauges: Section;
    readonly concordance: Section;
    readonly sources: Section;
  };
  readonly introduction: readonly string[];
  readonly safety: readonly SafetyLine[];
  /** What the club adds to the general cautions, a string a paragraph. */
  readonly clubSafety: readonly string[];
  readonly chapters: readonly Chapter[];
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
export interface BookletOptions {
  readonly paper: Paper;
  readonly draft: boolean;
  readonly picture: PictureSource | null;
  /** Pictures of the order of work, by the sheet's place; none where the edition wants none. */
  readonly orders?: readonly (string | null)[];
  /** Where the sheets' bodies are kept from one print to the next; nowhere if null or absent. */
  readonly bodies?: BodyStore | null;
  /** The templates, for a club's own pictures in place of drawings; none where absent. */
  readonly texts?: Templates['texts'];
}

const sections: BookletModel['sections'] = {
  introduction: { anchor: 'introduction', title: 'Introduction' },
  reading: { anchor: 'how-to-read', title: 'How to read a sheet' },
  safety: { anchor: 'before-any-work', title: 'Before any work' },
  quick: { anchor: 'quick-reference', title: 'Quick reference' },
  gauges: { anchor: 'gauges-to-gather', title: 'Gauges to gather' },
  concordance: { anchor: 'what-the-sources-say', title: 'What the sources say' },
  sources: { anchor: 'sources', title: 'Sources' },
};

/** The booklet of an edition. One sheet with an error finding makes a draft of the whole. */
export function bookletModel(
  sheets: readonly SheetToPrint[],
  edition: EditionFacts,
  options: BookletOptions,
): BookletModel {
  const gathering = gaugesToGather(sheets, edition.kit ?? undefined);
  const facts = {
    altitude: edition.altitude ?? null,
    kit: edition.kit ?? null,
    gathered: gathering.kit,
  };
  const chapters = sheets.map((entry, index) => chapter(entry, index, options, facts));
  return {
    title: edition.title,
    subtitle: edition.subtitle ?? null,
    club: edition.club ?? null,
    edition: edition.edition ?? null,
    date: edition.date ?? null,
    notice: edition.notice ?? null,
    altitude: edition.altitude ?? null,
    language: edition.language ?? 'en',
    paper: papers[options.paper],
    margins: bookletMargins(papers[options.paper]),
    draft: options.draft || sheets.some(({ findings }) => hasError(findings)),
    mark: worstMark(chapters.map(({ face }) => face.mark)),
    sections,
    introduction: edition.introduction ?? [],
    safety: safetyLines(sheets),
    clubSafety: edition.safety ?? [],
    chapters,
    concordances: unitConcordances(sheets, chapters, sourcesAcross(papers[options.paper])),
    ...gauges(gathering, chapters),
  };
}

function chapter(
  entry: SheetToPrint,
  index: number,
  options: BookletOptions,
  facts: WorkedFacts,
): Chapter {
  const { sheet, kind } = entry;
  const anchor = `unit-${index + 1}`;
  const sources = sourceLines(sheet);
  const settings = settingRows(sheet, kind, sources, facts);
  const body = keptBody(options.bodies ?? null, entry, anchor, options.picture, (picture) =>
    sheetBody(sheet, kind, picture, anchor, (at) => {
      const operation = sheet.operations[at];
      if (operation === undefined) return null;
      return stepFigures(sheet, kind, operation, {
        prefix: `${anchor}-work-${at + 1}`,
        narrow: papers[options.paper].small,
        texts: options.texts ?? new Map(),
      });
    }),
  );
  return {
    number: index + 1,
    anchor,
    face: sheetFace(sheet, kind),
    intro: body.intro,
    settings,
    operations: body.operations.map((operation, at) => ({ ...operation, number: at + 1 })),
    footnotes: body.notes,
    notes: [...editorsNotes(entry.findings), ...ruleNotes(sheet, kind)],
    sources,
    rulings: settings.filter((row) => row.dissents.length > 0),
    order: options.orders?.[index] ?? null,
  };
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
