import type { Citation, Operation, Setting, Sheet } from '../sheet/model.ts';
import type { Span } from '../text/span.ts';
import type { OperationSnapshot, SettingSnapshot, SheetSnapshot } from './model.ts';

/** What a sheet says, as plain data to keep or to hold against another; nothing is converted. */
export function sheetSnapshot(sheet: Sheet): SheetSnapshot {
  const start = sheet.operations[0]?.span.start ?? sheet.text.length;
  return {
    id: sheet.id?.value ?? sheet.file,
    title: sheet.title?.value ?? '',
    kind: sheet.kind?.name ?? sheet.unit.kind?.value ?? null,
    revision: sheet.revision?.value ?? null,
    status: sheet.status?.value ?? null,
    date: sheet.date?.value ?? null,
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

function unitFacts({ unit }: Sheet): Record<string, string> {
  const facts: Record<string, string> = {};
  const put = (key: string, text: string | undefined) => {
    if (text !== undefined && text !== '') facts[key] = text;
  };
  put('maker', unit.maker?.value);
  put('model', unit.model?.value);
  put('part-numbers', unit.partNumbers.map((part) => part.value).join(', '));
  put('features', unit.features.map(({ id }) => id).join(', '));
  put('jets', unit.jets?.value);
  for (const [key, size] of unit.sizes) put(key, size.text);
  for (const [key, thread] of unit.threads) put(key, thread.value);
  for (const [key, text] of unit.other) put(key, text.value);
  return facts;
}

function settingSnapshot(setting: Setting): SettingSnapshot {
  const name = setting.id;
  const values: Record<string, string> = {};
  if (setting.value) values[''] = setting.value.text;
  for (const [place, size] of setting.places) values[place] = size.text;
  const said: Record<string, string> = {};
  const put = (key: string, text: string | undefined) => {
    if (text !== undefined) said[key] = text;
  };
  put('gauge', setting.gauge?.text);
  put('go', setting.go?.text);
  put('no-go', setting.noGo?.text);
  put('travel', setting.travel?.text);
  put('at', setting.at?.value);
  put('places-differ', setting.placesDiffer?.value);
  put('rounding', setting.rounding?.value);
  for (const [key, text] of setting.said) put(key, text.value);
  return {
    name,
    label: setting.known?.label ?? name,
    values,
    also: setting.also.map((size) => size.text),
    said,
    from: setting.from.map(citation),
    but: setting.but.map(({ value, from, ruling }) => ({
      value: value?.text ?? null,
      from: from ? citation(from) : null,
      ruling: ruling ? single(ruling.value) : null,
    })),
    note: setting.note ? single(setting.note.value) : null,
  };
}

function citation({ id, page }: Citation): string {
  return page === null ? id : `${id} ${page}`;
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
