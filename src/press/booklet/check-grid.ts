import { stageRank } from '../../order/index.ts';
import { settingLabel, tasksOf } from '../../sheet/index.ts';
import type { Setting, Sheet } from '../../sheet/model.ts';

/** One thing to look at for a symptom. */
export interface Check {
  /** The number that its setting goes by: `5`, `5a`. */
  readonly number: string;
  readonly label: string;
  /** `too high`. */
  readonly way: string;
  /** How many columns it takes: the last of a row has those that are left. */
  readonly span: number;
}

/** A symptom of one unit, and what to look at, the cheapest first. */
export interface CheckRow {
  readonly symptom: string;
  /** `checksAcross` at most. */
  readonly checks: readonly Check[];
  /** The numbers of those beyond them, parted by commas; null for none. */
  readonly rest: string | null;
}

/** How many checks stand side by side. */
export const checksAcross = 3;

/**
 * What may be out on a unit, symptom by symptom. What is cheap to look at comes first, by the kind's own data:
 * what is set on a running engine before what is set on a stopped one or on the bench, and of one stage what
 * needs the fewest parts in a state of their own; then the order of work.
 */
export function checkGrid(sheet: Sheet): readonly CheckRow[] {
  const { kind } = sheet;
  if (kind === null) return [];
  const made = tasksOf(sheet);
  const order = [...made.settings]
    .map(({ number, task, setting }, at) => {
      const operation = made.tasks.find((each) => each.number === task)?.operation.known ?? null;
      return { number, setting, at, cost: costOf(setting, operation) };
    })
    .sort((a, b) => b.cost.stage - a.cost.stage || a.cost.needs - b.cost.needs || a.at - b.at);
  const rows = new Map<string, Omit<Check, 'span'>[]>();
  for (const { number, setting } of order) {
    for (const [way, symptoms] of setting.known?.symptoms ?? []) {
      for (const symptom of symptoms) {
        const list = rows.get(symptom) ?? [];
        rows.set(symptom, list);
        list.push({ number, label: settingLabel(setting), way });
      }
    }
  }
  return [...rows]
    .sort(([first], [second]) => (first < second ? -1 : 1))
    .map(([symptom, all]) => ({
      symptom: symptom.charAt(0).toUpperCase() + symptom.slice(1),
      checks: all.slice(0, checksAcross).map((check, at, shown) => ({
        ...check,
        span: at < shown.length - 1 ? 1 : checksAcross - at,
      })),
      rest:
        all.length <= checksAcross
          ? null
          : all
              .slice(checksAcross)
              .map(({ number }) => number)
              .join(', '),
    }));
}

function costOf(
  setting: Setting,
  operation: {
    readonly stage: Parameters<typeof stageRank>[0];
    readonly needs: readonly unknown[];
  } | null,
): { stage: number; needs: number } {
  if (operation === null) return { stage: -1, needs: 0 };
  const needs = operation.needs.length + (setting.known?.needs.length ?? 0);
  return { stage: stageRank(operation.stage), needs };
}
