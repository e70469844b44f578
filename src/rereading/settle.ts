import { originOf } from '../sheet/index.ts';
import type { Sheet } from '../sheet/model.ts';
import type { Span } from '../text/index.ts';
import type { FileEdit } from './keep.ts';
import type { Compared, ComparedPart } from './model.ts';
import { isNotThere } from './words.ts';

/** What settling a difference makes of the sheet, or why it cannot. */
export type SheetSettled =
  | { readonly ok: true; readonly edits: readonly FileEdit[] }
  | { readonly ok: false; readonly message: string; readonly fix: string };

/** The parts of a statement in which the second reading says something else. */
export function differing({ parts }: Compared): readonly ComparedPart[] {
  return parts.filter(({ verdict }) => verdict === 'differs' || verdict === 'not on that page');
}

/**
 * The edits that write the second reading's words into a statement of the sheet, or `third` in place of
 * both. Nothing but the words themselves is touched.
 */
export function settleEdits(sheet: Sheet, compared: Compared, third: string | null): SheetSettled {
  const wrong = differing(compared);
  const edits: FileEdit[] = [];
  if (third !== null && wrong.length > 1) {
    const keys = wrong.map(({ part }) => part.path.join(' ')).join(', ');
    return {
      ok: false,
      message: `${compared.asked.key} differs in ${keys}, and one text cannot stand for all`,
      fix: 'correct the sheet by hand, and compare again',
    };
  }
  for (const { part, answer, verdict } of wrong) {
    if (originOf(sheet, part.span).depth > 0) {
      return {
        ok: false,
        message: `${part.text} stands in ${originOf(sheet, part.span).file}, on which this sheet is based`,
        fix: 'read that sheet a second time, and settle it there',
      };
    }
    const words = third ?? answer?.value ?? '';
    if ((third === null && verdict === 'not on that page') || isNotThere(words)) {
      return {
        ok: false,
        message: `the second reading found no ${compared.asked.key} on ${compared.asked.page}`,
        fix: 'correct the page in `from:` on the sheet, and compare again; `first` says that it stands there after all',
      };
    }
    const own = originOf(sheet, part.span).span;
    const text = sheet.family?.members[0]?.text ?? sheet.text;
    edits.push(scalarEdit(text, own, words));
  }
  return { ok: true, edits };
}

/** Words in the place of a scalar, with its own quotes if it has some, and with quotes where it needs them. */
export function scalarEdit(text: string, { start, end }: Span, words: string): FileEdit {
  const sign = text[end] ?? '';
  if ((sign === '"' || sign === "'") && text[start - 1] === sign) {
    const inner = sign === '"' ? JSON.stringify(words).slice(1, -1) : words.replaceAll("'", "''");
    return { span: { start, end }, text: inner };
  }
  const isPlain =
    /^[^\s,[\]{}#&*!|>'"%@`?:~-][^\n,[\]{}]*$/.test(words) && !/: |\s#|:$/.test(words);
  const isTaken = /^(?:true|false|null|yes|no|on|off|[+-]?[\d._]+)$/i.test(words);
  return { span: { start, end }, text: isPlain && !isTaken ? words : JSON.stringify(words) };
}
