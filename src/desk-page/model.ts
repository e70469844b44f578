import type { Edit, PictureState } from '../checks/index.ts';
import type { DeskFinding } from '../desk/model.ts';
import type { PlacedFinding } from '../report/index.ts';

/** What the page and its server say to each other: JSON both ways, every path below the seat's own. */

/** One sheet in the list of the edition. */
export interface SheetLine {
  /** The file's name without `.md`: what every address calls it by. */
  readonly id: string;
  readonly title: string;
  readonly kind: string | null;
  /** `draft`, `proof` or `released`, as written; null where it says none. */
  readonly status: string | null;
  /** Null until it has been read. */
  readonly counts: FindingCounts | null;
  /** Why it cannot be read as a sheet at all; null where it can. */
  readonly refused: string | null;
  /** Whether something typed is not in its file yet. */
  readonly unsaved: boolean;
  /** Whether the edition leaves it out. */
  readonly left: boolean;
}

/** What was just found on the sheet that is open. */
export interface LiveSheet {
  readonly id: string;
  readonly counts: FindingCounts;
  readonly title: string | null;
  readonly status: string | null;
}

/** Findings that no editor has accepted. */
export interface FindingCounts {
  readonly errors: number;
  readonly warnings: number;
  readonly notes: number;
}

/** A finding of the edition that stands in no single sheet, or in a file that is none. */
export interface EditionFinding {
  /** The sheet it stands in; null for `edition.yaml`, a kind, a template. */
  readonly sheet: string | null;
  readonly finding: PlacedFinding;
}

/** A kind of unit to draft sheets of. */
export interface KindLine {
  readonly name: string;
  readonly title: string;
  readonly features: readonly { readonly name: string; readonly label: string }[];
  /** One at least of each is needed. */
  readonly oneOf: readonly (readonly string[])[];
  /** Whether the club describes it in a file of its own; the rest come with the program. */
  readonly own: boolean;
}

/** The whole left side. */
export interface EditionState {
  /** Null where there is no `edition.yaml`. */
  readonly title: string | null;
  readonly club: string | null;
  /** The name of the project's folder. */
  readonly folder: string;
  readonly sheets: readonly SheetLine[];
  readonly findings: readonly EditionFinding[];
  readonly kinds: readonly KindLine[];
  /** Files besides the sheets: edition, shared sources, kinds of unit. */
  readonly files: readonly FileLine[];
  /** Whether there is an edition or a sheet: a folder that is empty has yet to be begun. */
  readonly begun: boolean;
  /** Whether all sheets have been read. */
  readonly done: boolean;
}

/** A change as the editor writes it down: `ChangeSet.toJSON()`, with the window that it came from. */
export interface Update {
  readonly clientID: string;
  readonly changes: unknown;
}

/** What may be written at: sheets, and the files that hold for all of them. */
export type FileSort = 'sheet' | 'edition' | 'sources' | 'kind';

/** A file that holds for all sheets. */
export interface FileLine {
  /** Its place in the folder: what every address calls it by. */
  readonly id: string;
  readonly sort: FileSort;
  readonly title: string;
  readonly unsaved: boolean;
}

/** A sheet as it is opened. */
export interface OpenedSheet {
  readonly id: string;
  /** As reports show it. */
  readonly file: string;
  readonly sort: FileSort;
  readonly text: string;
  /** How many updates led to the text. */
  readonly version: number;
  readonly unsaved: boolean;
  /** Why it cannot be changed here; null where it can. */
  readonly locked: string | null;
  /** Whether it came back from what an earlier desk had not saved. */
  readonly restored: boolean;
  /** What stands in the file where somebody else changed it meanwhile; null where nobody did. */
  readonly differing: Differing | null;
}

/** The file as it stands on the disk, other than it was when the sheet was last read or saved. */
export interface Differing {
  /** Null where the file is gone. */
  readonly text: string | null;
}

/** What the checks need besides the text; see `CheckContext`. Plain data, to hand to the worker. */
export interface SheetContext {
  readonly id: string;
  readonly file: string;
  /** Files of the project's own kinds. */
  readonly kinds: readonly { readonly file: string; readonly text: string }[];
  readonly wireGauge: string | null;
  readonly altitude: string | null;
  readonly measuredUnits: number | null;
  readonly usualOrder: boolean | null;
  /** Entries of the edition's `kit:`; null for the ordinary one. */
  readonly kit: readonly string[] | null;
  readonly sharedSources: readonly (readonly [string, Readonly<Record<string, string>>])[];
  /** The sheets that it is based on, by their ids. */
  readonly bases: Readonly<Record<string, { readonly file: string; readonly text: string }>>;
  /** The ids of all sheets beside it. */
  readonly names: readonly string[];
  /** How its pictures were found, by their addresses. */
  readonly pictures: Readonly<Record<string, PictureState>>;
}

/** What `push` answers: taken, or what has to be taken up first. */
export type Pushed =
  | { readonly ok: true; readonly version: number }
  | { readonly ok: false; readonly version: number; readonly updates: readonly Update[] | null };

/** What is wrong with a text that stands in a file besides the sheets. */
export interface FileChecked {
  readonly findings: readonly DeskFinding[];
}

/** A place that has a name. */
export interface NamedPlace {
  /** Null where it is in no sheet. */
  readonly sheet: string | null;
  readonly file: string;
  readonly start: number;
  /** 1-based. */
  readonly line: number;
  /** The line itself. */
  readonly words: string;
}

/** Where a name stands. */
export interface Places {
  /** The name, where it can be changed. */
  readonly name: string | null;
  readonly definition: NamedPlace | null;
  readonly uses: readonly NamedPlace[];
}

export type RenamedHere =
  | { readonly ok: true; readonly edits: readonly Edit[]; readonly others: number }
  | { readonly ok: false; readonly message: string };

/** What `save` answers. */
export type Saved =
  | { readonly ok: true }
  | { readonly ok: false; readonly why: string; readonly differing: Differing | null };

/** A command carried out for the page: what it said, and what it wrote. */
export interface Done {
  readonly status: number;
  /** What it wrote on standard output: paths, most often. */
  readonly out: string;
  /** What it said. */
  readonly talk: string;
  /** The sheet or other file that was made and can be written at; null for none. */
  readonly sheet: string | null;
  /** Prints that can be opened, as addresses below the seat. */
  readonly prints: readonly string[];
}

/** What the server tells without being asked, one JSON object an event. */
export type DeskEvent =
  | { readonly is: 'edition' }
  | { readonly is: 'context' }
  | {
      readonly is: 'updates';
      readonly id: string;
      readonly version: number;
      readonly updates: readonly Update[];
    }
  | {
      readonly is: 'sheet';
      readonly id: string;
      readonly unsaved: boolean;
      readonly differing: Differing | null;
    }
  | { readonly is: 'talk'; readonly job: string; readonly line: string };

/** Orders of the page that are carried out as commands. */
export type CommandOrder =
  | { readonly do: 'print-card'; readonly sheet: string; readonly proof: boolean }
  | { readonly do: 'print-booklet'; readonly proof: boolean }
  | {
      readonly do: 'new-sheet';
      readonly kind: string;
      readonly maker: string;
      readonly model: string;
      readonly features: readonly string[];
    }
  | {
      readonly do: 'new-variant';
      readonly base: string;
      readonly name: string;
      readonly title: string;
    }
  | { readonly do: 'new-kind'; readonly name: string; readonly title: string }
  | { readonly do: 'new-club'; readonly title: string }
  | { readonly do: 'show-kind'; readonly name: string };

/** A request refused, in words for a person. */
export interface Refusing {
  readonly message: string;
  readonly hint: string | null;
}

/** One place that a search came to. */
export interface FoundLine {
  readonly sheet: string;
  readonly words: string;
  readonly where: string;
  /** Both 1-based. */
  readonly line: number;
  readonly column: number;
}
