export { concordanceCsv } from './csv.ts';
export { concordanceText, signsInWords } from './text.ts';
