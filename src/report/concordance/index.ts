export { concordanceCsv } from './csv.ts';
export { concordancesText } from './text.ts';
