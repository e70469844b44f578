import type { FileReport } from '../../src/report/index.ts';
import { visible } from '../../src/text/index.ts';

/**
 * Findings one a line, `file:line:column: severity: message [name]`, as compilers write them, so that
 * text editors jump to the place; accepted ones are left out.
 */
export function toPlaceLines(reports: readonly FileReport[]): string {
  return reports
    .flatMap(({ findings }) => findings.filter(({ accepted }) => accepted === null))
    .map(
      ({ file, line, column, severity, message, name }) =>
        `${file}:${line}:${column}: ${severity}: ${visible(message)} [${name}]\n`,
    )
    .join('');
}
