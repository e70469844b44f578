import type { Operation } from '../sheet/model.ts';
import type { Span } from '../text/index.ts';
import { sheetOffset } from './document.ts';
import type { DeskDocument } from './model.ts';

/** Where in the work the cursor stands. */
export type WorkCursor =
  /** In the brackets of `:value[...]` or `:state[...]`; `closed` where the bracket is. */
  | { readonly at: 'value' | 'state'; readonly span: Span; readonly closed: boolean }
  /** In `{hazard=...}` of a safety message: one name of perhaps several. */
  | { readonly at: 'hazard'; readonly span: Span; readonly closed: boolean }
  /** Behind the colon of a mark whose name is being typed; the span takes the colon in. */
  | { readonly at: 'mark'; readonly span: Span }
  /** Behind the colons of a safety message; the span takes them in. */
  | { readonly at: 'message'; readonly span: Span }
  /** Behind `##`. */
  | { readonly at: 'heading'; readonly span: Span }
  /** The text of a numbered step, from behind its number to the end of its line. */
  | { readonly at: 'step'; readonly span: Span }
  | { readonly at: 'prose'; readonly span: Span };

/** What is being typed at an offset of the work, by its own line. */
export function workCursor({ text }: DeskDocument, offset: number): WorkCursor {
  const start =
    Math.max(text.lastIndexOf('\n', offset - 1), text.lastIndexOf('\r', offset - 1)) + 1;
  const found = /[\r\n]/.exec(text.slice(offset));
  const end = found === null ? text.length : offset + found.index;
  const before = text.slice(start, offset);
  const after = text.slice(offset, end);
  const bracket = /:(value|state)\[([^\]]*)$/.exec(before);
  if (bracket !== null) {
    const inner = /^[^\][:]*/.exec(after)?.[0] ?? '';
    const closed = after[inner.length] === ']';
    return {
      at: bracket[1] === 'value' ? 'value' : 'state',
      span: {
        start: offset - (bracket[2] ?? '').length,
        end: closed ? offset + inner.length : offset,
      },
      closed,
    };
  }
  const hazard = /^\s*:{3,}\w+\{[^}]*hazards?=["']?(?:[^}"']*[\s,])?([\w-]*)$/.exec(before);
  if (hazard !== null) {
    const more = /^[\w-]*/.exec(after)?.[0] ?? '';
    return {
      at: 'hazard',
      span: { start: offset - (hazard[1] ?? '').length, end: offset + more.length },
      closed: after.slice(more.length).includes('}'),
    };
  }
  const message = /^\s*(:{2,}\w*)$/.exec(before);
  if (message !== null)
    return { at: 'message', span: { start: offset - (message[1] ?? '').length, end } };
  const mark = /(?:^|[^:\w])(:[a-z]*)$/.exec(before);
  if (mark !== null) {
    return { at: 'mark', span: { start: offset - (mark[1] ?? '').length, end: offset } };
  }
  const heading = /^##[ \t]+/.exec(before);
  if (heading !== null) {
    const id = /[ \t]*\{#[^}]*\}[ \t]*$/.exec(text.slice(start, end));
    return {
      at: 'heading',
      span: { start: start + heading[0].length, end: id === null ? end : start + id.index },
    };
  }
  const step = /^[ \t]*\d+[.)][ \t]+/.exec(text.slice(start, end));
  if (step !== null && step[0].length <= before.length) {
    return { at: 'step', span: { start: start + step[0].length, end } };
  }
  return { at: 'prose', span: { start, end } };
}

/** The operation that an offset stands under; null before the first heading. */
export function operationAt(document: DeskDocument, offset: number): Operation | null {
  const at = sheetOffset(document, offset);
  if (at === null) return null;
  return document.sheet.operations.find(({ span }) => at >= span.start && at <= span.end) ?? null;
}
