import { actionsFor } from '../../src/desk/actions.ts';
import { findings, openDocument } from '../../src/desk/index.ts';
import type { DeskAction, DeskDocument, DeskFinding, DeskProject } from '../../src/desk/model.ts';
import { applyEdits } from '../../src/report/index.ts';

/** What came of a suggested edit that was made. */
export interface Tried {
  readonly finding: DeskFinding;
  readonly action: DeskAction;
  readonly text: string;
  /** Whether the finding is found no more. */
  readonly clears: boolean;
  /** Errors that were not there before; but for the blank that it says it leaves. */
  readonly newErrors: readonly string[];
}

/** Makes every suggested edit of the findings of a sheet that `wanted` lets pass, each by itself. */
export function tryCures(
  text: string,
  file: string,
  project: DeskProject,
  wanted: (finding: DeskFinding) => boolean,
): {
  readonly tried: readonly Tried[];
  readonly found: readonly { finding: DeskFinding; offered: readonly DeskAction[] }[];
} {
  const document = openDocument(text, file, project);
  const found = findings(document)
    .filter((finding) => finding.accepted === null && wanted(finding))
    .map((finding) => ({ finding, offered: actionsFor(document, finding) }));
  const tried = found.flatMap(({ finding, offered }) =>
    offered
      .filter(({ kind }) => kind === 'suggested')
      .map((action) => tryOne(document, finding, action)),
  );
  return { tried, found };
}

function tryOne(document: DeskDocument, finding: DeskFinding, action: DeskAction): Tried {
  const edits = action.edits.find(({ file }) => file === document.file)?.edits ?? [];
  const text = applyEdits(document.text, edits);
  const after = openDocument(text, document.file, document.project);
  const before = new Map<string, number>();
  for (const each of document.findings) count(before, keyOf(each), 1);
  const left = [...after.findings];
  const clears =
    left.filter((each) => keyOf(each) === keyOf(finding)).length <
    (before.get(keyOf(finding)) ?? 0);
  const errors = left
    .filter(
      ({ severity, check, span }) =>
        severity === 'error' &&
        !(
          action.blank !== null &&
          (check === 'blank-to-fill' ||
            (span.start <= action.blank.end && span.end >= action.blank.start))
        ),
    )
    .filter((each) => count(before, keyOf(each), -1) < 0)
    .map(({ check, message }) => `${check}: ${message}`);
  return { finding, action, text, clears, newErrors: errors };
}

function keyOf({ check, message }: { readonly check: string; readonly message: string }): string {
  return `${check} ${message}`;
}

function count(counts: Map<string, number>, key: string, by: number): number {
  const now = (counts.get(key) ?? 0) + by;
  counts.set(key, now);
  return now;
}
