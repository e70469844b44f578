import { ChangeSet } from '@codemirror/state';

/** The smallest single stretch that makes one text into another, so that cursors outside of it stay. */
export function oneChange(before: string, after: string): ChangeSet {
  const most = Math.min(before.length, after.length);
  let start = 0;
  while (start < most && before.charCodeAt(start) === after.charCodeAt(start)) start += 1;
  let end = 0;
  while (
    end < most - start &&
    before.charCodeAt(before.length - 1 - end) === after.charCodeAt(after.length - 1 - end)
  ) {
    end += 1;
  }
  return ChangeSet.of(
    { from: start, to: before.length - end, insert: after.slice(start, after.length - end) },
    before.length,
    '\n',
  );
}
