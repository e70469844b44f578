import { type Face, faceWidths } from './glyph-widths.ts';
import { boundsInCapitals, sizeParts, typesetRuns } from './typeset.ts';

/**
 * Type sizes in mm. A capital is 0.703 of the type size and a figure of a fraction 0.537, both
 * measured in the fonts, so that no capital and no plain figure is lower than 2.3 mm (NUREG-0700 at 500 mm:
 * 2.33 mm), a fraction's 2.1 mm in a size and 1.8 mm among words.
 */
export const typeSize = { size: 4.05, name: 3.35 } as const;

/** From line to line, in mm. */
export const lineHeight = { size: 5, name: 3.9 } as const;

/** A stretch of one face. */
export interface Stretch {
  readonly face: Face;
  readonly text: string;
}

/** One line of lettering with its breadth in mm. */
export interface Line {
  readonly stretches: readonly Stretch[];
  readonly width: number;
}

/** What a character counts for that the tables lack: no narrower than a full-width sign. */
const WIDEST = 1250;

const widths: ReadonlyMap<Face, ReadonlyMap<string, number>> = new Map(
  (Object.keys(faceWidths) as Face[]).map((face) => {
    const table: readonly (readonly [number, string])[] = faceWidths[face];
    return [face, new Map(table.flatMap(([width, all]) => [...all].map((one) => [one, width])))];
  }),
);

/** The breadth of a text in one face at a type size in mm; kerning only narrows it. */
export function breadth(text: string, face: Face, size: number): number {
  let total = 0;
  for (const character of text) {
    const plain = character.normalize('NFD')[0] ?? character;
    total += widths.get(face)?.get(character) ?? widths.get(face)?.get(plain) ?? WIDEST;
  }
  return (total * size) / 1000;
}

/** A size as written in lines no broader than `width` mm, parted where the press parts sizes. */
export function sizeLines(text: string, width: number): readonly Line[] {
  const parts = sizeParts(text).flatMap((part) =>
    sizeLine(part).width <= width ? [part] : part.split(/\s+/),
  );
  return filled(parts, width, sizeLine);
}

/** Words in lines no broader than `width` mm, but for a word that is broader itself. */
export function nameLines(text: string, width: number): readonly Line[] {
  return filled(text.trim().split(/\s+/), width, nameLine);
}

function filled(
  parts: readonly string[],
  width: number,
  measure: (text: string) => Line,
): readonly Line[] {
  const lines: Line[] = [];
  let text = '';
  for (const part of parts) {
    const longer = text === '' ? part : `${text} ${part}`;
    if (text !== '' && measure(longer).width > width) {
      lines.push(measure(text));
      text = part;
    } else text = longer;
  }
  if (text !== '') lines.push(measure(text));
  return lines;
}

function sizeLine(text: string): Line {
  return drawnLine(text, 'size');
}

/** Words, with the fractions among them as in every size: their figures are 1.8 mm high. */
function nameLine(text: string): Line {
  return drawnLine(text, 'name');
}

function drawnLine(text: string, plain: 'size' | 'name'): Line {
  const stretches = typesetRuns(boundsInCapitals(text))
    .filter((run) => run.text !== '')
    .map(({ as, text: drawn }): Stretch => ({ face: as === 'plain' ? plain : as, text: drawn }));
  const width = stretches.reduce(
    (sum, { face, text: drawn }) => sum + breadth(drawn, face, typeSize[plain]),
    0,
  );
  return { stretches, width };
}
