export { printConcordance } from './print.ts';
