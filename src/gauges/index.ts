export { type GaugeAdvice, gaugeAdvice } from './advice.ts';
export { adviceWords, lengthWords, nearestWords, stackWords } from './advice-words.ts';
export { formulaInches, gaugeBook } from './book.ts';
export { chordError } from './bore-error.ts';
export { type Clearance, clearanceOf } from './clearance.ts';
export { type Confusable, confusable } from './confusable.ts';
export { type Cover, fewestGauges } from './fewest.ts';
export { BETWEEN_FACES, fittingGauges, type GapPlace, standsFor } from './fitting.ts';
export { gaugeMakersPair, type MadePair } from './gauge-makers-pair.ts';
export { type GaugesToMake, type GoNoGo, gaugesToMake, goNoGo } from './go-no-go.ts';
export { type Instrument, instrumentNamed } from './instruments.ts';
export { type Kit, type KitGauge, kitOf, LEAF_WIDTH_MM, ordinaryKit } from './kit.ts';
export { type KitEntry, readKitEntry } from './kit-entry.ts';
export { type LeafStack, leafStack, MOST_LEAVES } from './leaf-stack.ts';
export { inside, type Neighbors, namesOf, nearest } from './search.ts';
export {
  type ExactLength,
  exactLength,
  type NamedLength,
  namedLength,
  type SizeAnswer,
  type SizeFacts,
  sizeFacts,
} from './size-facts.ts';
export { type Thread, thread, threads } from './threads.ts';
export { gaugeUncertainty, instrumentOf } from './trusted.ts';
