import type { CautionSnapshot, Change, OperationSnapshot } from './model.ts';
import { pairUp } from './pairing.ts';
import { sameSubstance } from './substance.ts';

interface LooseStep {
  readonly text: string;
  readonly operation: OperationSnapshot;
  readonly number: number;
  used: boolean;
}

/** Everything in which the work under the headings differs from what it was. */
export function workChanges(
  before: readonly OperationSnapshot[],
  after: readonly OperationSnapshot[],
): Change[] {
  const changes: Change[] = [];
  const { pairs, dropped, added } = pairUp(keys(before), keys(after), 'equal');
  const lost: LooseStep[] = [];
  const fresh: LooseStep[] = [];
  const lostCautions: [CautionSnapshot, OperationSnapshot][] = [];
  const freshCautions: [CautionSnapshot, OperationSnapshot][] = [];
  for (const at of dropped) {
    const operation = before[at] as OperationSnapshot;
    changes.push(change('operation-dropped', 'substance', operation, operation.heading, null));
    for (const caution of operation.cautions) lostCautions.push([caution, operation]);
  }
  for (const pair of pairs) {
    const old = before[pair.before] as OperationSnapshot;
    const now = after[pair.after] as OperationSnapshot;
    if (pair.moved) {
      changes.push(
        change(
          'operation-moved',
          'substance',
          now,
          follows(before, pair.before),
          follows(after, pair.after),
        ),
      );
    }
    if (old.heading !== now.heading) {
      changes.push(change('operation-retitled', 'wording', now, old.heading, now.heading));
    }
    compareSteps(old, now, changes, lost, fresh);
    compareCautions(old, now, changes, lostCautions, freshCautions);
    if (old.prose !== now.prose) {
      const weight = sameSubstance(old.prose, now.prose) ? 'wording' : 'substance';
      changes.push(change('text-reworded', weight, now, old.prose, now.prose));
    }
  }
  for (const at of added) {
    const operation = after[at] as OperationSnapshot;
    changes.push(change('operation-added', 'substance', operation, null, operation.heading));
    for (const caution of operation.cautions) freshCautions.push([caution, operation]);
  }
  settleSteps(lost, fresh, changes);
  settleCautions(lostCautions, freshCautions, changes);
  return changes;
}

/** Names of operations, the second of a name told apart from the first. */
function keys(operations: readonly OperationSnapshot[]): string[] {
  const seen = new Map<string, number>();
  return operations.map(({ name }) => {
    const count = (seen.get(name) ?? 0) + 1;
    seen.set(name, count);
    return count === 1 ? name : `${name} ${count}`;
  });
}

function change(
  kind: Change['kind'],
  weight: Change['weight'],
  operation: OperationSnapshot,
  before: string | null,
  after: string | null,
): Change {
  return {
    kind,
    weight,
    about: operation.name,
    label: operation.heading,
    before,
    after,
    size: null,
  };
}

/** `after Float drop`, or that it stands first. */
function follows(operations: readonly OperationSnapshot[], at: number): string {
  const previous = operations[at - 1];
  return previous ? `after ${previous.heading}` : 'first';
}

function compareSteps(
  old: OperationSnapshot,
  now: OperationSnapshot,
  changes: Change[],
  lost: LooseStep[],
  fresh: LooseStep[],
): void {
  const [before, after] = [old.steps.map(({ text }) => text), now.steps.map(({ text }) => text)];
  const { pairs, dropped, added } = pairUp(before, after);
  for (const pair of pairs) {
    const [one, two] = [before[pair.before] as string, after[pair.after] as string];
    if (pair.moved) {
      changes.push(
        change(
          'step-moved',
          'substance',
          now,
          `step ${pair.before + 1}: ${one}`,
          `step ${pair.after + 1}`,
        ),
      );
    }
    if (one === two) continue;
    const same = sameSubstance(one, two);
    changes.push(
      change(
        same ? 'step-reworded' : 'step-changed',
        same ? 'wording' : 'substance',
        now,
        one,
        two,
      ),
    );
  }
  const loose = (operation: OperationSnapshot) => (i: number) => ({
    text: operation.steps[i]?.text ?? '',
    operation,
    number: i + 1,
    used: false,
  });
  lost.push(...dropped.map(loose(old)));
  fresh.push(...added.map(loose(now)));
}

/** A step that is gone here and new there has moved from one operation to the other. */
function settleSteps(lost: LooseStep[], fresh: LooseStep[], changes: Change[]): void {
  for (const step of fresh) {
    const from = lost.find((old) => !old.used && old.text === step.text);
    if (from) from.used = true;
    changes.push(
      from
        ? change(
            'step-moved',
            'substance',
            step.operation,
            `${from.operation.heading}, step ${from.number}: ${from.text}`,
            `${step.operation.heading}, step ${step.number}`,
          )
        : change('step-added', 'substance', step.operation, null, step.text),
    );
  }
  for (const step of lost) {
    if (!step.used)
      changes.push(change('step-dropped', 'substance', step.operation, step.text, null));
  }
}

function compareCautions(
  old: OperationSnapshot,
  now: OperationSnapshot,
  changes: Change[],
  lost: [CautionSnapshot, OperationSnapshot][],
  fresh: [CautionSnapshot, OperationSnapshot][],
): void {
  const named = (caution: CautionSnapshot) => caution.hazards.join(', ') || caution.text;
  const { pairs, dropped, added } = pairUp(
    old.cautions.map(named),
    now.cautions.map(named),
    'equal',
  );
  for (const pair of pairs) {
    const [one, two] = [old.cautions[pair.before], now.cautions[pair.after]];
    if (one && two) pushCaution(one, two, now, changes);
  }
  for (const at of dropped) lost.push([old.cautions[at] as CautionSnapshot, old]);
  for (const at of added) fresh.push([now.cautions[at] as CautionSnapshot, now]);
}

function pushCaution(
  one: CautionSnapshot,
  two: CautionSnapshot,
  operation: OperationSnapshot,
  changes: Change[],
): void {
  if (one.signal === two.signal && one.text === two.text) return;
  const same = one.signal === two.signal && sameSubstance(one.text, two.text);
  changes.push(
    change(
      same ? 'caution-reworded' : 'caution-changed',
      same ? 'wording' : 'substance',
      operation,
      cautionText(one, one.text !== two.text),
      cautionText(two, one.text !== two.text),
    ),
  );
}

function settleCautions(
  lost: readonly [CautionSnapshot, OperationSnapshot][],
  fresh: readonly [CautionSnapshot, OperationSnapshot][],
  changes: Change[],
): void {
  const left = [...lost];
  for (const [caution, operation] of fresh) {
    const at = left.findIndex(([old]) => old.hazards.join() === caution.hazards.join());
    const from = at < 0 ? undefined : left.splice(at, 1)[0];
    if (!from) {
      changes.push(change('caution-added', 'substance', operation, null, cautionText(caution)));
      continue;
    }
    changes.push(
      change(
        'caution-moved',
        'substance',
        operation,
        `${from[1].heading}: ${cautionText(from[0])}`,
        operation.heading,
      ),
    );
    pushCaution(from[0], caution, operation, changes);
  }
  for (const [caution, operation] of left) {
    changes.push(change('caution-dropped', 'substance', operation, cautionText(caution), null));
  }
}

/** `WARNING (solvent): ...`; without its words where those are the same. */
function cautionText({ signal, hazards, text }: CautionSnapshot, whole = true): string {
  const of = hazards.length === 0 ? '' : ` (${hazards.join(', ')})`;
  return `${signal.toUpperCase()}${of}${whole ? `: ${text}` : ''}`;
}
