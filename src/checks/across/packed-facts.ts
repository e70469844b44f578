import type { FileRegion } from '../../text/index.ts';
import type { Fact, FigureFact, SheetFacts } from './facts.ts';

/** Line, column, end line and end column; the file where it is not the sheet's own. */
type PackedPlace = readonly [number, number, number, number, file?: string];
type PackedFact = readonly [text: string, ...PackedPlace];

/** A figure but for its text and place, in the order in which `FigureFact` states its fields. */
type PackedFigure = readonly [
  text: string,
  place: PackedPlace,
  name: string,
  barrel: string | null,
  dimension: string | null,
  sense: string | null,
  figure: number | null,
  jets: FigureFact['jets'],
  measured: FigureFact['measured'] | 0,
];

type Packed = Omit<
  SheetFacts,
  'at' | 'partNumbers' | 'interchanges' | 'figures' | 'sources' | 'accept'
> & {
  readonly at: PackedPlace;
  readonly partNumbers: readonly PackedFact[];
  readonly interchanges: readonly PackedFact[];
  readonly figures: readonly PackedFigure[];
  readonly sources: readonly (readonly [PackedFact, SheetFacts['sources'][number]['described']])[];
  readonly accept: readonly (readonly [PackedFact, string, readonly string[] | null, string])[];
};

/**
 * The facts of a sheet as one text, a third as long as they would be: thousands of them wait in memory
 * until all sheets have been checked.
 */
export function packFacts(facts: SheetFacts): string {
  const place = ({ file, line, column, endLine, endColumn }: FileRegion): PackedPlace =>
    file === facts.file
      ? [line, column, endLine, endColumn]
      : [line, column, endLine, endColumn, file];
  const fact = ({ text, at }: Fact): PackedFact => [text, ...place(at)];
  const packed: Packed = {
    ...facts,
    at: place(facts.at),
    partNumbers: facts.partNumbers.map(fact),
    interchanges: facts.interchanges.map(fact),
    figures: facts.figures.map((each) => [
      each.text,
      place(each.at),
      each.name,
      each.place,
      each.dimension,
      each.sense,
      each.figure,
      each.jets,
      Object.keys(each.measured).length === 0 ? 0 : each.measured,
    ]),
    sources: facts.sources.map((each) => [fact(each), each.described]),
    accept: facts.accept.map((each) => [fact(each), each.check, each.meant, each.reason]),
  };
  return JSON.stringify(packed);
}

/**
 * Facts as they were packed. Words that many sheets have are the same text in all of them if `shared`
 * remembers them.
 */
export function unpackFacts(text: string, shared: Map<string, string>): SheetFacts {
  const packed = JSON.parse(text) as Packed;
  const one = (word: string): string => {
    const known = shared.get(word);
    if (known !== undefined) return known;
    shared.set(word, word);
    return word;
  };
  const some = (word: string | null): string | null => (word === null ? null : one(word));
  const place = ([line, column, endLine, endColumn, file]: PackedPlace): FileRegion => ({
    file: file === undefined ? packed.file : one(file),
    line,
    column,
    endLine,
    endColumn,
  });
  const fact = ([words, ...at]: PackedFact): Fact => ({ text: one(words), at: place(at) });
  return {
    ...packed,
    status: some(packed.status),
    kind: some(packed.kind),
    maker: some(packed.maker),
    model: some(packed.model),
    features: packed.features.map(one),
    at: place(packed.at),
    partNumbers: packed.partNumbers.map(fact),
    interchanges: packed.interchanges.map(fact),
    figures: packed.figures.map(
      ([words, at, name, barrel, dimension, sense, figure, jets, measured]) => ({
        name: one(name),
        text: one(words),
        at: place(at),
        place: some(barrel),
        dimension: some(dimension),
        sense: some(sense),
        figure,
        jets,
        measured: measured === 0 ? nothing : measured,
      }),
    ),
    sources: packed.sources.map(([words, described]) => ({ ...fact(words), described })),
    accept: packed.accept.map(([words, check, meant, reason]) => ({
      ...fact(words),
      check: one(check),
      meant,
      reason,
    })),
  };
}

const nothing: FigureFact['measured'] = {};
