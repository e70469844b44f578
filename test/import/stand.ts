import { gaugeBook } from '../../src/gauges/index.ts';
import { guessMapping, type MappingGuess } from '../../src/import/guess-mapping.ts';
import type { Table } from '../../src/import/list-model.ts';
import type { Mapping } from '../../src/import/mapping.ts';
import { readList } from '../../src/import/read-list.ts';
import { type ListedUnits, readUnits } from '../../src/import/read-units.ts';
import type { SizeTools } from '../../src/import/written-size.ts';
import { builtInKinds } from '../../src/kinds/index.ts';

export const tools: SizeTools = { gauges: gaugeBook(), swg: null };

const found = builtInKinds().get('carburetor');
if (found === undefined) throw new Error('there is no kind carburetor');
export const kind = found;

/** The first table of a CSV text. */
export function tableOf(csv: string): Table {
  const read = readList(new TextEncoder().encode(csv));
  const table = read.ok ? read.list.tables[0] : undefined;
  if (table === undefined) throw new Error('the text is no list');
  return table;
}

/** What is proposed for a CSV text. */
export function proposed(csv: string): MappingGuess {
  const told = { kind: null, maker: null, features: ['single-barrel', 'downdraft'] };
  const list = { format: 'csv' as const, tables: [tableOf(csv)], settled: [] };
  const guess = guessMapping(list, builtInKinds(), told, tools);
  if (guess === null) throw new Error('nothing is proposed');
  return guess;
}

/** What a list comes to by the mapping that is proposed for it, changed as said. */
export function unitsOf(
  csv: string,
  change: Partial<Mapping> = {},
  table: Partial<Table> = {},
): ListedUnits {
  const mapping = { ...proposed(csv).mapping, ...change };
  return readUnits({ ...tableOf(csv), ...table }, mapping, kind, tools);
}
