import { kinds } from '../generated/kinds.ts';
import { buildKind } from './build.ts';
import type { Kind } from './model.ts';

export type * from './model.ts';
export { levelName } from './name-book.ts';
export { type KindProblem, readKind } from './read.ts';

let built: ReadonlyMap<string, Kind> | null = null;

/** The kinds that come with the program, by name. Made at the first call and the same ever after. */
export function builtInKinds(): ReadonlyMap<string, Kind> {
  built ??= new Map(kinds.map((data) => [data.kind, buildKind(data)]));
  return built;
}
