export { mendFile } from './mend-file.ts';
export { mendSources } from './mend-sources.ts';
