import type { Citation, PlacedSize, Setting } from '../sheet/model.ts';
import type { Placed, Span } from '../text/index.ts';

/** What one answer is asked for. */
export interface AskedPart {
  /** Where it stands below the setting: `['value']`, `['places', 'left']`, `['cover']`. */
  readonly path: readonly string[];
  /**
   * `figure` has to be answered; `words` say where and in what state it holds, and may be `not there`;
   * `beside` is a figure that the paper need not print, and may be left blank.
   */
  readonly role: 'figure' | 'words' | 'beside';
  /** What the sheet says, as written. */
  readonly text: string;
  /** Null for words. */
  readonly size: PlacedSize | null;
  readonly span: Span;
}

/** One statement of a sheet that a page of a source is asked for again. */
export interface Asked {
  /** The name that it stands under in a blank: the setting's own, with `/2` behind a second one of a page. */
  readonly key: string;
  readonly setting: Setting;
  /** The statement's place among the setting's: 0 is the figure, the others are those that differ from it. */
  readonly statement: number;
  /** The source's name as the sheet lists it. */
  readonly source: string;
  /** As cited; `no page` where the sheet names none. */
  readonly page: string;
  readonly citation: Citation;
  readonly parts: readonly AskedPart[];
}

/** What came of comparing one figure, as it is kept. */
export type Verdict =
  | 'same'
  | 'same, written otherwise'
  | 'differs'
  | 'not on that page'
  | 'unread';

/** What was read of one setting on one page: a way below it, joined by `/`, to the words there. */
export interface Answers {
  readonly page: string;
  readonly key: string;
  readonly span: Span;
  readonly given: ReadonlyMap<string, Placed<string>>;
}

/** A figure that was compared before, with digests of the words on either side. */
export interface KeptVerdict {
  readonly page: string;
  readonly setting: string;
  readonly verdict: Verdict;
  readonly sheet: string;
  readonly answer: string;
}

/** Who was right: the sheet, the second reading, or neither of the two. */
export type SettledFor = 'first' | 'second' | 'neither';

/** A difference that somebody settled. */
export interface Settled extends Omit<KeptVerdict, 'verdict'> {
  readonly for: SettledFor;
  readonly first: string;
  readonly second: string;
  readonly by: string;
  readonly why: string;
}

/** A figure on the page that nobody asked for. */
export interface FoundMore {
  readonly page: string | null;
  readonly what: string | null;
  readonly value: string;
  readonly span: Span;
}

/** A file of a second reading, as it was filled in. */
export interface SecondReading {
  readonly sheet: Placed<string>;
  readonly source: Placed<string>;
  readonly by: Placed<string> | null;
  readonly date: Placed<string> | null;
  readonly answers: readonly Answers[];
  readonly found: readonly FoundMore[];
  readonly read: readonly KeptVerdict[];
  readonly settled: readonly Settled[];
}

/** What is wrong with such a file. */
export interface ReadingFault {
  readonly span: Span;
  readonly message: string;
  readonly fix: string | null;
  readonly related?: readonly { readonly span: Span; readonly label: string }[];
}

/** What of the rest of the sheet speaks for one of two figures and against the other. */
export interface Witness {
  readonly by: 'also' | 'gauge' | 'source' | 'worked' | 'usual';
  /** Its own words: `0.203 in`, `b17 p. 2 says No. 30 drill`. */
  readonly text: string;
  readonly backs: 'first' | 'second';
}

/** One answer held against the sheet. */
export interface ComparedPart {
  readonly part: AskedPart;
  /** Null where nothing was answered. */
  readonly answer: Placed<string> | null;
  readonly verdict: Verdict;
  /** What they differ in: `0.0156 in more`, `two digits were swapped`; null for nothing to say. */
  readonly difference: string | null;
  readonly misprint: string | null;
  readonly witnesses: readonly Witness[];
}

/** One statement held against what was read a second time. */
export interface Compared {
  readonly asked: Asked;
  /** That of its parts which weighs most. */
  readonly verdict: Verdict;
  readonly parts: readonly ComparedPart[];
  /** Digests of the words on either side. */
  readonly sheet: string;
  readonly answer: string;
  /** How exactly these words were settled; null where they were not. */
  readonly settled: Settled | null;
}

/** A second reading held against its sheet. */
export interface Comparison {
  readonly reading: SecondReading;
  readonly compared: readonly Compared[];
  /** Answers to what the sheet does not ask of that source and page. */
  readonly unasked: readonly Answers[];
}

/** Makes of a text a digest of 16 small hexadecimal figures; handed in by who has the library. */
export type Digest = (text: string) => string;

/** How far a figure of a sheet was proved: read again in its source, only once, or measured. */
export type Proof = 'twice' | 'once' | 'measured';

/** One figure of a sheet and how far it is proved. */
export interface ProvedFigure {
  readonly setting: Setting;
  readonly statement: number;
  readonly proof: Proof;
  /** Readers that bear it out, with their days; null for a day that nobody said. */
  readonly readers: readonly { readonly by: string; readonly date: string | null }[];
}

/** What a project keeps of second readings of one sheet. */
export interface KeptReadings {
  /** Read when it is first asked for; those that cannot be read are left out. */
  readonly all: readonly KeptReading[];
  readonly digest: Digest;
}

/** What is known of a kept second reading without the words in it: as much as `check` needs. */
export interface KeptReading {
  readonly file: string;
  readonly source: string;
  readonly by: string | null;
  readonly date: string | null;
  readonly read: readonly KeptVerdict[];
  readonly settled: readonly Settled[];
}
