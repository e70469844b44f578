/**
 * A stretch of the booklet as it came from the browser, taken apart so that it can be put among
 * others: what its pages draw with, how they are read aloud, and what leads where. Plain data but
 * for the bytes; pages, things, fonts and links are named by their place in the lists here.
 */
export interface Part {
  readonly pages: readonly PartPage[];
  readonly things: readonly Thing[];
  readonly fonts: readonly PartFont[];
  readonly tags: readonly Tag[];
  /** Where each element that has an id stands. */
  readonly places: { readonly [id: string]: Spot };
  readonly outline: readonly OutlineEntry[];
  /** Pages, from 0, that the browser shrank because something on them was too wide. */
  readonly shrunk: readonly number[];
}

export interface PartPage {
  /** In points. */
  readonly width: number;
  readonly height: number;
  /** Streams among the things, drawn one after the other. */
  readonly contents: readonly number[];
  /** By category (`/Font`) and name; values as PDF, `@n@` for a thing, `~n~` for a font. */
  readonly resources: Resources;
  readonly links: readonly PartLink[];
  /** How many stretches of its content the tags may name. */
  readonly marks: number;
}

export interface Resources {
  readonly [category: string]: { readonly [name: string]: string };
}

/** Any object that a page draws with; what it refers to is written as in `PartPage.resources`. */
export interface Thing {
  readonly text: string;
  readonly bytes: Uint8Array | null;
}

export interface PartLink {
  /** Left, bottom, right, top, in points. */
  readonly rect: readonly number[];
  /** `#` and an id, which may stand in another part, or a whole address. */
  readonly to: string;
}

/** A place on a page, from 0, of the part; points from the left and the bottom. */
export interface Spot {
  readonly page: number;
  readonly x: number;
  readonly y: number;
}

export interface OutlineEntry extends Spot {
  readonly title: string;
  readonly entries: readonly OutlineEntry[];
}

/** An element of the structure that a screen reader follows. */
export interface Tag {
  /** `H1`, `Table`. */
  readonly role: string;
  readonly kids: readonly (Tag | Mark | LinkKid)[];
  /** Entries of its attributes but `/Headers`, as PDF; empty for none. */
  readonly attributes: string;
  /** Further entries of its own as PDF, such as `/Alt`. */
  readonly more: string;
  /** Its number, from 0, where a cell names it as its heading. */
  readonly id: number | null;
  readonly headers: readonly number[];
}

/** A marked stretch of a page's content. */
export interface Mark {
  readonly page: number;
  readonly mark: number;
}

export interface LinkKid {
  readonly page: number;
  readonly link: number;
}

/** The used glyphs of a font, under their numbers in the whole font. */
export interface PartFont {
  /** PostScript name, without the six letters of a subset. */
  readonly name: string;
  /** Entries of its descriptor but name and file, as PDF. */
  readonly descriptor: string;
  /** UTF-16 in hex by glyph. */
  readonly unicode: { readonly [glyph: string]: string };
  /** TrueType. */
  readonly file: Uint8Array;
}
