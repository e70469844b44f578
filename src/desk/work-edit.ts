import type { Edit } from '../checks/index.ts';
import { caution } from '../import/index.ts';
import type { Kind } from '../kinds/model.ts';
import type { Operation } from '../sheet/model.ts';
import type { Span } from '../text/index.ts';
import { ownSpan } from './document.ts';
import { endOfLine, lineEnd, lineStart } from './lines.ts';
import type { DeskDocument } from './model.ts';

/** A step more among those of an operation; the numbers below it count on. */
export function addStep(
  document: DeskDocument,
  operation: Operation,
  at: Span,
  { step, where }: { readonly step: string; readonly where: 'before' | 'end' },
): readonly Edit[] | null {
  const { text } = document;
  const spans = operation.steps.flatMap(({ span, number }) => {
    const own = ownSpan(document, span);
    return own === null ? [] : [{ span: own, number }];
  });
  const place = ownSpan(document, operation.span);
  if (place === null) return null;
  const last = spans.at(-1);
  if (last === undefined) {
    const heading = ownSpan(document, operation.heading.span);
    if (heading === null) return null;
    const body = text.slice(lineEnd(text, heading.end), place.end);
    const end = lineEnd(text, heading.end) + body.trimEnd().length;
    return [
      { span: { start: end, end }, text: `${body.trim() === '' ? '\n' : '\n\n'}1. ${step}\n` },
    ];
  }
  const index =
    where === 'end'
      ? -1
      : spans.findIndex(({ span }) => at.start < span.end && at.end > span.start);
  const indent = /^[ \t]*/.exec(text.slice(lineStart(text, last.span.start)))?.[0] ?? '';
  if (index === -1) {
    const end = last.span.start + text.slice(last.span.start, last.span.end).trimEnd().length;
    const edit = { span: { start: end, end }, text: `\n${indent}${last.number + 1}. ${step}` };
    return [edit];
  }
  const here = spans[index];
  if (here === undefined) return null;
  const start = lineStart(text, here.span.start);
  const sign = /^\d+([.)])/.exec(text.slice(here.span.start))?.[1] ?? '.';
  const edits: Edit[] = [
    { span: { start, end: start }, text: `${indent}${here.number}${sign} ${step}\n` },
  ];
  let number = here.number;
  for (const { span } of spans.slice(index)) {
    const digits = /^\d+/.exec(text.slice(span.start))?.[0];
    // A list that has only ones is counted by the reader.
    if (digits === undefined || Number(digits) !== number) break;
    number++;
    edits.push({
      span: { start: span.start, end: span.start + digits.length },
      text: String(number),
    });
  }
  return merged(edits);
}

/** Two edits that meet at one place as one: an insertion right before a replacement. */
function merged(edits: readonly Edit[]): readonly Edit[] {
  const [first, second, ...rest] = edits;
  if (first === undefined || second === undefined || first.span.start !== second.span.start)
    return edits;
  return [{ span: second.span, text: first.text + second.text }, ...rest];
}

/** A mark at the end of the step at a place. */
export function markStep(document: DeskDocument, at: Span, mark: string): Edit | null {
  const { text, sheet } = document;
  for (const operation of sheet.operations) {
    for (const step of operation.steps) {
      const span = ownSpan(document, step.span);
      if (span === null || at.start < span.start || at.start > span.end) continue;
      // Behind its first paragraph: what stands below may be a list or a picture of its own.
      const words = text.slice(span.start, span.end);
      const cut = /\r?\n[ \t]*(?:\r?\n|[-*+] |\d+[.)] |:::|\|)/.exec(words)?.index ?? words.length;
      const end = span.start + words.slice(0, cut).trimEnd().length;
      return { span: { start: end, end }, text: ` ${mark}` };
    }
  }
  return null;
}

/** A safety message above the first step of an operation, in the kind's words. */
export function addCaution(
  document: DeskDocument,
  operation: Operation,
  kind: Kind,
  hazard: string,
): Edit | null {
  const { text } = document;
  const lines = caution(kind, hazard);
  const [first] = operation.steps;
  const step = first === undefined ? null : ownSpan(document, first.span);
  const heading = ownSpan(document, operation.heading.span);
  if (heading === null || lines.length === 0) return null;
  if (step !== null) {
    const start = lineStart(text, step.start);
    return { span: { start, end: start }, text: `${lines.join('\n')}\n` };
  }
  const start = lineEnd(text, heading.end);
  return { span: { start, end: start }, text: `\n${lines.slice(0, -1).join('\n')}\n` };
}

/** An operation, heading and all, to another place; null where it holds a part of its own. */
export function moveSection(
  document: DeskDocument,
  operation: Operation,
  side: 'above' | 'below',
  beside: Operation,
): readonly Edit[] | null {
  const { text } = document;
  const from = ownSpan(document, operation.span);
  const to = ownSpan(document, beside.span);
  if (from === null || to === null) return null;
  const section = text.slice(from.start, from.end);
  if (/^#[ \t]/m.test(section)) return null;
  const at = side === 'above' ? to.start : to.end;
  const written = `${section.trimEnd()}\n`;
  const isLast = text.slice(from.end).trim() === '';
  const gone = isLast
    ? { start: text.slice(0, from.start).trimEnd().length, end: text.trimEnd().length }
    : from;
  const atEnd = text.slice(at).trim() === '';
  return [
    { span: gone, text: '' },
    { span: { start: at, end: at }, text: atEnd ? `\n${written}` : `${written}\n` },
  ];
}

/** A block to above the line of another place. */
export function liftBlock(text: string, at: Span, to: Span): readonly Edit[] {
  const start = lineStart(text, at.start);
  const end = endOfLine(text, at.end);
  const target = lineStart(text, to.start);
  const rest = /^(?:\r?\n){1,2}/.exec(text.slice(end))?.[0].length ?? 0;
  return [
    { span: { start: target, end: target }, text: `${text.slice(start, end)}\n\n` },
    { span: { start, end: end + rest }, text: '' },
  ];
}
