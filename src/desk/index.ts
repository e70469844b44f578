export { actions, actionsFor, mended } from './actions.ts';
export { completions } from './completions.ts';
export { documentOf, openDocument } from './document.ts';
export { findings } from './findings.ts';
export { explained, hover, type PartAfter, stateAfter } from './hover.ts';
export type * from './model.ts';
export { definition, references } from './names.ts';
export { folding, links, outline } from './outline.ts';
export { rename, renameStart } from './rename.ts';
