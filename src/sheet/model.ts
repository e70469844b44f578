import type { Root } from 'mdast';
import type {
  Kind,
  KindFeature,
  KindHazard,
  KindOperation,
  KindScale,
  KindSetting,
  SignalWord,
} from '../kinds/model.ts';
import type { JetNumbering } from '../quantity/index.ts';
import type { Dimension, Rational, Reading } from '../quantity/model.ts';
import type { LineIndex, Placed, PlacedMap, Span } from '../text/index.ts';
import type { Family } from './family.ts';

/** A size in front matter: the place, the text as written and what it was read as. */
export interface PlacedSize {
  readonly span: Span;
  /** The scalar's text, e.g. `No. 29 drill`; quotes of YAML taken off. */
  readonly text: string;
  readonly reading: Reading;
}

/** A name as written, and what of the kind it means. */
export interface Named<T> extends Placed<string> {
  /** Null where the kind knows none by that name. */
  readonly known: T | null;
  /** The kind's name for it; as written where the kind knows none. */
  readonly id: string;
}

/** The readings of one setting that a source of measured units lists. */
export interface ListedReadings {
  /** As written. */
  readonly name: Placed<string>;
  /** The kind's name for the setting, or its own in the one spelling. */
  readonly id: string;
  readonly known: KindSetting | null;
  readonly jets: JetNumbering | null | undefined;
  /** In their order, read or not. */
  readonly sizes: readonly PlacedSize[];
}

/** A bench record that a source names, and what was read by it when the unit was left. */
export interface NamedRecord {
  readonly name: Placed<string>;
  /** As reports show it; null where there is no such record, or none that can be read. */
  readonly file: string | null;
  /** By the setting's id; each at the place where the sheet names the record. */
  readonly sizes: ReadonlyMap<string, PlacedSize>;
}

export interface Source {
  readonly name: Placed<string>;
  readonly title: Placed<string> | null;
  readonly kind: Placed<string> | null;
  readonly year: Placed<number> | null;
  readonly units: Placed<number> | null;
  /** What was read on units, by the names as written; of those that were measured. */
  readonly readings: readonly ListedReadings[];
  /** The bench records whose readings count among its own, as the sheet names them. */
  readonly records: readonly NamedRecord[];
  /** All that is said of it, key to text as written: `title`, `year`, `publisher` ... */
  readonly described: ReadonlyMap<string, Placed<string>>;
  /** Whether the project's `sources.yaml` describes it; its places are then that of a citation. */
  readonly shared: boolean;
  readonly span: Span;
}

/** `from: m48 p. 31`: the source's name and, after it, the page as written. */
export interface Citation {
  readonly span: Span;
  readonly source: Placed<string>;
  /** The source's name as it is listed; as written where none is listed by it. */
  readonly id: string;
  readonly page: string | null;
}

/** Another source's differing statement, and the editor's ruling. */
export interface Dissent {
  readonly value: PlacedSize | null;
  readonly from: Citation | null;
  readonly ruling: Placed<string> | null;
  readonly span: Span;
}

/** One of the statements that were found of a setting, as its source wrote it. */
export interface SourceStatement extends Dissent {
  readonly note: Placed<string> | null;
}

/** What the edition takes for a setting where no source states limits; in base units. */
export interface HouseTolerance {
  /** As written: `± 1/64 in`. */
  readonly text: string;
  readonly plus: Rational;
  readonly minus: Rational;
  readonly dimension: Dimension;
}

export interface Setting {
  /** As written on the sheet. */
  readonly name: Placed<string>;
  /** The kind's name for it; its own in the one spelling (`heater-flap`) where the kind knows none. */
  readonly id: string;
  /** What the kind says of it; null where the kind knows no such setting. */
  readonly known: KindSetting | null;
  /** What its number says, for a jet; null where the sheet does not say, undefined for no jet. */
  readonly jets: JetNumbering | null | undefined;
  readonly value: PlacedSize | null;
  readonly also: readonly PlacedSize[];
  /** One gauge, or a go and no-go pair. */
  readonly gauge: PlacedSize | null;
  readonly go: PlacedSize | null;
  readonly noGo: PlacedSize | null;
  /** Travel of a screw from its datum, if stated. */
  readonly travel: PlacedSize | null;
  /** Values by barrel or place: `primary`, `left` ...; empty where one value serves all. */
  readonly places: ReadonlyMap<string, PlacedSize>;
  /** Why the places differ, if they do: said, so not a slip. */
  /** Words that the sheet declares it may be stated in, besides the kind's. */
  readonly ownConditions: readonly Placed<string>[];
  readonly placesDiffer: Placed<string> | null;
  readonly at: Placed<string> | null;
  /** `ordinary` or `inward`; null leaves it to the sheet and then to `inward`. */
  readonly rounding: Placed<string> | null;
  readonly from: readonly Citation[];
  readonly but: readonly Dissent[];
  /** Every statement found, where the sheet lists them; `value` to `but` are sorted out of them. */
  readonly statements: readonly SourceStatement[];
  /** The source, and the page if said, whose statement is the figure; null where none is named. */
  readonly follows: Citation | null;
  /** The edition's tolerance, where it comes to bear: no source states limits. Never the source's. */
  readonly house: HouseTolerance | null;
  /** Why the figure stands against all that differ. */
  readonly ruling: Placed<string> | null;
  readonly note: Placed<string> | null;
  /** Everything said beside the value, key to scalar text (`cover`, `gasket`, `link` ...). */
  readonly said: ReadonlyMap<string, Placed<string>>;
  /** The other measure that its figures may be told in; null where there is none on this unit. */
  readonly scale: KindScale | null;
  /** The rows of its table, each a setting of its own with a station; empty for one figure. */
  readonly rows: readonly Setting[];
  /** Of a row: where on the curve it is read. Null for everything else, and where it is not readable as text. */
  readonly station: PlacedSize | null;
  readonly span: Span;
}

/** `:value[name]` in the work. */
export interface ValueUse {
  /** What stands in the brackets; empty for `:value` without any. */
  readonly name: string;
  /** The setting's name in the kind, or in the one spelling where the kind knows none. */
  readonly id: string;
  /** The setting that it means; null where the sheet has none by that name. */
  readonly setting: Setting | null;
  readonly span: Span;
  readonly operation: number | null;
}

/** `:state[part condition]` in the work. */
export interface StateMark {
  readonly text: string;
  readonly span: Span;
  readonly operation: number | null;
}

/** `:::warning{hazard=gasoline-vapor}`. */
export interface SafetyMessage {
  readonly signal: SignalWord;
  /** The hazards as written, one or several parted by commas or spaces; empty if none is named. */
  readonly hazards: readonly Named<KindHazard>[];
  readonly span: Span;
  readonly operation: number | null;
}

export interface Picture {
  readonly url: string;
  readonly alt: string;
  readonly span: Span;
  readonly operation: number | null;
}

/** One step: an item of an ordered list under an operation's heading. */
export interface Step {
  readonly span: Span;
  readonly number: number;
}

/**
 * A stretch of plain prose. `text` is exactly as long as the span, so offsets map one to one: of an
 * escape or an entity the character itself stands there, and blanks for the rest of its source.
 */
interface Prose {
  readonly text: string;
  readonly span: Span;
  readonly operation: number | null;
  /** The paragraph (or heading, or cell) that it stands in. */
  readonly block: Span;
}

/** One `##` heading and what stands below it. */
export interface Operation {
  readonly index: number;
  readonly heading: Placed<string>;
  /** `{#id}` of the heading, if it has one. */
  readonly id: Placed<string> | null;
  /** What the kind says of it; null where the kind knows no such operation. */
  readonly known: KindOperation | null;
  readonly steps: readonly Step[];
  /** From the heading's start to the next heading's start or the end of the file. */
  readonly span: Span;
}

/** An editor's acceptance of a doubtful point, with its reason. */
export interface Acceptance {
  readonly finding: Placed<string>;
  /** The setting, operation, source or feature that it is about; null for the whole sheet. */
  readonly at: Placed<string> | null;
  readonly reason: Placed<string> | null;
  readonly span: Span;
}

/** A part and the conditions a sheet's own rule names for it. */
export interface RuledState {
  readonly part: Placed<string>;
  readonly conditions: readonly Placed<string>[];
}

/**
 * What a sheet's `work:` says of one operation, as written; names are looked up where it is used. One
 * that the kind does not have is the sheet's own where it has a label, and a part where it has conditions.
 */
export interface WorkRule {
  readonly operation: Placed<string>;
  readonly label: Placed<string> | null;
  readonly aliases: readonly Placed<string>[];
  readonly stage: Placed<string> | null;
  /** Null where the kind's hold. */
  readonly hazards: readonly Placed<string>[] | null;
  readonly settings: readonly Placed<string>[];
  /** Of a part of the sheet's own; empty for an operation. */
  readonly conditions: readonly Placed<string>[];
  readonly starts: Placed<string> | null;
  readonly home: readonly Placed<string>[];
  readonly after: readonly Placed<string>[];
  readonly needs: readonly RuledState[];
  readonly leaves: readonly RuledState[];
  readonly disturbs: readonly Placed<string>[];
  /** What the kind says and does not hold on this unit. */
  readonly without: {
    readonly after: readonly Placed<string>[];
    readonly needs: readonly Placed<string>[];
    readonly disturbs: readonly Placed<string>[];
  };
  readonly because: Placed<string> | null;
  readonly span: Span;
}

/** What the reader itself could not make sense of; a check turns each into a finding. */
export interface ReadProblem {
  readonly kind: 'front-matter' | 'schema' | 'limits' | 'encoding' | 'base' | 'variant' | 'joined';
  readonly span: Span;
  readonly message: string;
  readonly fix: string | null;
  /** What may be meant in place of the words at `span`, the likeliest first; an empty text where they go. */
  readonly write?: readonly string[];
  /** Other places that have to do with it, e.g. the first of two equal keys. */
  readonly related?: readonly { readonly span: Span; readonly label: string }[];
}

/** A directive that is none of the sheet's own: `:valeu[float-level]`, `::pagebreak`, `:::info`. */
export interface UnknownDirective {
  readonly name: string;
  readonly kind: 'text' | 'leaf' | 'container';
  readonly span: Span;
  readonly operation: number | null;
}

export interface Unit {
  readonly kind: Placed<string> | null;
  readonly maker: Placed<string> | null;
  readonly model: Placed<string> | null;
  readonly partNumbers: readonly Placed<string>[];
  readonly features: readonly Named<KindFeature>[];
  /** Ids of sheets whose units may stand in its place. */
  readonly interchanges: readonly Placed<string>[];
  /** Names of sizes and threads that the sheet declares as the unit's own. */
  readonly ownSizes: readonly Placed<string>[];
  /** How its maker numbers jets, as written. */
  readonly jets: Placed<string> | null;
  /** Sizes of the unit itself: `throttle-bore`, `throttle-closed-angle` ... */
  readonly sizes: ReadonlyMap<string, PlacedSize>;
  /** Named threads: `idle-needle-thread` ... */
  readonly threads: ReadonlyMap<string, Placed<string>>;
  /** Any other scalar of `unit:`, as written. */
  readonly other: ReadonlyMap<string, Placed<string>>;
}

export interface Fit {
  readonly marque: string | null;
  readonly model: string | null;
  readonly years: string | null;
  readonly span: Span;
}

/** One sheet, every value with its place. Immutable; nothing of the file is lost. */
export interface Sheet {
  /** Path as given, with `/`, relative to the project where it lies inside. */
  readonly file: string;
  /** The file's text; of a sheet that is based on another, all of what it is put together from. */
  readonly text: string;
  readonly lines: LineIndex;
  /** Where the parts of the text stand; null for a sheet that is based on no other. */
  readonly family: Family | null;
  readonly format: Placed<number> | null;
  readonly id: Placed<string> | null;
  readonly title: Placed<string> | null;
  readonly unit: Unit;
  /** The kind that its unit is of; null where it names none or one that nobody knows. */
  readonly kind: Kind | null;
  readonly fits: readonly Fit[];
  readonly revision: Placed<number> | null;
  readonly date: Placed<string> | null;
  readonly status: Placed<string> | null;
  /** Who read the sources for it; null where nobody says. */
  readonly compiledBy: Placed<string> | null;
  readonly rounding: Placed<string> | null;
  /** Which system a bare `SWG` means here, if the sheet says: `imperial` or `us-steel`. */
  readonly wireGauge: Placed<string> | null;
  readonly sources: ReadonlyMap<string, Source>;
  readonly settings: ReadonlyMap<string, Setting>;
  /** The same in order, with the rows of a table in its place: whatever states a figure. */
  readonly figures: readonly Setting[];
  readonly accept: readonly Acceptance[];
  /** The sheet's own rules of the order of work. */
  readonly work: readonly WorkRule[];
  readonly operations: readonly Operation[];
  readonly values: readonly ValueUse[];
  readonly states: readonly StateMark[];
  readonly messages: readonly SafetyMessage[];
  readonly pictures: readonly Picture[];
  readonly prose: readonly Prose[];
  readonly directives: readonly UnknownDirective[];
  /** Raw HTML in the work; none of it is printed. */
  readonly html: readonly Span[];
  readonly problems: readonly ReadProblem[];
  /**
   * The Markdown tree below the front matter, for the press, its offsets and lines the file's; a
   * heading's `{#id}` is still in its text. Null where the file is beyond bounds.
   */
  readonly tree: Root | null;
  /** Where the work starts in the text. */
  readonly bodyStart: number;
  /** The span of the front matter between its fences; null where there is none. */
  readonly frontMatter: Span | null;
  /**
   * The front matter of the sheet's own file as keys and values, offsets that file's; null where there is
   * none, or none that can be read as such.
   */
  readonly front: PlacedMap | null;
}
