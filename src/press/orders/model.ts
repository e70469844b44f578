import type { Finding } from '../../checks/index.ts';
import type { EditionChanges, EditionSnapshot } from '../../compare/model.ts';
import type { Kit } from '../../gauges/index.ts';
import type { Proof } from '../../rereading/model.ts';
import type { Sheet } from '../../sheet/model.ts';
import type { CardReadings } from './card-readings.ts';
import type { Wording } from './wording.ts';

/** Paper sizes the press knows, upright. */
export type Paper = 'letter' | 'a4' | 'half-letter' | 'a5';

/** A sheet with what printing it needs to know besides. */
export interface SheetToPrint {
  readonly sheet: Sheet;
  /** All findings of the sheet, accepted ones included. */
  readonly findings: readonly Finding[];
  /** Changes with anything in the sheet or its kind; null or absent where nobody knows. */
  readonly digest?: string | null;
  /** How far each figure is proved, by its setting's name on the sheet; null or absent where nobody reads twice. */
  readonly proofs?: Proofs | null;
}

/** How far the figures of a sheet are proved, by the name of the setting as written. */
export type Proofs = ReadonlyMap<string, Proof>;

/** What the edition says of itself; every field that is absent is left off the page. */
export interface EditionFacts {
  readonly title: string;
  readonly subtitle?: string | null;
  readonly club?: string | null;
  /** Which edition it is, as written: `Second edition`. */
  readonly edition?: string | null;
  readonly date?: string | null;
  /** BCP 47 tag of the language the sheets are in; `en` if absent. */
  readonly language?: string | null;
  /** Whose work it is and who may copy it, as written. */
  readonly notice?: string | null;
  /** The editors' own words before the chapters, a string a paragraph. */
  readonly introduction?: readonly string[];
  /** What the club adds to the general cautions, a string a paragraph. */
  readonly safety?: readonly string[];
  /** The altitude that the club's figures are read at, as written. */
  readonly altitude?: string | null;
  /** The club's own gauges; the ordinary ones, if absent or null. */
  readonly kit?: Kit | null;
  /** How far from the eye a card is read, in millimeters; 500 if absent. */
  readonly readingDistanceMm?: number | null;
}

/**
 * The files of a templates folder as values. `texts` goes by path below the folder with `/`
 * (`card.hbs`, `partials/safety.hbs`, `styles.css`), `fonts` by file name (`sans-regular.woff2`).
 */
export interface Templates {
  readonly texts: ReadonlyMap<string, string>;
  readonly fonts: ReadonlyMap<string, Uint8Array>;
  /** The code points that the fonts have glyphs for, together. */
  readonly characters: ReadonlySet<number>;
  /** The height of a font's capitals in ems, by file name; a font that does not say it is absent. */
  readonly capHeights: ReadonlyMap<string, number>;
  /** The fixed words of the templates, by their keys. */
  readonly wording: Wording;
  /** The club's mark as a `data:` address; null for none. */
  readonly logo: string | null;
}

/** A browser that was found, with what it must be started with. */
export interface Browser {
  readonly path: string;
  /** `packaged Chromium 147.0.0`, `Chromium at /usr/bin/chromium`: for people. */
  readonly label: string;
  /** The whole environment it is started with, FONTCONFIG_FILE and LD_LIBRARY_PATH in it. */
  readonly env: Readonly<Record<string, string>>;
  /** Changes when the browser does: what was printed by another is not used for its pages. */
  readonly make: string;
  /** Further switches that this machine needs, such as `--no-sandbox` for root. */
  readonly args: readonly string[];
  /** Makes room for what one start of it keeps while it runs; absent where the browser finds that itself. */
  readonly lodge?: () => Lodging;
}

/** A temporary folder of one browser. */
export interface Lodging {
  /** Its profile, in that folder. */
  readonly profile: string;
  /** Variables that bring its other temporary files there. */
  readonly env: Readonly<Record<string, string>>;
  /** Takes all of it away, once the browser has ended. */
  leave(): void;
}

/** A picture's bytes as a data URI, or null where there is none to print. */
export type PictureSource = (url: string, sheetFile: string) => { readonly dataUri: string } | null;

/** Packing and unpacking as a PDF's FlateDecode wants it: zlib's form (RFC 1950). */
export interface Flate {
  pack(bytes: Uint8Array): Uint8Array;
  /** Fails with an `Error` where the bytes were not packed so. */
  unpack(bytes: Uint8Array): Uint8Array;
}

/** The edition before this one, and what became of it. */
export interface LastEdition {
  readonly changes: EditionChanges;
  readonly before: EditionSnapshot;
}

interface Order {
  readonly flate: Flate;
  readonly paper: Paper;
  readonly templates: Templates;
  readonly picture: PictureSource | null;
  readonly browser: Browser;
  /** Prints DRAFT across every page; without it a sheet with an error is refused. */
  readonly draft: boolean;
  readonly onProgress?: (message: string) => void;
}

/** Where a card is to be punched. */
export type Punch = 'iso-838' | 'three-hole';

/** Marks that are printed on a leaf if asked for. */
export interface LeafMarks {
  readonly punch: Punch | null;
  /** Marks where to trim it, so that it fits a laminating pouch of its own paper's size. */
  readonly trim: boolean;
}

export interface CardOrder extends Order, SheetToPrint {
  readonly edition: EditionFacts | null;
  /** All sheets of the edition, its own among them: gauges are chosen for them together; itself alone, if absent. */
  readonly sheets?: readonly { readonly sheet: Sheet }[];
  /** The pages of the booklet, by the task's number; none where absent. */
  readonly pages?: ReadonlyMap<number, number>;
  /** A bench record to fill the card in with; absent or null leaves its columns blank. */
  readonly readings?: CardReadings | null;
  /** Marks for punching and trimming; none, if absent. */
  readonly marks?: LeafMarks;
}

/**
 * Where what was printed once is kept for the next time. What comes back was kept under that name,
 * whole; null where there is nothing, or no longer.
 */
export interface PartStore {
  /** A short name that only this text has. */
  nameOf(text: string): string;
  read(name: string): Uint8Array | null;
  /** Keeps it if that can be done, and says nothing if not. */
  keep(name: string, bytes: Uint8Array): void;
}

export interface BookletOrder extends Order {
  /** In the order of the edition. */
  readonly sheets: readonly SheetToPrint[];
  readonly edition: EditionFacts;
  /** The edition before this one, to tell what changed; nothing is told if null or absent. */
  readonly last?: LastEdition | null;
  /** Whether every chapter ends with the picture of its order of work; not, if absent. */
  readonly orderGraphs?: boolean;
  /** Null prints every part anew. */
  readonly store: PartStore | null;
}

/** A booklet as it came off the press. */
export interface PrintedBooklet extends Printed {
  /** The same pages without tags, outline and links, to be put on sheets of paper. */
  readonly plain: () => Uint8Array;
  /** The whole of what was printed as one document, with its page numbers. */
  readonly html: () => string;
  /** How many of its parts were printed in this run, and how many were kept from earlier ones. */
  readonly parts: { readonly printed: number; readonly kept: number };
}

/** What came off the press. */
export interface Printed {
  readonly pdf: Uint8Array;
  readonly pages: number;
  /** Faults that keep the print from being used: a card longer than its leaf, cut-off matter. */
  readonly problems: readonly string[];
  /** Worth saying, no reason to hold the print back: letters that the fonts lack. */
  readonly remarks: readonly string[];
}

/** The press could not do it: `message` says what happened and what to do, in plain words. */
export class PressStopped extends Error {
  override readonly name = 'PressStopped';
}
