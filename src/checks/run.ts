import { originOf } from '../sheet/index.ts';
import type { Acceptance, Sheet } from '../sheet/model.ts';
import type { Check, CheckContext, Edit, Finding, Report, Reviewed } from './define.ts';
import { fillTemplate } from './fill-template.ts';
import { type Rooted, settleRoots } from './roots.ts';
import { namesOf, plainName } from './vocabulary.ts';

const nothingFound: readonly Finding[] = [];

/** Problems of the reader after which part of the sheet is missing and not just wrong. */
const blinding: ReadonlySet<string> = new Set(['front-matter', 'limits', 'base']);

/**
 * Runs checks over a sheet and returns their findings sorted by place, then by id; warnings and
 * notes that the sheet accepts with a reason carry that reason. `across` are the ids of checks that
 * look at all sheets together: a sheet may accept what they find. Throws only where a check itself is
 * at fault: an undeclared message or a placeholder without a value.
 */
export function runChecks(
  checks: readonly Check[],
  sheet: Sheet,
  context: CheckContext,
  across: readonly string[] = [],
): readonly Finding[] {
  const unread =
    sheet.frontMatter === null || sheet.problems.some((problem) => blinding.has(problem.kind));
  const scopes = scopesOf(sheet);
  const names = new Map<Finding, readonly string[]>();
  const depths = new Map(sheet.family?.members.map(({ file }, depth) => [file, depth]));
  const covers = (acceptance: Acceptance, finding: Finding): boolean =>
    speaksOf(scopes.get(acceptance), finding.check, names.get(finding) ?? []) &&
    // What a base accepts it accepts of itself, and not of what a variant states in its place.
    originOf(sheet, acceptance.span).depth <= (depths.get(finding.file) ?? 0);
  const ids = checks.map((check) => check.id);

  const pass = (last: boolean, before: readonly Finding[]): readonly Finding[] => {
    const rooted: Rooted[] = [];
    const reviewed: Reviewed = { findings: before, ids, across, covers };
    for (const check of checks) {
      if ((check.last ?? false) !== last || (unread && check.unread !== true)) continue;
      const report = (reported: Report<string>): void => {
        const raw = complete(check, reported, sheet);
        if (check.own === true && raw.file !== sheet.file) return;
        const called = [
          ...(raw.subject === null ? [] : [raw.subject]),
          ...(reported.alsoCalled ?? []),
        ];
        names.set(raw, called);
        const reason = last ? null : acceptedBecause(raw, sheet.accept, covers);
        const finding = reason === null ? raw : { ...raw, accepted: reason };
        names.set(finding, called);
        const suspects = (reported.suspects ?? [reported.span]).map(
          (span) => originOf(sheet, span).span,
        );
        rooted.push({ finding, depth: check.depth ?? null, suspects });
      };
      check.run(sheet, context, report, reviewed);
    }
    return [...settleRoots(rooted)].sort(byPlace);
  };

  const first = pass(false, nothingFound);
  const second = pass(true, first);
  return second.length === 0 ? first : [...first, ...second].sort(byPlace);
}

/** What a check reports as a finding, its message filled in and its places those of the files. */
export function complete(check: Check, reported: Report<string>, sheet: Sheet): Finding {
  const template = check.messages[reported.message];
  if (template === undefined) {
    throw new Error(`check ${check.id} reports a message it does not declare: ${reported.message}`);
  }
  const values = reported.values ?? {};
  const { file, span } = originOf(sheet, reported.span);
  return {
    check: check.id,
    severity: reported.severity ?? check.severity,
    file,
    span,
    message: fillTemplate(template.message, values, check.id),
    fix: template.fix === null ? null : fillTemplate(template.fix, values, check.id),
    compared: reported.compared ?? null,
    related: (reported.related ?? []).map((place) => {
      const other = originOf(sheet, place.span);
      return {
        span: other.span,
        label: place.label,
        ...(other.file === file ? {} : { file: other.file }),
      };
    }),
    edits: ownEdits(reported.edits ?? [], sheet),
    subject: reported.subject ?? null,
    accepted: null,
  };
}

/**
 * The edits of a finding; null for none. Of a sheet that is based on another only one that replaces
 * words of its own file: where a whole section goes, two files would have a say.
 */
function ownEdits(edits: readonly Edit[], sheet: Sheet): readonly Edit[] | null {
  const [first] = edits;
  if (first === undefined) return null;
  if (sheet.family === null) return edits;
  const { file, span } = originOf(sheet, first.span);
  const isPlain = edits.length === 1 && first.text !== '' && span.end > span.start;
  return isPlain && file === sheet.file ? [{ ...first, span }] : null;
}

function byPlace(a: Finding, b: Finding): number {
  return (
    order(a.file, b.file) ||
    a.span.start - b.span.start ||
    a.span.end - b.span.end ||
    order(a.check, b.check) ||
    order(a.message, b.message)
  );
}

/** By code unit, so that no locale of the machine reorders a report. */
function order(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}

function acceptedBecause(
  finding: Finding,
  accept: readonly Acceptance[],
  covers: (acceptance: Acceptance, finding: Finding) => boolean,
): string | null {
  if (accept.length === 0 || finding.severity === 'error') return null;
  for (const acceptance of accept) {
    const reason = acceptance.reason?.value.trim() ?? '';
    if (reason !== '' && covers(acceptance, finding)) return reason;
  }
  return null;
}

/** What an acceptance speaks of, worked out once: a long list of them meets many findings. */
interface Scope {
  readonly id: string;
  /** Everything its `at` may mean; null for the whole sheet. */
  readonly meant: readonly string[] | null;
}

function scopesOf(sheet: Sheet): ReadonlyMap<Acceptance, Scope> {
  const { kind } = sheet;
  return new Map(
    sheet.accept.map((acceptance) => [
      acceptance,
      {
        id: plainName(acceptance.finding.value),
        meant: acceptance.at === null ? null : namesOf(acceptance.at.value, kind),
      },
    ]),
  );
}

function speaksOf(scope: Scope | undefined, check: string, called: readonly string[]): boolean {
  if (scope === undefined || scope.id !== check) return false;
  const { meant } = scope;
  if (meant === null) return true;
  return called.some((name) => meant.includes(name) || meant.includes(plainName(name)));
}
