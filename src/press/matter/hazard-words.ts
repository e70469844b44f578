import type { KindHazard, SignalWord } from '../../kinds/model.ts';
import { tasksOf } from '../../sheet/index.ts';
import type { Sheet } from '../../sheet/model.ts';
import type { BodyMessage } from './body.ts';
import type { SheetMarks } from './sheet-marks.ts';
import { signalOrder } from './signal-order.ts';
import { taskHazards } from './task-hazards.ts';

/** A hazard of a unit's work in its full words, as they stand once before the first task that meets it. */
export interface HazardWords {
  readonly signal: SignalWord;
  /** `WARNING`. */
  readonly word: string;
  /** Whether the alert symbol stands with it: not for NOTICE, which is about things, not people. */
  readonly alert: boolean;
  /** `Gasoline vapor`; several parted by commas. */
  readonly label: string;
  /** The sheet's own words as HTML, and the kind's where the sheet has none; each a paragraph. */
  readonly html: string;
  /** Whether it bears a bar: the sheet says it otherwise than in the last edition. */
  readonly changed: boolean;
  /** The number of the first task that meets it, before which its words belong; null where none is known to. */
  readonly task: number | null;
}

/**
 * The hazards of a sheet's work, each once, in falling order of harm: those of the sheet's own messages, and
 * those that its operations meet by the kind's word and no message speaks of.
 */
export function hazardWords(
  sheet: Sheet,
  messages: readonly BodyMessage[],
  marks: SheetMarks,
  plain: (text: string) => string,
): HazardWords[] {
  const lines = new Map<string, HazardWords>();
  const changed = changedLabels(sheet, marks);
  for (const { signal, hazards, html } of messages) {
    if (!lines.has(hazards)) {
      lines.set(hazards, { ...lineOf(signal, hazards, html), changed: changed.has(hazards) });
    }
  }
  const spoken = new Set([...lines.keys()].flatMap((labels) => labels.split(', ')));
  for (const hazard of hazardsMet(sheet)) {
    if (spoken.has(hazard.label)) continue;
    const { message, signal, label } = hazard;
    const words = plain(`${message.hazard} ${message.consequence} ${message.avoid}`);
    lines.set(label, lineOf(signal, label, `<p>${words}</p>`));
    spoken.add(label);
  }
  const tasks = firstTasks(sheet);
  return [...lines.values()]
    .map((line) => ({ ...line, task: firstOf(line.label.split(', '), tasks) }))
    .sort(
      (first, second) => signalOrder.indexOf(first.signal) - signalOrder.indexOf(second.signal),
    );
}

/** By the kind's label of a hazard, the number of the first task that meets it. */
function firstTasks(sheet: Sheet): ReadonlyMap<string, number> {
  const { numberOf } = tasksOf(sheet);
  const first = new Map<string, number>();
  for (const [operation, met] of taskHazards(sheet)) {
    const number = numberOf(operation);
    if (number === null) continue;
    for (const { label } of met) first.set(label, Math.min(number, first.get(label) ?? number));
  }
  return first;
}

function firstOf(labels: readonly string[], tasks: ReadonlyMap<string, number>): number | null {
  const numbers = labels.flatMap((label) => tasks.get(label) ?? []);
  return numbers.length === 0 ? null : Math.min(...numbers);
}

function lineOf(signal: SignalWord, label: string, html: string): HazardWords {
  return {
    signal,
    word: signal.toUpperCase(),
    alert: signal !== 'notice',
    label,
    html,
    changed: false,
    task: null,
  };
}

function hazardsMet(sheet: Sheet): KindHazard[] {
  const met = new Set([...taskHazards(sheet).values()].flat().map(({ name }) => name));
  return [...(sheet.kind?.hazards.values() ?? [])].filter(({ name }) => met.has(name));
}

/** The hazards of the cautions that bear a bar, as `BodyMessage` names them. */
function changedLabels({ messages }: Sheet, { cautions }: SheetMarks): ReadonlySet<string> {
  const labels = Object.entries(cautions).flatMap(([operation, marked]) => {
    const own = messages.filter((message) => message.operation === Number(operation));
    return marked.flatMap((at) => own[at] ?? []);
  });
  return new Set(
    labels.map(({ hazards }) => hazards.flatMap(({ known }) => known?.label ?? []).join(', ')),
  );
}
