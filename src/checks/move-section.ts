import type { Kind } from '../kinds/model.ts';
import type { OrderMove } from '../order/index.ts';
import { operationIn } from '../sheet/index.ts';
import type { Operation, Sheet } from '../sheet/model.ts';
import type { Edit } from './define.ts';

/**
 * The edits that move a section, heading and all; none where it is not certain that this mends: more
 * than one heading is out of place, the move is not proven, or cautions would come to stand after the
 * work that they are about.
 */
export function editsFor(sheet: Sheet, kind: Kind, moves: readonly OrderMove[]): readonly Edit[] {
  const [move] = moves;
  if (!move?.certain || moves.length > 1) return [];
  // What is only doubtful is not mended by a hand that does not look.
  if (!move.mends.some(({ weight }) => weight !== 'note')) return [];
  const { operation, side, beside } = move;
  const section = sheet.text.slice(operation.span.start, operation.span.end);
  // A title in between opens a part of its own, and the section's end is not where it seems.
  if (/^#[ \t]/m.test(section)) return [];
  if (!keepsCautions(sheet, kind, move)) return [];
  const at = side === 'above' ? beside.span.start : beside.span.end;
  const isLast = operation.span.end === sheet.text.length;
  const text = `${section.trimEnd()}\n`;
  if (isLast) {
    const start = sheet.text.slice(0, operation.span.start).trimEnd().length;
    return [
      { span: { start: at, end: at }, text: `${text}\n` },
      { span: { start, end: sheet.text.trimEnd().length }, text: '' },
    ];
  }
  const atEnd = at === sheet.text.length;
  return [
    { span: operation.span, text: '' },
    { span: { start: at, end: at }, text: atEnd ? `\n${text}` : `${text}\n` },
  ];
}

/** Whether every caution still stands before what it is about: none moves, and none is left behind. */
function keepsCautions(sheet: Sheet, kind: Kind, { operation, side, beside }: OrderMove): boolean {
  if (sheet.messages.some((message) => message.operation === operation.index)) return false;
  if (side === 'below') return true;
  const met = hazards(operation, kind);
  return sheet.messages.every(
    (message) =>
      message.span.end <= beside.span.start || !message.hazards.some(({ id }) => met.includes(id)),
  );
}

function hazards(operation: Operation, kind: Kind): readonly string[] {
  return operationIn(kind, operation)?.hazards ?? [];
}
