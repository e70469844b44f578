import type { Edit, Finding } from '../checks/index.ts';
import { blank } from '../import/index.ts';
import type { Span } from '../text/index.ts';
import type { DeskDocument } from './model.ts';

/**
 * The edit that accepts a finding, its reason left to be written; null where none can: of an error, of what
 * is accepted already, and of what stands in another file.
 */
export function acceptance(
  document: DeskDocument,
  finding: Finding,
): { readonly edit: Edit; readonly blank: Span } | null {
  const { sheet, text } = document;
  const { front, frontMatter } = sheet;
  if (finding.severity === 'error' || finding.accepted !== null) return null;
  if (finding.file !== document.file || front === null || frontMatter === null) return null;
  const at = finding.subject === null ? '' : `, at: ${finding.subject}`;
  const head = `- { finding: ${finding.check}${at}, reason: `;
  const entry = `${head}${blank} }`;
  const list = front.entries.get('accept');
  const put = (start: number, before: string, after: string) => ({
    edit: { span: { start, end: start }, text: `${before}${entry}${after}` },
    blank: {
      start: start + before.length + head.length,
      end: start + before.length + head.length + blank.length,
    },
  });
  if (list === undefined) return put(frontMatter.end, '\naccept:\n  ', '');
  if (list.value.kind !== 'list' || text[list.value.span.start] === '[') return null;
  const last = list.value.items.at(-1);
  const first = list.value.items[0];
  if (last === undefined || first === undefined) return null;
  const lineStart = text.lastIndexOf('\n', first.span.start) + 1;
  const indent = /^[ \t]*/.exec(text.slice(lineStart))?.[0] ?? '';
  const lineEnd = text.indexOf('\n', Math.max(last.span.end - 1, last.span.start));
  const end = Math.min(lineEnd === -1 ? text.length : lineEnd, frontMatter.end);
  return put(end, `\n${indent}`, '');
}
