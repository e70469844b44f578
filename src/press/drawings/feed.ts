import type { DrawingName } from '../../kinds/index.ts';
import type { Scene } from './scene.ts';

/** A size that a drawing is fed with. */
export interface FedSize {
  /** As written. */
  readonly text: string;
  /** Its nominal, or the middle of its limits, in the base unit of its dimension; null for words. */
  readonly value: number | null;
  readonly dimension: string;
  /** The gauge that the size is made with; null where the sheet names none. */
  readonly gauge: FedGauge | null;
  /** The travel that a count of turns comes to, as written; null where the sheet does not say. */
  readonly travel: string | null;
  /** Which way a count goes from its datum (`out`, `in`, `down` ...). */
  readonly sense: string | null;
}

/** A gauge as it can be drawn. */
export interface FedGauge {
  /** As the sheet has it; null where that is the size's own text. */
  readonly text: string | null;
  readonly mm: number;
  /** A leaf is flat; drills, wires and pins are round. */
  readonly flat: boolean;
}

/** Everything that a drawing may know. */
export interface Feed {
  readonly size: (slot: string) => FedSize | null;
  /** The pitch of a thread in mm; null where it is not known. */
  readonly pitchMm: (slot: string) => number | null;
  /** How many there are of what the drawing repeats; 0 where nothing says. */
  readonly count: (slot: string) => number;
  /** The form that was chosen. */
  readonly choice: (slot: string) => string;
  readonly label: (slot: string) => string;
}

/** A drawing before its lettering is set: `title` in a few words, `words` for who can't see it. */
export interface Sketch {
  readonly scene: Scene;
  readonly title: string;
  readonly words: string;
}

/** Draws from a feed; null where its sizes can't be drawn. */
export type Draw = (feed: Feed) => Sketch | null;

/** Every drawing, by name. */
export type Draws = Readonly<Record<DrawingName, Draw>>;

/** A text with its first letter as a capital. */
export function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
