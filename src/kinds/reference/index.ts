export { entriesNamed } from './named.ts';
export { kindReference } from './reference.ts';
