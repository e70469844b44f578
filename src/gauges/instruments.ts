import { instruments } from '../generated/instruments.ts';

/** An ordinary instrument, and what it is trusted to where its owner states nothing better. */
export interface Instrument {
  readonly name: string;
  /** The words that name it in a record, lower case. */
  readonly words: readonly string[];
  /** Expanded (k = 2), as a size or in percent of the reading. */
  readonly uncertainty: string;
  readonly source: string;
}

/** The table of ordinary instruments. */
export function allInstruments(): readonly Instrument[] {
  return instruments;
}

/**
 * The instrument that a record's words name: `the club's vacuum gauge, no. 2`. Of names of which one
 * holds the other the longer counts. Null where no known one is named, or more than one is.
 */
export function instrumentNamed(text: string): Instrument | null {
  const said = ` ${text.toLowerCase().replace(/[^\p{L}\p{N}-]+/gu, ' ')} `;
  const named = instruments.flatMap((instrument) =>
    instrument.words
      .filter((word) => said.includes(` ${word} `))
      .map((word) => ({ instrument, word })),
  );
  const found = new Set(
    named
      .filter(
        ({ word }) => !named.some((other) => other.word !== word && other.word.includes(word)),
      )
      .map(({ instrument }) => instrument),
  );
  const [only] = found;
  return found.size === 1 && only !== undefined ? only : null;
}
