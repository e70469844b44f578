export {
  type OperationDrawing,
  operationDrawings,
  rankedDrawings,
} from './operation-drawings.ts';
