export { calledAs, headingsAsked } from './bookmarks.ts';
export { finishPdf } from './finish.ts';
export { joinParts } from './join.ts';
export type { Part } from './part.ts';
export { elsewhere, pageCount, readPart } from './read-part.ts';
