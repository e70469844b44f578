export {
  type OperationDrawing,
  operationDrawings,
  type RankedDrawing,
  rankedDrawings,
} from './operation-drawings.ts';
