import { levelName } from '../kinds/index.ts';

/** Whether an answer says that the page has nothing of the kind. */
export function isNotThere(text: string): boolean {
  return ['not-there', 'not-on-that-page', 'not-on-this-page', 'not-stated', 'none'].includes(
    levelName(text),
  );
}
