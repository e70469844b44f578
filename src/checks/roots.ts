import type { Span } from '../text/index.ts';
import type { Finding, Severity } from './define.ts';

/** A finding with what decides whether it follows from another. */
export interface Rooted {
  readonly finding: Finding;
  /** As `Check.depth`; null for one that stands for itself. */
  readonly depth: number | null;
  /** The figures of which one must be wrong. */
  readonly suspects: readonly Span[];
}

const GRAVITY: Readonly<Record<Severity, number>> = { error: 2, warning: 1, note: 0 };

/**
 * One root, one finding: of findings about one wrong figure the one nearest to the root stays, and the
 * others are attached to it as places. None is attached to a milder one, nor to one that the sheet
 * accepts, for it would be lost with that; and none that is accepted, for its reason is printed.
 */
export function settleRoots(found: readonly Rooted[]): readonly Finding[] {
  const inOrder = found
    .filter(({ depth, finding }) => depth !== null && finding.accepted === null)
    .sort((one, two) => (one.depth ?? 0) - (two.depth ?? 0));
  const rootOf = new Map<Finding, Finding>();
  const roots: Rooted[] = [];
  for (const each of inOrder) {
    const { finding, depth } = each;
    const root = roots.find(
      (one) =>
        (one.depth ?? 0) < (depth ?? 0) &&
        one.finding.file === finding.file &&
        GRAVITY[one.finding.severity] >= GRAVITY[finding.severity] &&
        one.suspects.some((suspect) => speaksOf(each, suspect)),
    );
    if (root) rootOf.set(finding, root.finding);
    else roots.push(each);
  }
  if (rootOf.size === 0) return found.map(({ finding }) => finding);
  return found.flatMap(({ finding }) => {
    if (rootOf.has(finding)) return [];
    const following = [...rootOf].flatMap(([one, root]) => (root === finding ? [one] : []));
    if (following.length === 0) return [finding];
    const places = following.map(({ span, message }) => ({ span, label: `and so: ${message}` }));
    return [{ ...finding, related: [...finding.related, ...places] }];
  });
}

/** Whether a finding is about the figure at a place, or points to it as the other one. */
function speaksOf({ finding, suspects }: Rooted, { start, end }: Span): boolean {
  const isThere = (span: Span): boolean => span.start === start && span.end === end;
  return (
    isThere(finding.span) ||
    suspects.some(isThere) ||
    finding.related.some(({ span, file }) => file === undefined && isThere(span))
  );
}
