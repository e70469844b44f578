export { asciiName } from './ascii-name.ts';
export { capitalized } from './capitalized.ts';
export type { Choice } from './choice.ts';
export { hasWord } from './has-word.ts';
export { jsonText } from './json-text.ts';
export { nearestName } from './nearest-name.ts';
export { oncePer } from './once-per.ts';
export { pixelsOf } from './pixels.ts';
export { plainWords } from './plain-words.ts';
export { type FileRegion, type Region, regionOf } from './region.ts';
export { schemaWords } from './schema-words.ts';
export { LineIndex, type Placed, type Span } from './span.ts';
export { svgFault } from './svg-fault.ts';
export { visible, visibleLines } from './visible.ts';
export {
  lookup,
  nodeAt,
  type Part,
  type PlacedEntry,
  type PlacedList,
  type PlacedMap,
  type PlacedNode,
  type PlacedScalar,
  plainValue,
} from './yaml-nodes.ts';
export { readYaml, usualYamlLimits, type YamlRead } from './yaml-places.ts';
export { scalar } from './yaml-scalar.ts';
