import type { AcrossFinding, Finding } from '../checks/index.ts';

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

/**
 * Those of the findings across sheets that stop the press: on whichever of its sheets one stands, each
 * that is released has the doubt. `statusOf` is the word of a file's sheet.
 */
export function stoppersAcross(
  findings: readonly AcrossFinding[],
  statusOf: (file: string) => string | null,
): readonly AcrossFinding[] {
  return findings.filter((one) =>
    [one, ...one.related].some(({ at }) => stoppers([one], statusOf(at.file)).length > 0),
  );
}
