import type { Operation, Sheet } from '../../sheet/model.ts';

/**
 * What an operation leaves otherwise than it found it, by its marks: `bowl cover inverted, cover gasket off`.
 * Null where it says nothing of any state, or the kind is not known.
 */
export function endState(sheet: Sheet, operation: Operation): string | null {
  const { kind } = sheet;
  if (kind === null) return null;
  const before = new Map<string, string>();
  const left = new Map<string, string>();
  for (const { text, operation: at } of sheet.states) {
    const state = kind.stateNamed(text);
    if (state === null || at === null || at > operation.index) continue;
    (at < operation.index ? before : left).set(state.part, state.condition);
  }
  const words = [...left].flatMap(([name, condition]) => {
    const part = kind.parts.get(name);
    if (part === undefined || (before.get(name) ?? part.starts) === condition) return [];
    return [`${part.label} ${part.conditions.get(condition)?.says ?? condition}`];
  });
  return words.length === 0 ? null : words.join(', ');
}
