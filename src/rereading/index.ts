export { askedOf, isMeasured } from './asked.ts';
export { blankPages, readableSources, readingBlank } from './blank.ts';
export { compareReading } from './compare-reading.ts';
export { answerDigest } from './digests.ts';
export { keepEdits } from './keep.ts';
export { readReading } from './read-reading.ts';
export { differing, settleEdits } from './settle.ts';
export { provedFigures, type ReadCount, readCount } from './standing.ts';
export { isAllSame, tallyOf } from './tally.ts';
