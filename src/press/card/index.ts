export { printCards } from './print.ts';
