import { markText } from '../checks/index.ts';
import { caution, modelSteps } from '../import/index.ts';
import type { Kind } from '../kinds/model.ts';
import { ownRules } from '../order/index.ts';
import { operationIn, settingLabel } from '../sheet/index.ts';
import type { Operation } from '../sheet/model.ts';
import type { Span } from '../text/index.ts';
import type { Completion, CompletionKind, DeskDocument } from './model.ts';
import { operationAt, type WorkCursor } from './work-cursor.ts';

/** What may stand at the cursor in the work, the likeliest first. */
export function workCompletions(
  document: DeskDocument,
  cursor: WorkCursor,
  offset: number,
): readonly Completion[] {
  const { sheet } = document;
  const operation = operationAt(document, offset);
  const kind = sheet.kind === null ? null : ownRules(sheet, sheet.kind).kind;
  switch (cursor.at) {
    case 'value':
      return valueMarks(document, operation, (name) => ({
        span: cursor.span,
        text: cursor.closed ? name : `${name}]`,
      }));
    case 'state':
      return kind === null
        ? []
        : stateMarks(kind, operation, (name) => ({
            span: cursor.span,
            text: cursor.closed ? name : `${name}]`,
          }));
    case 'mark':
      return [
        ...valueMarks(document, operation, (name) => ({
          span: cursor.span,
          text: `:value[${name}]`,
        })),
        ...(kind === null
          ? []
          : stateMarks(kind, operation, (name) => ({
              span: cursor.span,
              text: `:state[${name}]`,
            }))),
      ];
    case 'hazard':
      return kind === null ? [] : hazards(kind, operation, cursor.span, cursor.closed);
    case 'message':
      return kind === null ? [] : messages(document, kind, operation, cursor.span);
    case 'heading':
      return kind === null ? [] : headings(document, kind, cursor.span);
    case 'step':
      return kind === null ? [] : steps(document, kind, operation, cursor.span, '');
    default:
      return kind === null ? [] : nextSteps(document, kind, operation, cursor.span);
  }
}

type Put = (name: string) => { readonly span: Span; readonly text: string };

function valueMarks(
  { sheet }: DeskDocument,
  operation: Operation | null,
  put: Put,
): readonly Completion[] {
  const own = new Set(operation?.known?.settings ?? []);
  const settings = [...sheet.settings.values()];
  const first = settings.filter(({ id }) => own.has(id));
  const rest = settings.filter(({ id }) => !own.has(id));
  return [...first, ...rest].map((setting) => ({
    label: setting.name.value,
    kind: 'value',
    detail: setting.value?.text ?? null,
    explain: setting.known?.explain ?? settingLabel(setting),
    edit: put(setting.name.value),
    blank: null,
  }));
}

/** Each part with each of its conditions; first what the operation needs and leaves. */
function stateMarks(kind: Kind, operation: Operation | null, put: Put): readonly Completion[] {
  const known = operationIn(kind, operation);
  const near = new Set([
    ...(known?.needs ?? []).flatMap(({ part, anyOf }) =>
      anyOf.map((each) => markText(kind, part, each)),
    ),
    ...(known?.leaves ?? []).map(({ part, condition }) => markText(kind, part, condition)),
  ]);
  const all = [...kind.parts.values()].flatMap((part) =>
    [...part.conditions.values()].map((condition) => {
      const name = markText(kind, part.name, condition.name);
      return {
        label: name,
        kind: 'state' as const,
        detail: `${part.label} ${condition.says}`,
        explain: condition.instruction,
        edit: put(name),
        blank: null,
      };
    }),
  );
  return [
    ...all.filter(({ label }) => near.has(label)),
    ...all.filter(({ label }) => !near.has(label)),
  ];
}

function hazards(
  kind: Kind,
  operation: Operation | null,
  span: Span,
  closed: boolean,
): readonly Completion[] {
  const near = new Set(operation?.known?.hazards ?? []);
  const all = [...kind.hazards.values()];
  return [
    ...all.filter(({ name }) => near.has(name)),
    ...all.filter(({ name }) => !near.has(name)),
  ].map(({ name, label, signal, message }) => ({
    label: name,
    kind: 'hazard',
    detail: `${label}, ${signal}`,
    explain: [message.hazard, message.consequence, message.avoid].join(' '),
    edit: { span, text: closed ? name : `${name}}` },
    blank: null,
  }));
}

/** Whole safety messages in the kind's words: those that the operation meets and nothing tells yet, first. */
function messages(
  { sheet }: DeskDocument,
  kind: Kind,
  operation: Operation | null,
  span: Span,
): readonly Completion[] {
  const told = new Set(sheet.messages.flatMap((each) => each.hazards.map(({ id }) => id)));
  const near = new Set(operation?.known?.hazards ?? []);
  const rank = (name: string) => (told.has(name) ? 2 : near.has(name) ? 0 : 1);
  return [...kind.hazards.values()]
    .sort((a, b) => rank(a.name) - rank(b.name))
    .map(({ name, label, signal }) => ({
      label: `:::${signal}{hazard=${name}}`,
      kind: 'hazard',
      detail: told.has(name) ? `${label}, told already` : label,
      explain: null,
      edit: { span, text: caution(kind, name).join('\n').trimEnd() },
      blank: null,
    }));
}

/** Operations of the kind that no heading names yet, in working order, with their steps where nothing stands below. */
function headings(document: DeskDocument, kind: Kind, span: Span): readonly Completion[] {
  const { sheet, text } = document;
  const there = new Set(sheet.operations.map(({ known }) => known?.name ?? ''));
  const below = text.slice(span.end).trimStart();
  const isBare = below === '' || below.startsWith('## ');
  const settings = new Set([...sheet.settings.values()].map(({ id }) => id));
  return [...kind.operations.values()]
    .filter(({ name }) => !there.has(name))
    .map((operation) => {
      const own = isBare ? modelSteps(operation, settings) : [];
      const lines = own.map((step, index) => `${index + 1}. ${step}`);
      return {
        label: operation.label,
        kind: 'heading',
        detail: own.length === 0 ? operation.stage : `${operation.stage}, with ${own.length} steps`,
        explain: operation.explain,
        edit: {
          span,
          text: [operation.label, ...(own.length === 0 ? [] : ['', ...lines])].join('\n'),
        },
        blank: null,
      };
    });
}

/** Model steps of the operation that the sheet does not have word for word. */
function steps(
  { sheet, text }: DeskDocument,
  kind: Kind,
  operation: Operation | null,
  span: Span,
  before: string,
): readonly Completion[] {
  const known = operationIn(kind, operation);
  if (known === null) return [];
  const settings = new Set([...sheet.settings.values()].map(({ id }) => id));
  return modelSteps(known, settings)
    .filter((step) => !text.includes(step))
    .map((step) => ({
      label: step,
      kind: 'step' as CompletionKind,
      detail: null,
      explain: `a step of ${known.label} as the kind has it`,
      edit: { span, text: before + step },
      blank: null,
    }));
}

/** On an empty line under a heading: the next step, numbered. */
function nextSteps(
  document: DeskDocument,
  kind: Kind,
  operation: Operation | null,
  span: Span,
): readonly Completion[] {
  if (operation === null || document.text.slice(span.start, span.end).trim() !== '') return [];
  const numbers = operation.steps.map(({ number }) => number);
  return steps(document, kind, operation, span, `${Math.max(0, ...numbers) + 1}. `);
}
