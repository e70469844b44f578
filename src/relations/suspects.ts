import type { Derived } from './propagate.ts';
import type { StatedPlace } from './stated-place.ts';
import type { Verdict } from './verdicts.ts';

/** The stated places that a verdict rests on, its own first, each with what it is called. */
export function suspectsOf({ place, proof }: Verdict): readonly Suspect[] {
  const found = new Map<string, Suspect>([[place.id, { place, label: `\`${place.key}\`` }]]);
  const visit = ({ inputs }: Derived): void => {
    for (const { derived, place: stated, quantity } of inputs) {
      if (derived) visit(derived);
      else if (stated?.span && !found.has(stated.id))
        found.set(stated.id, { place: stated, label: `the ${quantity.label}` });
    }
  };
  visit(proof);
  return [...found.values()];
}

/** A stated figure that takes part in a verdict. */
export interface Suspect {
  readonly place: StatedPlace;
  /** `the turns`; of the figure that was held against the others its key: `` `travel` ``. */
  readonly label: string;
}
