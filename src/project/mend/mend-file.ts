import type { Finding } from '../../checks/index.ts';
import { mend } from '../../report/index.ts';
import { ownText } from '../../sheet/index.ts';
import { type Examined, examineFile, examineText } from '../examine-file.ts';
import type { Project } from '../project.ts';
import { writeWhole } from '../write-whole.ts';

/** One cure may uncover another; more rounds than this mean that two cures undo one another. */
const mostRounds = 5;

/** What is left to find in a file once it is mended, and what was mended. */
export interface MendedFile {
  readonly examined: Examined;
  readonly mended: readonly Finding[];
}

/**
 * Mends what is certain in one sheet, round by round until nothing more is, and writes the file
 * once, whole. A file that is not saved as UTF-8, or that cannot be mended, is left as it is.
 */
export function mendFile(project: Project, path: string): MendedFile {
  const examined = examineFile(project, path);
  if (!examined.ok || examined.sheet.problems.some((problem) => problem.kind === 'encoding')) {
    return { examined, mended: [] };
  }
  const before = ownText(examined.sheet);
  let now: { sheet: typeof examined.sheet; findings: readonly Finding[] } = examined;
  const mended: Finding[] = [];
  for (let round = 0; round < mostRounds; round++) {
    const step = mend(ownText(now.sheet), now.findings);
    if (step.mended.length === 0) break;
    mended.push(...step.mended);
    now = examineText(project, examined.path, examined.sheet.file, step.text);
  }
  if (ownText(now.sheet) === before) return { examined, mended: [] };
  writeWhole(examined.path, ownText(now.sheet), { within: project.root, was: before });
  return { examined: { ok: true, path: examined.path, ...now }, mended };
}
