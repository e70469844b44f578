import type { CheckContext, Edit, Finding, Severity } from '../checks/index.ts';
import type { Sheet } from '../sheet/model.ts';
import type { LineIndex, Span } from '../text/index.ts';

/** What an open sheet may know of its project. */
export interface DeskProject {
  /** What the checks may know for the sheet. */
  readonly context: CheckContext;
  /**
   * The other sheets of the project, each read when it is come to: for what they use, and for names that
   * are changed throughout. Absent where only the one sheet is known.
   */
  readonly others?: () => Iterable<DeskDocument>;
}

/**
 * One sheet as it stands on the screen, read once. All offsets here and in all answers are 0-based
 * UTF-16 offsets into `text`, ends exclusive, unless a `file` says that they are of another one.
 */
export interface DeskDocument {
  /** As reports show it. */
  readonly file: string;
  /** The sheet's own file, without what it takes from a base. */
  readonly text: string;
  readonly lines: LineIndex;
  readonly sheet: Sheet;
  /** What the checks found; they run when first asked. */
  readonly findings: readonly Finding[];
  readonly project: DeskProject;
  /**
   * Where the work starts in `text`, below the front matter's fence; 0 where there is no front matter. (A
   * sheet that is based on another has its own numbers for the text that it is put together from.)
   */
  readonly bodyStart: number;
}

/** A stretch of one of the project's files, by the name that reports show. */
export interface DeskPlace {
  readonly file: string;
  readonly span: Span;
}

/** A finding as an editor shows it. */
export interface DeskFinding {
  /** The check's id. */
  readonly check: string;
  readonly severity: Severity;
  /** In the document; of a finding that stands in a base, the words that name the base. */
  readonly span: Span;
  readonly message: string;
  readonly fix: string | null;
  readonly related: readonly (DeskPlace & { readonly label: string })[];
  /** The editor's reason, where the sheet accepts it. */
  readonly accepted: string | null;
  /** What `accept: at:` names; null for the whole sheet. */
  readonly subject: string | null;
  /** Whether `--fix` would mend it. */
  readonly certain: boolean;
  /** Its place in the document's `findings`. */
  readonly index: number;
}

/** Edits of one file; all of them or none. */
export interface FileEdits {
  readonly file: string;
  readonly edits: readonly Edit[];
}

/** A change that an editor may choose. */
export interface DeskAction {
  /** An instruction: `write 0.136 in`. */
  readonly title: string;
  /**
   * `fix`: certain, as `--fix` makes it. `suggested`: one cure of perhaps several, to be looked at.
   * `accept`: the finding is kept, with a reason to be written in.
   */
  readonly kind: 'fix' | 'suggested' | 'accept';
  /** The finding that goes. */
  readonly finding: DeskFinding;
  readonly edits: readonly FileEdits[];
  /** What is to be written yet, once the edits are made: the place of the blank, in the new text. */
  readonly blank: Span | null;
}

export type CompletionKind =
  | 'key'
  | 'setting'
  | 'feature'
  | 'hazard'
  | 'source'
  | 'size'
  | 'word'
  | 'heading'
  | 'value'
  | 'state'
  | 'step'
  | 'sheet'
  | 'finding';

/** One thing that may stand at the cursor. */
export interface Completion {
  readonly label: string;
  readonly kind: CompletionKind;
  /** A few words beside the label. */
  readonly detail: string | null;
  /** What it means, in a sentence or two; null where there is no more to say. */
  readonly explain: string | null;
  /** What is put in place of what is there. */
  readonly edit: Edit;
  /** Where in `edit.text` something is to be written yet, as offsets into that text; null for nowhere. */
  readonly blank: Span | null;
}

/** What there is to say of the words under the cursor. */
export interface Hover {
  readonly span: Span;
  readonly title: string;
  /** Sentences, one a paragraph. */
  readonly words: readonly string[];
  /** A label and what it says, in order. */
  readonly rows: readonly (readonly [label: string, text: string])[];
}

export type OutlineKind = 'sheet' | 'part' | 'source' | 'setting' | 'operation' | 'step';

export interface OutlineEntry {
  readonly name: string;
  readonly detail: string | null;
  readonly kind: OutlineKind;
  readonly span: Span;
  /** The name itself. */
  readonly nameSpan: Span;
  readonly children: readonly OutlineEntry[];
}

/** Lines that fold away below their first, all 1-based. */
export interface Fold {
  readonly startLine: number;
  readonly endLine: number;
}

/** Words that lead somewhere else: to a file of the project (beside the sheet) or an address. */
export interface DeskLink {
  readonly span: Span;
  /** A path beside the sheet, or an address. */
  readonly target: string;
  readonly explain: string;
}

/** The name under the cursor, where it can be changed throughout. */
export interface RenameStart {
  readonly span: Span;
  readonly name: string;
}

export type Renamed =
  | { readonly ok: true; readonly edits: readonly FileEdits[]; readonly newFile: string | null }
  | { readonly ok: false; readonly message: string };
