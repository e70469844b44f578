import type { JetNumbering } from '../../quantity/index.ts';
import { plainHead, plainSetting, regionIn } from '../../sheet/index.ts';
import type { PlacedSize, Setting, Sheet } from '../../sheet/model.ts';
import type { FileRegion, Span } from '../../text/index.ts';
import { namesOf, plainName } from '../vocabulary.ts';

/** Words of a sheet with their place. */
export interface Fact {
  readonly text: string;
  readonly at: FileRegion;
}

/** One figure of a sheet: a setting's value at one place, or a size of the unit. */
export interface FigureFact extends Fact {
  /** The kind's name for the setting, or the key of `unit:`. */
  readonly name: string;
  /** `primary`, `left` ...; null where one value serves all. */
  readonly place: string | null;
  /** What it was read as; null where it could not be read. */
  readonly dimension: string | null;
  /** Which way it is counted; null where that is not said. */
  readonly sense: string | null;
  /**
   * The figure in the base unit of its dimension, or the middle of its range, for statistics only;
   * null for a lone limit and for a condition.
   */
  readonly figure: number | null;
  /** How a jet's number is meant; null where that is not said, and for all that is no jet. */
  readonly jets: JetNumbering | null;
  /** How it is measured, key to words, as far as the kind asks for it. */
  readonly measured: Readonly<Record<string, string>>;
}

/** A vehicle that a sheet is for. `first` and `last` are null where no year can be read. */
export interface FitFact {
  readonly marque: string | null;
  readonly model: string | null;
  readonly first: number | null;
  readonly last: number | null;
}

/** A paper that a sheet describes itself; `text` is its short name. */
export interface SourceFact extends Fact {
  /** Key to text as written: `title`, `year`, `publisher` ... */
  readonly described: Readonly<Record<string, string>>;
}

/** An editor's acceptance: the check, and all that its `at` may mean. */
export interface AcceptFact extends Fact {
  readonly check: string;
  /** Null for the whole sheet. */
  readonly meant: readonly string[] | null;
  readonly reason: string;
}

/**
 * What the checks across sheets need of one sheet: plain data in which no text, tree or exact number
 * of the sheet is kept, so that thousands of them are at hand when all sheets have been let go.
 */
export interface SheetFacts {
  readonly file: string;
  /** The file's name without `.md`, by which sheets name one another. */
  readonly id: string;
  /** `sheet:` of the front matter, for what is about the sheet as a whole. */
  readonly at: FileRegion;
  /** `draft`, `proof`, `released`, as written. */
  readonly status: string | null;
  readonly kind: string | null;
  readonly maker: string | null;
  readonly model: string | null;
  readonly partNumbers: readonly Fact[];
  /** By the kind's names. */
  readonly features: readonly string[];
  readonly fits: readonly FitFact[];
  readonly interchanges: readonly Fact[];
  /** What a bare `SWG` means on it; null where the edition says so. */
  readonly wireGauge: string | null;
  readonly figures: readonly FigureFact[];
  /** Without units that were measured: they are each sheet's own. */
  readonly sources: readonly SourceFact[];
  readonly accept: readonly AcceptFact[];
}

/** Takes the facts of a sheet; null where its front matter could not be read. */
export function sheetFacts(sheet: Sheet): SheetFacts | null {
  const facts = factsIn(sheet);
  // Parts of a long text keep all of it in memory; only a copy lets the sheet go.
  return facts && (JSON.parse(JSON.stringify(facts)) as SheetFacts);
}

/** The same while the sheet is at hand: parts of its text, for `packFacts`. */
export function factsIn(sheet: Sheet): SheetFacts | null {
  if (sheet.frontMatter === null) return null;
  const { unit } = sheet;
  const { status, kind, maker, model, features } = plainHead(sheet);
  const place = (span: Span): FileRegion => regionIn(sheet, span);
  const fact = ({ value, span }: { readonly value: string; readonly span: Span }): Fact => ({
    text: value,
    at: place(span),
  });
  return {
    file: sheet.file,
    id: sheet.file.slice(sheet.file.lastIndexOf('/') + 1).replace(/\.md$/i, ''),
    at: place(sheet.id?.span ?? sheet.frontMatter),
    status,
    kind,
    maker,
    model,
    partNumbers: unit.partNumbers.map(fact),
    features,
    fits: sheet.fits.map(({ marque, model, years }) => ({ marque, model, ...yearsOf(years) })),
    interchanges: unit.interchanges.map(fact),
    wireGauge: sheet.wireGauge?.value ?? null,
    figures: [
      ...[...unit.sizes].map(([name, size]) => figure(name, size, null, {}, place)),
      ...[...sheet.settings.values()].flatMap((setting) => settingFigures(setting, place)),
    ],
    sources: sourceFacts(sheet),
    accept: sheet.accept.flatMap(({ finding, at, reason }) => {
      const because = reason?.value.trim() ?? '';
      if (because === '') return [];
      const meant = at === null ? null : namesOf(at.value, sheet.kind);
      return [{ ...fact(finding), check: plainName(finding.value), meant, reason: because }];
    }),
  };
}

/** What stands in another file is told of that one. */
function sourceFacts(sheet: Sheet): SourceFact[] {
  return [...sheet.sources.values()].flatMap(({ name, described, shared }) => {
    const at = regionIn(sheet, name.span);
    const isMeasured = described.get('kind')?.value.trim().toLowerCase() === 'measured';
    if (shared || isMeasured || at.file !== sheet.file) return [];
    const texts = [...described].map(([key, { value }]) => [key, value]);
    return [{ text: name.value, at, described: Object.fromEntries(texts) }];
  });
}

function settingFigures(setting: Setting, place: (span: Span) => FileRegion): FigureFact[] {
  const { known, jets = null } = setting;
  if (known === null) return [];
  const { name, sizes, said } = plainSetting(setting);
  const measured = Object.fromEntries(
    known.mustSay.flatMap((key) => (said[key] === undefined ? [] : [[key, said[key]]])),
  );
  return sizes.map(({ place: barrel, size }) => figure(name, size, barrel, measured, place, jets));
}

function figure(
  name: string,
  { text, span, reading }: PlacedSize,
  barrel: string | null,
  measured: Readonly<Record<string, string>>,
  place: (span: Span) => FileRegion,
  jets: JetNumbering | null = null,
): FigureFact {
  const statement = reading.ok ? reading.statement : null;
  const low = statement?.low?.base;
  const high = statement?.high?.base;
  const base = statement?.nominal?.base ?? (low && high ? low.add(high).div(2) : null);
  // One-sided limits are no middle: `475 rpm min` says nothing of the usual.
  const lone = statement?.form === 'min' || statement?.form === 'max';
  return {
    name,
    text,
    at: place(span),
    place: barrel,
    dimension: statement?.dimension ?? null,
    sense: statement?.sense ?? null,
    figure: base === null || lone ? null : base.valueOf(),
    jets,
    measured,
  };
}

/** `1948-1950`, `1948–50`, `1949`, `from 1951`: first and last year; null where none can be read. */
function yearsOf(years: string | null): { first: number | null; last: number | null } {
  const [, first, short] =
    /(?<!\d)(\d{4})(?:\s*(?:[-–/]|to)\s*(\d{4}|\d{2})(?!\d))?/.exec(years ?? '') ?? [];
  if (first === undefined) return { first: null, last: null };
  const last = short === undefined ? first : first.slice(0, 4 - short.length) + short;
  const open = /\b(from|since|on|onward|onwards)\b|[-–]\s*$/i.test(years ?? '');
  return { first: Number(first), last: short === undefined && open ? null : Number(last) };
}

/** What another sheet says where `figure` stands: of the same name and place; undefined if nothing. */
export function counterpart(figure: FigureFact, { figures }: SheetFacts): FigureFact | undefined {
  return figures.find(({ name, place }) => name === figure.name && place === figure.place);
}
