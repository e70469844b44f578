export { joinParts } from './join.ts';
export type { Part } from './part.ts';
export { elsewhere, readPart } from './read-part.ts';
export { readPlaces, settlePdf } from './settle.ts';
