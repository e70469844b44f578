import { lettersFor } from '../../sheet/index.ts';
import type { Citation, Sheet } from '../../sheet/model.ts';

/** A source as the foot of a card or chapter lists it. */
export interface SourceLine {
  /** The letter that stands beside a value: `a`, `b` ... `z`, `aa`. */
  readonly mark: string;
  readonly name: string;
  readonly title: string;
  /** `manual, 1948`, `measured, 3 units`; empty where the sheet says neither. */
  readonly facts: string;
}

/** The sources of a sheet in the order it lists them, each with the letter it goes by. */
export function sourceLines(sheet: Sheet): SourceLine[] {
  return [...sheet.sources.values()].map((source, index) => {
    const units = source.units?.value ?? null;
    const facts = [
      source.kind?.value ?? null,
      source.year ? source.year.source : null,
      units === null ? null : `${units} ${units === 1 ? 'unit' : 'units'}`,
    ];
    return {
      mark: lettersFor(index),
      name: source.name.value,
      title: source.title?.value ?? source.name.value,
      facts: facts.filter((fact) => fact !== null).join(', '),
    };
  });
}

/** `a p. 31`, `b`; a source that the sheet does not list is called by its name. */
export function citationMark(citation: Citation, sources: readonly SourceLine[]): string {
  const name = citation.id;
  const mark = sources.find((source) => source.name === name)?.mark ?? name;
  return citation.page === null ? mark : `${mark} ${citation.page}`;
}
