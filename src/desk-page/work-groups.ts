import { orderProof } from '../checks/index.ts';
import type { DeskDocument } from '../desk/model.ts';
import type { Kind } from '../kinds/model.ts';
import { originOf } from '../sheet/index.ts';
import type { WorkGroup, WorkLine } from './worker-model.ts';

/** The work of a sheet as headings and steps, each with what it changes of the unit. */
export function workGroups(document: DeskDocument): readonly WorkGroup[] {
  const { sheet } = document;
  const proof = orderProof(sheet);
  const changes = new Map(
    (proof?.walk.steps ?? []).map(({ step }) => [step.span.start, step.changes] as const),
  );
  return sheet.operations.map((operation) => ({
    title: operation.heading.value.replace(/\s*\{#[^}]*\}\s*$/, ''),
    span: originOf(sheet, operation.heading.span).span,
    stage: operation.known?.stage ?? null,
    steps: operation.steps.map(
      (step): WorkLine => ({
        number: step.number,
        words: plain(
          sheet.text.slice(step.span.start, step.span.end),
          (name) => sheet.settings.get(name)?.value?.text ?? name,
        ),
        span: originOf(sheet, step.span).span,
        changes: (changes.get(step.span.start) ?? []).map(({ term, by }) => ({
          words: `${labelOf(term.part, proof?.kind)}: ${saysOf(term.part, term.condition, proof?.kind)}`,
          doubtful: by === 'reading',
        })),
      }),
    ),
  }));
}

function labelOf(part: string, kind: Kind | undefined): string {
  return kind?.parts.get(part)?.label ?? part;
}

function saysOf(part: string, condition: string, kind: Kind | undefined): string {
  return kind?.parts.get(part)?.conditions.get(condition)?.says ?? condition;
}

/** A step's words without what marks it up, figures in their places. */
function plain(source: string, figure: (name: string) => string): string {
  return source
    .replace(/^\s*\d+[.)]\s+/, '')
    .replace(/:{3,}[\s\S]*?:{3,}/g, ' ')
    .replace(/:state\[[^\]]*\]/g, '')
    .replace(/:value\[([^\]]*)\]/g, (_, name: string) => figure(name.trim()))
    .replace(/!\[[^\]]*\]\([^)]*\)/g, '')
    .replace(/[*_`]/g, '')
    .replace(/\s+/g, ' ')
    .trim();
}
