export { type OperationDrawing, operationDrawings } from './operation-drawings.ts';
