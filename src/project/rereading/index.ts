export { compareReadingFile } from './compare-file.ts';
export { keepReading } from './keep-reading.ts';
export { settleFile } from './settle-file.ts';
