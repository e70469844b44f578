import type { Sheet } from '../sheet/model.ts';
import { acrossChecks } from './across/list.ts';
import type { Check, CheckContext, Cure, Finding, Report, Reviewed } from './define.ts';
import { fillTemplate } from './fill-template.ts';
import { allChecks, checkNamed, type Examined } from './list.ts';
import { complete } from './run.ts';
import { plainName } from './vocabulary.ts';

/**
 * The likely cures of a finding, the likeliest first; none where only the source or the editor can tell. Runs
 * the finding's check once more over the sheet, which keeps nothing for it: nobody pays for cures but who
 * asks. `reviewed` is for a check that looks at what the others found.
 */
function curesOf(
  check: Check,
  finding: Finding,
  sheet: Sheet,
  context: CheckContext,
  reviewed: Reviewed,
): readonly Cure[] {
  let made: readonly Cure[] | null = null;
  const report = (reported: Report<string>): void => {
    if (made !== null || !isSame(complete(check, reported, sheet), finding)) return;
    const { span, values = {} } = reported;
    const templates = check.messages[reported.message]?.suggest ?? [];
    made = [
      ...(reported.suggest?.() ?? []),
      ...templates.map((cure) => filled(cure, values, check.id)),
    ].map((cure) => ({ at: span, ...cure }));
  };
  check.run(sheet, context, report, reviewed);
  return made ?? [];
}

function isSame(made: Finding, finding: Finding): boolean {
  return (
    made.file === finding.file &&
    made.span.start === finding.span.start &&
    made.span.end === finding.span.end &&
    made.message === finding.message
  );
}

/** A cure with the values of its finding in place of its placeholders. */
function filled(cure: Cure, values: Readonly<Record<string, string>>, id: string): Cure {
  const fill = (value: unknown): unknown =>
    typeof value === 'string'
      ? fillTemplate(value, values, id)
      : Array.isArray(value)
        ? value.map(fill)
        : value;
  return Object.fromEntries(Object.entries(cure).map(([key, value]) => [key, fill(value)])) as Cure;
}

/** `curesOf` for a finding of any check; none for one across sheets. */
export function suggestedCures(
  finding: Finding,
  { sheet, findings }: Examined,
  context: CheckContext,
): readonly Cure[] {
  const check = checkNamed(finding.check);
  if (check === null) return [];
  return curesOf(check, finding, sheet, context, {
    findings: findings.filter((each) => each.check !== check.id),
    ids: allChecks.map(({ id }) => id),
    across: acrossChecks.map(({ id }) => id),
    covers: ({ finding: named, at }, found) =>
      plainName(named.value) === found.check && (at === null || at.value === found.subject),
  });
}
