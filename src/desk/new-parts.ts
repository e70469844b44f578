import type { Edit } from '../checks/index.ts';
import { blank, modelSteps } from '../import/index.ts';
import { ownRules } from '../order/index.ts';
import { ownSpan } from './document.ts';
import { addKey, isFlow } from './front-edit.ts';
import type { DeskDocument } from './model.ts';

/** A setting with its figure left blank, and what must be said of it; from the first source there is. */
export function newSetting({ sheet, text }: DeskDocument, name: string): Edit | null {
  const { front, kind } = sheet;
  const entry = front?.entries.get('settings');
  if (entry === undefined) return null;
  const must = kind?.settings.get(name)?.mustSay ?? [];
  const source = [...sheet.sources.values()][0]?.name.value ?? blank;
  const said = [`value: ${blank}`, ...must.map((key) => `${key}: ${blank}`), `from: ${source}`];
  const flow = `{ ${said.join(', ')} }`;
  const { value: map, key } = entry;
  if (map.kind === 'null') {
    const end = key.span.end + 1;
    return { span: { start: end, end }, text: `\n  ${name}: ${flow}` };
  }
  if (map.kind !== 'map') return null;
  const last = [...map.entries.values()].at(-1);
  // As the settings above it are written: in brackets, or key by key.
  if (isFlow(text, map) || (last !== undefined && isFlow(text, last.value))) {
    return addKey(text, map, name, flow);
  }
  const column = columnOf(text, last?.key.span.start ?? 0);
  const pad = ' '.repeat(column + 2);
  return addKey(text, map, name, `\n${said.map((line) => `${pad}${line}`).join('\n')}`.trimEnd());
}

function columnOf(text: string, offset: number): number {
  return offset - (text.lastIndexOf('\n', offset - 1) + 1);
}

/** A heading of the kind with its model steps, before the first that comes later in the kind's order. */
export function newOperation(document: DeskDocument, name: string): Edit | null {
  const { sheet, text } = document;
  if (sheet.kind === null) return null;
  const { kind } = ownRules(sheet, sheet.kind);
  const operation = kind.operations.get(name);
  if (operation === undefined) return null;
  const settings = new Set([...sheet.settings.values()].map(({ id }) => id));
  const steps = modelSteps(operation, settings);
  const own = operation.settings.filter((each) => settings.has(each));
  const printed = own.filter((each) => !steps.some((step) => step.includes(`:value[${each}]`)));
  const all = [...steps, ...printed.map((each) => `Set and measure: :value[${each}].`)];
  const lines = (all.length === 0 ? [`${operation.label}.`] : all).map(
    (step, index) => `${index + 1}. ${step}`,
  );
  const section = `## ${operation.label}\n\n${lines.join('\n')}\n`;
  const order = [...kind.operations.keys()];
  const rank = order.indexOf(name);
  const next = sheet.operations.find(
    ({ known }) => known !== null && order.indexOf(known.name) > rank,
  );
  const at = next === undefined ? null : ownSpan(document, next.span);
  if (at !== null) return { span: { start: at.start, end: at.start }, text: `${section}\n` };
  const end = text.trimEnd().length;
  return { span: { start: end, end: text.length }, text: `\n\n${section}` };
}
