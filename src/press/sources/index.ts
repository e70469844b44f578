export { type ConcordanceModel, type ConcordanceOrder, printConcordance } from './print.ts';
