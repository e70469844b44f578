export { printPaperGauges } from './print.ts';
