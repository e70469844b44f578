import type { Project } from '../project/index.ts';
import { countFindings, fileText, placeFindings, stoppers, summaryText } from '../report/index.ts';
import { type Io, say, usesColor, widthOf } from './io.ts';

/**
 * Whether mistakes in the projects' own templates keep anything from being printed with them; they are
 * then told on standard error. A proof is printed with the same templates, so that it is no way out.
 */
export async function styleStops(projects: Iterable<Project>, io: Io): Promise<boolean> {
  const faults = (
    await Promise.all([...new Set(projects)].map((project) => project.templateFaults()))
  ).flat();
  const reports = faults
    .map(({ file, findings, lines }) => ({
      file,
      findings: placeFindings(stoppers(findings, null), lines),
    }))
    .filter(({ findings }) => findings.length > 0);
  if (reports.length === 0) return false;
  const options = { color: usesColor(io, io.stderr), width: widthOf(io.stderr) };
  for (const report of reports) io.stderr.write(`${fileText(report, options)}\n`);
  io.stderr.write(summaryText(countFindings(reports), reports.length, options, 'file'));
  say(io, 'Nothing was printed: the club’s templates are to be mended first.');
  return true;
}
