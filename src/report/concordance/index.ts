export { concordanceCsv } from './csv.ts';
export { type ConcordancesOptions, concordancesText, concordanceText } from './text.ts';
