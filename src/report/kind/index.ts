export { entriesText, kindList, kindText } from './kind-text.ts';
