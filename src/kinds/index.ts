export { commonHazards } from './builds-on.ts';
export { builtInKinds, kindNamed } from './built-in.ts';
export {
  type DrawingChoice,
  type DrawingName,
  drawingForm,
  drawingForms,
  type KindDrawing,
} from './drawings.ts';
export { boundKeys, type KeyBeside, keysBeside, keysOfKind } from './keys-beside.ts';
export { changes } from './lexicon.ts';
export { levelName } from './name-book.ts';
export { orderBefore } from './order-before.ts';
export { readKind, tryKind } from './read.ts';
export { likeNames } from './reference/named.ts';
export type { FormulaNames } from './relation-faults.ts';
export { withParts } from './state-book.ts';
