import type { Kind } from '../kinds/model.ts';
import { agree } from '../quantity/index.ts';
import type { Sheet } from '../sheet/model.ts';
import type { ListedUnit } from './listed-unit.ts';
import { readSize, type SizeTools } from './written-size.ts';

/** A setting that a list states otherwise than the unit's sheet. */
export interface ListedDifference {
  readonly setting: string;
  /** As the sheet writes it; null where it does not state it. */
  readonly there: string | null;
  /** As the list writes it, and where: `D17`. */
  readonly value: string;
  readonly cell: string;
}

/** What a list says of a unit otherwise than its sheet, in the list's order; none where they agree. */
export function listedDifferences(
  sheet: Sheet,
  unit: ListedUnit,
  kind: Kind,
  tools: SizeTools,
): readonly ListedDifference[] {
  const values = new Map(
    [...sheet.settings.values()].map((setting) => [setting.id, setting.value?.text ?? null]),
  );
  const found: ListedDifference[] = [];
  for (const { name: setting, value, cell } of unit.settings.values()) {
    if (value === null || cell === null) continue;
    const there = values.get(setting) ?? null;
    if (there !== null && isSame(there, setting, value, kind, tools)) continue;
    found.push({ setting, there, value, cell });
  }
  return found;
}

function isSame(
  there: string,
  setting: string,
  value: string,
  kind: Kind,
  tools: SizeTools,
): boolean {
  if (there.trim() === value) return true;
  const dimensions = kind.settings.get(setting)?.dimensions ?? [];
  const [one, two] = [readSize(there, dimensions, tools), readSize(value, dimensions, tools)];
  if (!one.ok || !two.ok) return false;
  const { verdict } = agree(one.statement, two.statement, { gauges: tools.gauges });
  return verdict === 'same' || verdict === 'agrees';
}
