import type { Edit, Finding } from '../checks/index.ts';
import { blank } from '../import/index.ts';
import type { Span } from '../text/index.ts';
import { addItem } from './front-edit.ts';
import { withLineEnds } from './lines.ts';
import { blankIn } from './mends.ts';
import type { DeskDocument } from './model.ts';

/**
 * The edit that accepts a finding, its reason left to be written; null where none can: of an error, of what
 * is accepted already, and of what stands in another file.
 */
export function acceptance(
  { sheet, text, file }: DeskDocument,
  finding: Finding,
): { readonly edit: Edit; readonly blank: Span | null } | null {
  const { front, frontMatter } = sheet;
  if (finding.severity === 'error' || finding.accepted !== null) return null;
  if (finding.file !== file || front === null || frontMatter === null) return null;
  const at = finding.subject === null ? '' : `, at: ${finding.subject}`;
  const entry = `{ finding: ${finding.check}${at}, reason: ${blank} }`;
  const list = front.entries.get('accept')?.value;
  const { end } = frontMatter;
  const edit =
    list === undefined
      ? { span: { start: end, end }, text: `\naccept:\n  - ${entry}` }
      : list.kind === 'list'
        ? addItem(text, list, entry)
        : null;
  if (edit === null) return null;
  const own = { ...edit, text: withLineEnds(edit.text, text) };
  return { edit: own, blank: blankIn([own]) };
}
