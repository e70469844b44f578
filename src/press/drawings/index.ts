export { operationDrawings } from './operation-drawings.ts';
export { wantedDrawings } from './wanted-drawings.ts';
