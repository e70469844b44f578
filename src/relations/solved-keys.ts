import type { Setting, Sheet } from '../sheet/model.ts';
import { relations } from './formulas/list.ts';

/**
 * Keys beside a setting's value that some formula of its kind works out, and that need not be said: they
 * follow from other figures, and nobody has to know them to measure the setting.
 */
export function solvedKeys({ id, known }: Setting, { kind }: Sheet): ReadonlySet<string> {
  const needed = new Set(known?.mustSay ?? []);
  for (const other of known?.saidBy.values() ?? []) for (const key of other) needed.add(key);
  const found = new Set<string>();
  for (const { relation, quantities } of kind?.relations.bindings ?? []) {
    const formula = relations.find((each) => each.id === relation);
    const solved = new Set(formula?.solutions.map((each) => each.for));
    for (const [name, place] of quantities) {
      if (place.is !== 'setting' || place.setting !== id || place.key === null) continue;
      if (solved.has(name) && !needed.has(place.key)) found.add(place.key);
    }
  }
  return found;
}
