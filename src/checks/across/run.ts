import { fillTemplate } from '../fill-template.ts';
import type { AcrossCheck, AcrossContext, AcrossFinding, AcrossReport } from './define.ts';
import type { AcceptFact, SheetFacts } from './facts.ts';

/**
 * Runs the checks across sheets over the facts of all of them, and returns the findings by file and
 * place. What either sheet accepts with a reason carries it; an acceptance of such a finding that
 * nothing is found for is itself told, as `acceptance-unused`.
 */
export function runAcross(
  checks: readonly AcrossCheck[],
  sheets: readonly SheetFacts[],
  context: AcrossContext,
): readonly AcrossFinding[] {
  const found: AcrossFinding[] = [];
  const used = new Set<AcceptFact>();
  for (const check of checks) {
    check.run(sheets, context, (reported) => {
      found.push(complete(check, reported, used));
    });
  }
  const ids = new Set(checks.map(({ id }) => id));
  for (const sheet of sheets) {
    for (const accept of sheet.accept) {
      if (ids.has(accept.check) && !used.has(accept)) found.push(unused(accept));
    }
  }
  const order = new Map(sheets.map(({ file }, index) => [file, index]));
  return found.sort(
    (a, b) =>
      (order.get(a.at.file) ?? 0) - (order.get(b.at.file) ?? 0) ||
      a.at.line - b.at.line ||
      a.at.column - b.at.column ||
      byText(a.check, b.check) ||
      byText(a.message, b.message),
  );
}

function byText(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}

function complete(
  check: AcrossCheck,
  reported: AcrossReport<string>,
  used: Set<AcceptFact>,
): AcrossFinding {
  const { message, sheet, at, others, values, compared, subject } = reported;
  const template = check.messages[message];
  if (template === undefined) {
    throw new Error(`check ${check.id} reports a message it does not declare: ${message}`);
  }
  let accepted: string | null = null;
  for (const each of check.severity === 'error' ? [] : [sheet, ...others.map((o) => o.sheet)]) {
    for (const accept of each.accept) {
      if (accept.check !== check.id) continue;
      if (accept.meant !== null && !accept.meant.includes(subject)) continue;
      used.add(accept);
      accepted ??= accept.reason;
    }
  }
  return {
    check: check.id,
    severity: check.severity,
    at,
    message: fillTemplate(template.message, values, check.id),
    fix: template.fix === null ? null : fillTemplate(template.fix, values, check.id),
    compared: compared ?? null,
    related: others.map((other) => ({ at: other.at, label: other.label })),
    accepted,
  };
}

function unused({ check, at }: AcceptFact): AcrossFinding {
  return {
    check: 'acceptance-unused',
    severity: 'warning',
    at,
    message: `\`${check}\` is accepted, but it is not found between this sheet and another`,
    fix: 'take this entry out of `accept:`',
    compared: null,
    related: [],
    accepted: null,
  };
}
