import type { Finding } from '../checks/index.ts';

import type { DeskDocument, DeskFinding } from './model.ts';

/**
 * The findings of a document by place, accepted ones included. What stands in a base is shown at the words
 * that name the base.
 */
export function findings(document: DeskDocument): readonly DeskFinding[] {
  return document.findings.map((finding, index) => shown(document, finding, index));
}

function shown(document: DeskDocument, finding: Finding, index: number): DeskFinding {
  const { check, severity, message, fix, accepted, subject, edits } = finding;
  const isOwn = finding.file === document.file;
  const related = finding.related.map(({ span, label, file }) => ({
    file: file ?? finding.file,
    span,
    label,
  }));
  return {
    check,
    severity,
    span: isOwn ? finding.span : basedOnSpan(document),
    message,
    fix,
    related: isOwn
      ? related
      : [
          { file: finding.file, span: finding.span, label: 'in the sheet it is based on' },
          ...related,
        ],
    accepted,
    subject,
    certain: edits !== null && accepted === null,
    index,
  };
}

/** The name of the base; the start of the file where none can be read. */
function basedOnSpan({ sheet }: DeskDocument) {
  return sheet.front?.entries.get('based-on')?.value.span ?? { start: 0, end: 0 };
}
