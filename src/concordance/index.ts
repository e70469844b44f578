export { comparedRows, concordanceOf } from './concordance.ts';
export type * from './model.ts';
