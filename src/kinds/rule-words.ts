import type { Kind, ReasonedNeed } from './model.ts';

/** A state in a sentence: `the bowl cover off or inverted`. */
export function stateOf(
  { part, anyOf }: { readonly part: string; readonly anyOf: readonly string[] },
  kind: Kind,
): string {
  const known = kind.parts.get(part);
  const says = anyOf.map((each) => known?.conditions.get(each)?.says ?? each);
  return `the ${known?.label ?? part} ${says.join(' or ')}`;
}

/** When a need is asked for, where that is not always; begins with what parts it from the need. */
export function whenAsked({ begins, ifWords }: ReasonedNeed): string {
  return `${begins ? ' as it begins' : ''}${whereSaid(ifWords)}`;
}

/** `, where the steps say “bend”`; empty without words. */
export function whereSaid(words: readonly string[] = []): string {
  if (words.length === 0) return '';
  return `, where the steps say ${words.map((word) => `“${word}”`).join(', ')}`;
}
