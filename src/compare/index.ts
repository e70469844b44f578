export { compareEditions } from './compare.ts';
export { areNamedAlike } from './edition-names.ts';
export { plainStep } from './plain-step.ts';
export type { SizeReading } from './setting-changes.ts';
export { sheetSnapshot } from './snapshot.ts';
