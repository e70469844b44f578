export { type PrintedGauges, printPaperGauges } from './print.ts';
