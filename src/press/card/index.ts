export { printCard, printCards } from './print.ts';
