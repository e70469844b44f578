import type { Kit } from '../gauges/index.ts';
import type { Kind } from '../kinds/model.ts';
import type { GaugeBook } from '../quantity/model.ts';
import type { KeptReadings } from '../rereading/model.ts';
import type { FamilyBook, HouseTolerances, RecordBook, SharedSources } from '../sheet/index.ts';
import type { Acceptance, Sheet } from '../sheet/model.ts';
import type { Span } from '../text/index.ts';

export type Severity = 'error' | 'warning' | 'note';

/** A replacement of part of a file that certainly mends a finding. */
export interface Edit {
  readonly span: Span;
  readonly text: string;
}

/** One thing that is wrong, doubtful or worth knowing, at one place of one file. */
export interface Finding {
  /** The check's id. */
  readonly check: string;
  readonly severity: Severity;
  readonly file: string;
  readonly span: Span;
  /** One sentence with both figures as they were written. */
  readonly message: string;
  /** How to mend it. */
  readonly fix: string | null;
  /** The two figures that were compared, where there are two. */
  readonly compared: readonly [string, string] | null;
  /** Other places that have to do with it; `file` where it is another file. */
  readonly related: readonly {
    readonly span: Span;
    readonly label: string;
    readonly file?: string;
  }[];
  /** What `--fix` would do; null where no cure is certain. */
  readonly edits: readonly Edit[] | null;
  /** The setting, operation, source or feature it is about: what `accept: at:` names. */
  readonly subject: string | null;
  /** The editor's reason, where the sheet accepts the finding. */
  readonly accepted: string | null;
}

/** What looking for a picture came to: `damaged`, `unsafe` and `heavy` are told by what is in its file. */
export type PictureState =
  | 'found'
  | 'missing'
  | 'outside'
  | 'remote'
  | 'unsupported'
  | 'damaged'
  | 'unsafe'
  | 'heavy';

/** What the checks may know besides the sheet; the room that touches files fills it in. */
export interface CheckContext {
  readonly gauges: GaugeBook;
  readonly kinds: ReadonlyMap<string, Kind>;
  /** Which system the edition says a bare `SWG` means; null if it does not say. */
  readonly wireGauge: string | null;
  /** The altitude that the edition is for, as written; null or absent where it says none. */
  readonly altitude?: string | null;
  /** What the project's `sources.yaml` describes; absent or null where there is none. */
  readonly sharedSources?: SharedSources | null;
  /** The bench records beside the sheet; absent or null where no folder is known. */
  readonly records?: RecordBook | null;
  /** The edition's tolerances for what no source states; absent or null where it has none. */
  readonly houseTolerances?: HouseTolerances | null;
  /** How many units a figure needs that only measuring bears out; null or absent for no rule. */
  readonly measuredUnits?: number | null;
  /** The sheets of which every figure has to be read twice; null or absent for none. */
  readonly secondReading?: 'released' | 'proof' | null;
  /** What is kept of second readings of the sheet; null or absent where the project keeps none. */
  readonly readings?: KeptReadings | null;
  /** Whether notes tell what differs from the usual order of work; yes, if absent or null. */
  readonly usualOrder?: boolean | null;
  /** The club's own gauges, where the edition lists them; what is ordinary, if absent or null. */
  readonly kit?: Kit | null;
  /** The sheets that one may be based on; absent or null where no others are known. */
  readonly family?: FamilyBook | null;
  /**
   * Looks for a picture by the URL the sheet gives. Absent where no folder is known; pictures then pass.
   */
  readonly picture: ((url: string) => PictureState) | null;
}

/**
 * A cure that is likely and not certain, as data: the desk makes an edit of it (`src/desk/cures.ts`). What
 * it says may hold `{placeholders}` where it stands in a table of messages. `at` is where it is made, in
 * offsets of the sheet's text; the finding's own place, if absent. `of` names the item of several that `at`
 * holds. A text that nobody can know is `null`: what is to be written there is left blank.
 */
export type Cure = { readonly at?: Span } & (
  | /** Other words in place of those. */ { readonly write: string }
  | /** The words, with some before and behind them. */ {
      readonly before: string;
      readonly behind: string;
    }
  | /** The words go, with the key, the item or the line that they are the whole of. */ {
      readonly takeOut: 'entry' | 'words';
      readonly of?: string;
    }
  | /** Another name for the setting at the place, in its marks as well. */ {
      readonly rename: string;
    }
  | /** A key is added to the keys around the place, or to those below the name that stands there. */ {
      readonly say: string;
      readonly as: string | null;
    }
  | /** A key is added to the sheet or to `unit:`, or an item to the list under it. */ {
      readonly under: readonly string[];
      readonly as: string | null;
      readonly item?: true;
    }
  | /** A setting by the kind's name, its figure left blank. */ { readonly setting: string }
  | /** A source by its short name, its title left blank. */ { readonly source: string }
  | /** A heading of the kind with its model steps, where it belongs. */ {
      readonly operation: string;
    }
  | /** A numbered step before the one at the place, or behind the last of the operation there. */ {
      readonly step: string;
      readonly where: 'before' | 'end';
    }
  | /** A mark at the end of the step at the place. */ { readonly mark: string }
  | /** A safety message in the kind's words, above the first step of the operation at the place. */ {
      readonly caution: string;
    }
  | /** The operation at the place, heading and all, above or below another. */ {
      readonly move: 'above' | 'below';
      readonly beside: Span;
    }
  | /** The block at the place goes above another place. */ { readonly lift: Span }
  | /** The words at two places change about. */ { readonly exchange: Span }
);

/** One message of a check: a sentence with `{placeholders}`, and its remedy with the same. */
export interface MessageTemplate {
  readonly message: string;
  readonly fix: string | null;
  /** The remedy as edits to choose from, the likeliest first; absent where it takes a look at the source. */
  readonly suggest?: readonly Cure[];
}

/** What `run` hands in for each finding. */
export interface Report<M extends string> {
  readonly message: M;
  readonly span: Span;
  readonly values?: Readonly<Record<string, string>>;
  readonly compared?: readonly [string, string];
  readonly related?: readonly { readonly span: Span; readonly label: string }[];
  readonly edits?: readonly Edit[];
  /**
   * Cures that no template can say, before those of the message. Asked for only where somebody wants them
   * for this one finding: `check` never does.
   */
  readonly suggest?: () => readonly Cure[];
  /** The figures of which one must be wrong, where it need not be the one at `span`; that, if absent. */
  readonly suspects?: readonly Span[];
  readonly subject?: string | null;
  /** Further names by which an acceptance may call the subject: each choice of an any-of list. */
  readonly alsoCalled?: readonly string[];
  /** Where one check has a graver or milder case; the check's own severity otherwise. */
  readonly severity?: Severity;
}

/** An example that is documentation and test at once. */
export interface Example {
  /** One line that says what the example shows. */
  readonly name: string;
  /**
   * Either a whole sheet, or a fragment that `test/checks/examples.ts` completes:
   * `settings:` (YAML lines put below `settings:` of a clean carburetor sheet), `body:` (Markdown
   * put in place of the clean sheet's body), `front:` (YAML lines added at top level).
   */
  readonly sheet:
    | string
    | { readonly settings?: string; readonly body?: string; readonly front?: string };
  /** The findings of this check, in order; empty for an example that is right. */
  readonly expect: readonly {
    /** The text under the finding's span, exactly. */
    readonly at: string;
    readonly message: string;
    readonly fix: string | null;
    readonly severity?: Severity;
    /** The whole of the sheet's changed line or lines after `--fix`, where an edit is offered. */
    readonly fixed?: string;
  }[];
}

/** The headings of the findings page, in its order. */
export const checkGroups = [
  'reading',
  'sizes',
  'prose',
  'order',
  'provenance',
  'cautions',
  'acceptance',
  'across',
] as const;
export type CheckGroup = (typeof checkGroups)[number];

/** What a check that runs last may know besides the sheet: what the other checks found. */
export interface Reviewed {
  /** Every finding of the other checks, accepted ones included, sorted by place. */
  readonly findings: readonly Finding[];
  /** The ids of all checks of one sheet. */
  readonly ids: readonly string[];
  /** The ids of the checks across sheets, which are not run here. */
  readonly across: readonly string[];
  /** Whether an acceptance speaks of the finding: its check, and its subject where one is named. */
  readonly covers: (acceptance: Acceptance, finding: Finding) => boolean;
}

/** A check: one file, one fault. The id is the file's name and says what is wrong. */
export interface Check<M extends string = string> {
  readonly id: string;
  readonly severity: Severity;
  /** The heading it stands under on the findings page. */
  readonly group: CheckGroup;
  /** One line: what is wrong. */
  readonly summary: string;
  /** What harm it does and when an editor may accept it. */
  readonly explain: string;
  readonly messages: Readonly<Record<M, MessageTemplate>>;
  /**
   * Whether it also runs on a sheet whose front matter is absent or could not be read. The other
   * checks then keep silent: they would call everything missing that stands there unread.
   */
  readonly unread?: true;
  /**
   * Whether it is about what the sheet's own file lists: what a base lists, and this sheet has no use
   * for, is the base's matter.
   */
  readonly own?: true;
  /** Whether it runs after all others and looks at what they found. */
  readonly last?: true;
  /**
   * How far from the root a finding about a figure is, 0 at the root: of findings that rest on one
   * figure only that of the smallest depth is told, and the others are attached to it. Absent for a
   * check whose findings stand for themselves.
   */
  readonly depth?: number;
  /** Pure; `reviewed` is empty of findings unless the check runs `last`. */
  readonly run: (
    sheet: Sheet,
    context: CheckContext,
    report: (finding: Report<M>) => void,
    reviewed: Reviewed,
  ) => void;
  readonly examples: readonly Example[];
}

/**
 * Declares a check. Leave both type parameters to be inferred: the first ties `report` to the
 * names of the messages, the second keeps the id for the closed union `CheckId`.
 */
export function defineCheck<M extends string, const I extends string = string>(
  check: Check<M> & { readonly id: I },
): Check & { readonly id: I } {
  return check as unknown as Check & { readonly id: I };
}
