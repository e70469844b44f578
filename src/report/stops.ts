import type { Finding } from '../checks/define.ts';

/**
 * The findings that stop the press: errors always; on a released sheet also the warnings that no
 * editor has accepted. `status` is the sheet's own word, null where it has none.
 */
export function stoppers<F extends Pick<Finding, 'severity' | 'accepted'>>(
  findings: readonly F[],
  status: string | null,
): readonly F[] {
  return findings.filter(
    (finding) =>
      finding.accepted === null &&
      (finding.severity === 'error' ||
        (finding.severity === 'warning' && status?.trim().toLowerCase() === 'released')),
  );
}
