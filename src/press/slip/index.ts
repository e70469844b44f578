export { printSlip, type SlipOrder } from './print.ts';
