export { operationDrawings, rankedDrawings } from './operation-drawings.ts';
export { wantedDrawings } from './wanted-drawings.ts';
