export { oneChange } from './one-change.ts';
