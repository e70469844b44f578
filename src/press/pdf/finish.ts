import type { Flate } from '../orders/model.ts';
import { calledAs } from './bookmarks.ts';
import { joinParts } from './join.ts';
import type { PartPage } from './part.ts';
import { readPart } from './read-part.ts';

/** What the finished PDF says of itself. */
export interface PdfFacts {
  readonly title: string;
  /** Who publishes it, as written; null leaves it out. */
  readonly author: string | null;
  readonly language: string;
  /** What the headings are called, as the page said when `headingsAsked` was asked of it; see there. */
  readonly headings?: unknown;
  /** Asks a reader to print at the true size, with no fitting to the page (ISO 32000-1, table 150). */
  readonly trueSize?: boolean;
  /** What is drawn over the page at an index, from 0, as PDF operators; null for nothing. */
  readonly over?: (page: PartPage, index: number) => string | null;
}

/** A PDF whose bytes depend on its content alone. */
export interface Finished {
  readonly pdf: Uint8Array;
  readonly pages: number;
  /** Whether the browser shrank a page because something on it was too wide. */
  readonly shrunk: boolean;
}

/**
 * Finishes what the browser printed in one piece as a booklet is finished, a joined file of one part:
 * nothing is left in it that differs from one print to the next. Fails with `PressStopped` where the
 * PDF can't be read.
 */
export async function finishPdf(
  bytes: Uint8Array,
  facts: PdfFacts,
  flate: Flate,
): Promise<Finished> {
  const { trueSize = false, over } = facts;
  const part = await readPart(bytes, flate, { trueSize });
  const { title, author, language } = facts;
  const pdf = joinParts(
    [{ ...part, outline: calledAs(part.outline, facts.headings) }],
    { title, author, language, furniture: null, leftShift: 0, tagged: true, trueSize, over },
    flate,
  );
  return { pdf, pages: part.pages.length, shrunk: part.shrunk.length > 0 };
}
