import type { Kind } from '../kinds/model.ts';
import { ownRules } from '../order/index.ts';
import { operationIn } from '../sheet/index.ts';
import type { Operation, SafetyMessage, Sheet } from '../sheet/model.ts';
import { nearest, wordsOf } from './vocabulary.ts';

/** The first operation of a sheet that meets a hazard, and the messages about that hazard. */
export interface Meeting {
  readonly hazard: string;
  readonly operation: Operation;
  /** Where the work that meets it starts: the first step, or the operation's end if it has none. */
  readonly from: number;
  /** In the order of the file; empty where the sheet has none. */
  readonly messages: readonly SafetyMessage[];
}

/** Every hazard that the operations of a sheet meet, in the order in which they are met. */
export function hazardsMet(sheet: Sheet, kind: Kind): readonly Meeting[] {
  const told = messagesByHazard(sheet, kind);
  const met = new Map<string, Meeting>();
  const ruled = sheet.work.length === 0 ? kind : ownRules(sheet, kind).kind;
  // A sheet may say that an operation meets other hazards on its unit.
  const here = (operation: Operation): readonly string[] =>
    (operationIn(ruled, operation) ?? operation.known)?.hazards ?? [];
  for (const operation of sheet.operations) {
    for (const hazard of here(operation)) {
      if (met.has(hazard)) continue;
      const from = operation.steps[0]?.span.start ?? operation.span.end;
      met.set(hazard, { hazard, operation, from, messages: told.get(hazard) ?? [] });
    }
  }
  return [...met.values()];
}

/**
 * Messages under the kind's name of each hazard they name. A misspelt hazard counts as the one it
 * is near to: it has a finding of its own and does not leave the caution missing as well.
 */
function messagesByHazard(sheet: Sheet, kind: Kind): ReadonlyMap<string, readonly SafetyMessage[]> {
  const told = new Map<string, SafetyMessage[]>();
  for (const message of sheet.messages) {
    for (const { value, known } of message.hazards) {
      const near = known === null ? nearest(value, wordsOf(kind.hazards)) : null;
      const name = (known ?? kind.hazardNamed(near ?? ''))?.name;
      if (name === undefined) continue;
      const messages = told.get(name);
      if (messages === undefined) told.set(name, [message]);
      else messages.push(message);
    }
  }
  return told;
}
