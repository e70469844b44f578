import type { Source } from './model.ts';

/** What a source is, in small letters; empty where it does not say. */
export function kindOfSource({ kind }: Source): string {
  return kind?.value.trim().toLowerCase() ?? '';
}

/** Whether a source is units on a bench and no paper. */
export function isMeasured(source: Source): boolean {
  return kindOfSource(source) === 'measured';
}
