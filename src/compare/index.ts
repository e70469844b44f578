export { compareEditions, compareSheets } from './compare.ts';
export { areNamedAlike } from './edition-names.ts';
export * from './model.ts';
export { plainStep } from './plain-step.ts';
export type { SizeReading } from './setting-changes.ts';
export { sheetSnapshot } from './snapshot.ts';
