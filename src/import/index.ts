export { columnLetters } from './cell-address.ts';
export { chosenFeatures, chosenName, featuresNamed, kindOfFeatures } from './draft-choices.ts';
export { draftKind } from './draft-kind.ts';
export { freeNeighbors, planDraft } from './draft-plan.ts';
export { caution, draftSheet, modelSteps } from './draft-sheet.ts';
export { draftVariant } from './draft-variant.ts';
export { exampleUnits } from './example-units.ts';
export { guessMapping, type MappingGuess, type Told } from './guess-mapping.ts';
export {
  askedConditions,
  commonNeed,
  dimensions,
  type KindPlan,
  type PlannedNeed,
  type PlannedOperation,
  type PlannedSetting,
  pairOf,
  plainName,
} from './kind-plan.ts';
export { type List, listBounds, type Table } from './list-model.ts';
export { type ListedDifference, listedDifferences } from './listed-differences.ts';
export type { ListedUnit } from './listed-unit.ts';
export { mappedTable } from './mapped-table.ts';
export { type Mapping, targetText } from './mapping.ts';
export { readList } from './read-list.ts';
export { readMapping } from './read-mapping.ts';
export { readUnits } from './read-units.ts';
export { type SettledMapping, settledMapping } from './settled-mapping.ts';
export { blank, type GivenFacts } from './sheet-front.ts';
export { namedSheets, sheetIdOf } from './sheet-ids.ts';
export { inListOrder, type Slip } from './slip.ts';
export { mappingText } from './write-mapping.ts';
export type { SizeTools } from './written-size.ts';
