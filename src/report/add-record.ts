import type { Edit } from '../checks/index.ts';
import { unitsOf } from '../measured/index.ts';
import { entriesOf, itemsOf, ownText, under } from '../sheet/index.ts';
import type { Sheet } from '../sheet/model.ts';
import type { PlacedNode } from '../text/index.ts';

/** Why a bench record cannot be added to a source. */
export interface NotAdded {
  readonly message: string;
  readonly fix: string;
}

/**
 * The edits that add a bench record to a source of a sheet's own file: its name under `records:`, and one unit more
 * where `units:` counts just those that have been read. Nothing else of the file is touched.
 */
export function addRecordEdits(
  sheet: Sheet,
  source: string,
  name: string,
): readonly Edit[] | NotAdded {
  const text = ownText(sheet);
  const sources = entriesOf(under(sheet.front, 'sources'));
  const node = sources.get(source)?.value;
  const of = sheet.sources.get(source);
  const measured = [...sheet.sources.values()].filter(({ kind }) => kind?.value === 'measured');
  if (node?.kind !== 'map' || of === undefined || of.kind?.value !== 'measured') {
    const names = measured.map((each) => `\`${each.name.value}\``).join(', ');
    return {
      message: `\`${source}\` is no source of measured units in ${sheet.file} itself`,
      fix:
        names === ''
          ? 'describe one under `sources:` with `kind: measured`'
          : `name one of ${names}`,
    };
  }
  if (of.records.some((each) => each.name.value === name)) {
    return {
      message: `\`${source}\` counts the record ${name} already`,
      fix: 'nothing is left to do',
    };
  }
  const word = /^(?:\d+|[a-z]+-?\d[\w-]*)$/.test(name) ? name : JSON.stringify(name);
  const { units } = of;
  const isCounted = units !== null && units.value === countOf(of);
  const more = isCounted && units ? [{ span: units.span, text: String(units.value + 1) }] : [];
  return [listed(text, node, word), ...more];
}

/** How many units its readings are of, whatever it says itself. */
function countOf(source: Parameters<typeof unitsOf>[0]): number | null {
  return unitsOf({ ...source, units: null });
}

function listed(text: string, node: PlacedNode, word: string): Edit {
  const eol = text.includes('\r\n') ? '\r\n' : '\n';
  const records = under(node, 'records');
  const last = itemsOf(records).at(-1);
  if (records?.kind === 'list' && last !== undefined) {
    const end = endOf(text, last);
    if (isFlow(text, records)) return { span: { start: end, end }, text: `, ${word}` };
    const start = lineStart(text, last.span.start);
    const lead = /^[ \t]*- +/.exec(text.slice(start))?.[0] ?? '- ';
    const line = lineEnd(text, end);
    return { span: { start: line, end: line }, text: `${eol}${lead}${word}` };
  }
  if (records?.kind === 'list' && isFlow(text, records)) {
    return { span: { start: records.span.start + 1, end: records.span.start + 1 }, text: word };
  }
  const entries = entriesOf(node);
  const beside = entries.get('units') ?? entries.get('kind');
  const end = beside === undefined ? node.span.start : endOf(text, beside.value);
  if (isFlow(text, node) || beside === undefined) {
    return { span: { start: end, end }, text: `, records: [${word}]` };
  }
  const indent = ' '.repeat(beside.key.span.start - lineStart(text, beside.key.span.start));
  const line = lineEnd(text, end);
  return { span: { start: line, end: line }, text: `${eol}${indent}records: [${word}]` };
}

/** Behind a scalar, its quote taken in. */
function endOf(text: string, { span, ...node }: PlacedNode): number {
  const isQuoted = node.kind === 'scalar' && node.quoted && /["']/.test(text[span.end] ?? '');
  return isQuoted ? span.end + 1 : span.end;
}

function isFlow(text: string, node: PlacedNode): boolean {
  return /[[{]/.test(text[node.span.start] ?? '');
}

function lineStart(text: string, offset: number): number {
  return Math.max(text.lastIndexOf('\n', offset - 1), text.lastIndexOf('\r', offset - 1)) + 1;
}

function lineEnd(text: string, offset: number): number {
  return offset + (/[\r\n]|$/.exec(text.slice(offset))?.index ?? 0);
}
