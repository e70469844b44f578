import { plainHead, plainSetting } from '../sheet/index.ts';
import type { Operation, Setting, Sheet } from '../sheet/model.ts';
import type { Span } from '../text/index.ts';
import type { OperationSnapshot, SettingSnapshot, SheetSnapshot } from './model.ts';

/** What a sheet says, as plain data to keep or to hold against another; nothing is converted. */
export function sheetSnapshot(sheet: Sheet): SheetSnapshot {
  const start = sheet.operations[0]?.span.start ?? sheet.text.length;
  const { id, title, kind, revision, status, date } = plainHead(sheet);
  return {
    id,
    title,
    kind,
    revision,
    status,
    date,
    unit: unitFacts(sheet),
    fits: sheet.fits.map(({ marque, model, years }) =>
      [marque, model, years].filter((part) => part !== null).join(' '),
    ),
    settings: [...sheet.settings.values()].map((setting) => settingSnapshot(setting)),
    opening: single(sheet.text.slice(sheet.bodyStart, start)),
    operations: sheet.operations.map((operation) => operationSnapshot(operation, sheet)),
    sources: Object.fromEntries(
      [...sheet.sources].map(([name, { title, kind: sort, year, units }]) => [
        name,
        [title?.source, sort?.source, year?.source, units && `${units.source} units`]
          .filter((part) => part !== undefined && part !== null)
          .join(', '),
      ]),
    ),
  };
}

function unitFacts(sheet: Sheet): Record<string, string> {
  const { unit } = sheet;
  const { maker, model, partNumbers, features } = plainHead(sheet);
  const facts: Record<string, string> = {};
  const put = (key: string, text: string | null) => {
    if (text !== null && text !== '') facts[key] = text;
  };
  put('maker', maker);
  put('model', model);
  put('part-numbers', partNumbers.join(', '));
  put('features', features.join(', '));
  put('jets', unit.jets?.value ?? null);
  for (const [key, size] of unit.sizes) put(key, size.text);
  for (const [key, thread] of unit.threads) put(key, thread.value);
  for (const [key, text] of unit.other) put(key, text.value);
  return facts;
}

function settingSnapshot(setting: Setting): SettingSnapshot {
  const { name, label, sizes, also, said, from, but, note } = plainSetting(setting);
  return {
    name,
    label,
    values: Object.fromEntries(sizes.map(({ place, size }) => [place ?? '', size.text])),
    also,
    said,
    from,
    but: but.map(({ value, from: source, ruling }) => ({
      value: value?.text ?? null,
      from: source,
      ruling: ruling && single(ruling),
    })),
    note: note && single(note),
  };
}

function operationSnapshot(operation: Operation, sheet: Sheet): OperationSnapshot {
  const { text } = sheet;
  const messages = sheet.messages.filter((message) => message.operation === operation.index);
  const steps = operation.steps.map(({ span }) => ({
    text: single(
      without(
        text,
        span,
        messages.map((message) => message.span),
      ).replace(/^\s*\d+[.)]/, ''),
    ),
  }));
  const taken = [...operation.steps.map((step) => step.span), ...messages.map(({ span }) => span)];
  return {
    name: operation.known?.name ?? operation.heading.value.toLowerCase(),
    heading: operation.heading.value,
    steps,
    cautions: messages.map(({ signal, hazards, span }) => ({
      signal,
      hazards: hazards.map((hazard) => hazard.value).sort(),
      text: single(
        text
          .slice(span.start, span.end)
          .replace(/^\s*:{3,}[^\r\n]*/, '')
          .replace(/:{3,}\s*$/, ''),
      ),
    })),
    prose: single(
      without(text, { start: headingEnd(text, operation.span), end: operation.span.end }, taken),
    ),
  };
}

function headingEnd(text: string, span: Span): number {
  const line = /[\r\n]/.exec(text.slice(span.start, span.end));
  return line ? span.start + line.index : span.end;
}

/** The text of a stretch with others cut out of it. */
function without(text: string, { start, end }: Span, cut: readonly Span[]): string {
  let at = start;
  let left = '';
  for (const piece of [...cut].sort((a, b) => a.start - b.start)) {
    if (piece.start < at || piece.end > end) continue;
    left += `${text.slice(at, piece.start)}\n`;
    at = piece.end;
  }
  return left + text.slice(at, end);
}

function single(text: string): string {
  return text.replace(/\s+/g, ' ').trim();
}
