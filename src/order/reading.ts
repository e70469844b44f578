import type { Kind, StateTerm } from '../kinds/model.ts';
import type { Topic } from './reading-mentions.ts';
import { StepReader } from './reading-step.ts';

/** A state that a step's words say, with the offsets of the words in its text. */
export interface ReadState {
  readonly term: StateTerm;
  readonly start: number;
  readonly end: number;
  /** The group of the verb that says it: `put-back`; null for a phrase or a condition. */
  readonly verb: string | null;
}

/**
 * What a step's words say of the unit's state, in the order of the words: phrases that say it by
 * themselves, a verb with a part as its object or its subject (`Lift the cover off`, `the cover is
 * lifted off`, `let the throttle shut`), and a part with one of its conditions (`with the cover
 * inverted`). What is denied, conditional, possible or yet to come is passed over. Marks in the text
 * are not read; `:value[...]` is, where a phrase of the kind says what printing a setting means.
 */
export function readStates(text: string, kind: Kind): readonly ReadState[] {
  return new StepReader(text, kind, []).read();
}

/** The steps of one operation, read in a row: `it` at the head of a step is what the last one named. */
export function readSteps(texts: readonly string[], kind: Kind): readonly (readonly ReadState[])[] {
  let topic: Topic = [];
  return texts.map((text) => {
    const reader = new StepReader(text, kind, topic);
    topic = reader.topic;
    return reader.read();
  });
}
