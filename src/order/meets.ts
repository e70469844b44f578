import type { Kind } from '../kinds/model.ts';

/** Whether a part in a condition meets a wanted one: itself, or one that it counts as. */
export function meets(
  kind: Kind,
  part: string,
  condition: string,
  wanted: readonly string[],
): boolean {
  if (wanted.includes(condition)) return true;
  const known = kind.parts.get(part)?.conditions.get(condition);
  return known?.countsAs.some((each) => wanted.includes(each)) ?? false;
}
