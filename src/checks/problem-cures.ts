import type { ReadProblem } from '../sheet/model.ts';
import type { Cure } from './define.ts';

/** What the reader knows that may be meant where it found a problem, as cures; an empty text is taken out. */
export function meantAt(write: ReadProblem['write']): readonly Cure[] {
  return (write ?? []).map((each) => (each === '' ? { takeOut: 'entry' } : { write: each }));
}
