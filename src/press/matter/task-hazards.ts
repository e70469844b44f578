import type { KindHazard, SignalWord } from '../../kinds/model.ts';
import { ownRules } from '../../order/index.ts';
import type { Operation, Sheet } from '../../sheet/model.ts';
import { signalOrder } from './signal-order.ts';

/** A hazard at the step of a task that meets it. */
export interface TaskHazard {
  /** The kind's name for it. */
  readonly name: string;
  readonly label: string;
  readonly signal: SignalWord;
  /** `WARNING`. */
  readonly word: string;
  /** Whether the alert symbol stands with it: not for NOTICE, which is about things, not people. */
  readonly alert: boolean;
  /** How to avoid it, in one imperative. */
  readonly imperative: string;
  /** The step before which it is said, by its index among those of the operation. */
  readonly step: number;
  /** Whether no task before meets it: before this one its full words belong. */
  readonly first: boolean;
  /** Whether the task before meets it too: what is dangerous goes on. */
  readonly goesOn: boolean;
}

/**
 * The hazards of every task, by the operation's index, in falling order of harm: those that the kind, as
 * the sheet rules it, says its steps meet, and those that the sheet's own messages in it name. An
 * operation without steps meets none.
 */
export function taskHazards(sheet: Sheet): ReadonlyMap<number, readonly TaskHazard[]> {
  const { kind } = sheet;
  const found = new Map<number, readonly TaskHazard[]>();
  if (kind === null) return found;
  const { operations } = sheet.work.length === 0 ? kind : ownRules(sheet, kind).kind;
  const met = new Set<string>();
  let before: ReadonlySet<string> = new Set();
  for (const operation of sheet.operations) {
    const { known, steps, index } = operation;
    if (steps.length === 0) continue;
    const told = sheet.messages.filter((message) => message.operation === index);
    const names = new Set([
      ...(known === null ? [] : (operations.get(known.name) ?? known).hazards),
      ...told.flatMap(({ hazards }) => hazards.flatMap((named) => named.known?.name ?? [])),
    ]);
    if (names.size === 0 && (known === null || known.stage === 'any')) continue;
    const here = [...kind.hazards.values()].filter(({ name }) => names.has(name));
    found.set(
      index,
      here
        .map((hazard) => ({
          name: hazard.name,
          label: hazard.label,
          signal: hazard.signal,
          word: hazard.signal.toUpperCase(),
          alert: hazard.signal !== 'notice',
          imperative: hazard.message.imperative,
          step: stepOf(hazard, operation, sheet),
          first: !met.has(hazard.name),
          goesOn: before.has(hazard.name),
        }))
        .sort((one, two) => signalOrder.indexOf(one.signal) - signalOrder.indexOf(two.signal)),
    );
    for (const name of names) met.add(name);
    before = names;
  }
  return found;
}

/** The first step behind the sheet's own message that has a word of the hazard, else the first there. */
function stepOf({ name, metBy }: KindHazard, { index, steps }: Operation, sheet: Sheet): number {
  const message = sheet.messages.find(
    ({ operation, hazards }) =>
      operation === index && hazards.some(({ known }) => known?.name === name),
  );
  const from = steps.findIndex(({ span }) => span.start >= (message?.span.end ?? 0));
  const least = Math.max(0, from);
  const meets = steps.findIndex(({ span }, at) => {
    if (at < least) return false;
    const words = plain(sheet.text.slice(span.start, span.end));
    return metBy.some((each) => words.includes(plain(each)));
  });
  return meets < 0 ? least : meets;
}

/** Words in small letters, a space around each. */
function plain(text: string): string {
  return ` ${
    text
      .toLowerCase()
      .match(/[\p{L}\d]+/gu)
      ?.join(' ') ?? ''
  } `;
}
