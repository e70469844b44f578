import type { Kind, KindOperation } from '../../kinds/model.ts';
import { ownRules } from '../../order/index.ts';
import type { Sheet } from '../../sheet/model.ts';
import type { EditorsNote } from './editors-notes.ts';

/**
 * What a sheet's own rules take from its kind's order of work, with the editor's reasons, as notes to
 * print: who knows the usual order has to learn that this unit differs. A rule that takes nothing
 * away, or that gives no reason (an error finding), has no note.
 */
export function ruleNotes(sheet: Sheet): EditorsNote[] {
  const { kind } = sheet;
  if (kind === null) return [];
  const own = ownRules(sheet, kind).kind;
  return sheet.work.flatMap(({ operation, because }) => {
    const usual = kind.operationNamed(operation.value);
    const here = usual && own.operations.get(usual.name);
    if (!usual || !here || because === null) return [];
    const taken = takenAway(usual, here, kind);
    if (taken.length === 0) return [];
    const point = `On this unit “${usual.label}” ${listed(taken, 'and')}:`;
    return [{ point, reason: because.value }];
  });
}

function takenAway(usual: KindOperation, here: KindOperation, kind: Kind): readonly string[] {
  const after = [...usual.before.keys()]
    .filter((name) => !here.before.has(name))
    .map((name) => `“${kind.operations.get(name)?.label ?? name}”`);
  const still = new Set(here.disturbs.map(({ name }) => name));
  const disturbs = usual.disturbs
    .filter(({ name }) => !still.has(name))
    .map(({ name }) => `“${kind.settings.get(name)?.label ?? name}”`);
  const asked = partsAsked(here);
  const needs = [...partsAsked(usual)]
    .filter((name) => !asked.has(name))
    .map((name) => `the ${kind.parts.get(name)?.label ?? name}`);
  return [
    ...(after.length > 0 ? [`need not come after ${listed(after, 'or')}`] : []),
    ...(needs.length > 0 ? [`asks nothing of ${listed(needs, 'or')}`] : []),
    ...(disturbs.length > 0 ? [`does not disturb ${listed(disturbs, 'or')}`] : []),
  ];
}

function partsAsked({ needs, needsSaid }: KindOperation): ReadonlySet<string> {
  return new Set([...needs.map(({ part }) => part), ...needsSaid.keys()]);
}

function listed(words: readonly string[], joint: 'and' | 'or'): string {
  const last = words.at(-1) ?? '';
  return words.length < 2 ? last : `${words.slice(0, -1).join(', ')} ${joint} ${last}`;
}
