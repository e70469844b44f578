export { comparedRows, concordanceOf } from './concordance.ts';
