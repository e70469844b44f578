import type { Kind, KindPart } from '../kinds/model.ts';
import { type Proof, proveOrder } from '../order/index.ts';
import type { OrderFault } from '../order/model.ts';
import { operationIn } from '../sheet/index.ts';
import type { Operation, Sheet } from '../sheet/model.ts';
import { oncePer, type Span } from '../text/index.ts';

/** The proof of a sheet's order; null where its kind is unknown. Made once a sheet, for all its checks. */
export const orderProof = oncePer(
  (sheet: Sheet): Proof | null => sheet.kind && proveOrder(sheet, sheet.kind),
);

/** Conditions of a part as the kind says them in a sentence: `on its slow step`, `set or at first contact`. */
export function conditionWords(kind: Kind, part: string, conditions: readonly string[]): string {
  const known = kind.parts.get(part)?.conditions;
  return conditions.map((each) => known?.get(each)?.says ?? each.replaceAll('-', ' ')).join(' or ');
}

/** The instruction of a step that brings a part into a condition, with its mark; the mark alone where none is known. */
export function stepFor(kind: Kind, part: string, condition: string): string {
  const instruction = kind.parts.get(part)?.conditions.get(condition)?.instruction;
  const mark = markFor(kind, part, condition);
  return instruction ? `${instruction}. ${mark}` : mark;
}

/** What says a state: words of a step, or the heading of an operation that leaves the unit so. */
export function saying(span: Span, sheet: Sheet): { readonly what: string; isHeading: boolean } {
  const heading = sheet.operations.find((each) => each.heading.span.start === span.start)?.heading;
  if (heading) return { what: `the heading \`${heading.value}\``, isHeading: true };
  const words = sheet.text.slice(span.start, span.end).replace(/\s+/g, ' ');
  return { what: `the words “${words}”`, isHeading: false };
}

/** A part's label; its name where the kind does not know it. */
export function partLabel(kind: Kind, part: string): string {
  return kind.parts.get(part)?.label ?? part;
}

/**
 * A mark as an editor types it: `:state[throttle shut]`. By the part's label where that is one plain
 * word and means the same: `:state[engine hot]`, not the temperature.
 */
export function markFor(kind: Kind, part: string, condition: string): string {
  return `:state[${markText(kind, part, condition)}]`;
}

/** What stands in the brackets of `markFor`. */
export function markText(kind: Kind, part: string, condition: string): string {
  const label = partLabel(kind, part);
  const meant = /^\p{L}+$/u.test(label) ? kind.stateNamed(`${label} ${condition}`) : null;
  const isSame = meant?.part === part && meant.condition === condition;
  return `${isSame ? label : part} ${condition}`;
}

/** The lines under `work:` by which a sheet overrules what is behind some faults, with room for its reason. */
export function overruling(faults: readonly OrderFault[], kind: Kind): string | null {
  const rules = new Map<string, { needs: Set<string>; disturbs: Set<string> }>();
  const of = (operation: string) => {
    const known = rules.get(operation) ?? { needs: new Set(), disturbs: new Set() };
    rules.set(operation, known);
    return known;
  };
  for (const fault of faults) {
    if (fault.kind === 'unmet') of(fault.operation.known?.name ?? '').needs.add(fault.need.part);
    if (fault.kind === 'disturbed') {
      const by = operationIn(kind, fault.by);
      if (by?.disturbs.some(({ name }) => name === fault.setting))
        of(by.name).disturbs.add(fault.setting);
    }
  }
  rules.delete('');
  const [rule] = rules;
  if (rule === undefined || rules.size > 1) return null;
  const [operation, { needs, disturbs }] = rule;
  const lists = [
    ...(needs.size > 0 ? [`needs: [${[...needs].join(', ')}]`] : []),
    ...(disturbs.size > 0 ? [`disturbs: [${[...disturbs].join(', ')}]`] : []),
  ];
  return `${operation}: { without: { ${lists.join(', ')} }, because: ... }`;
}

/** The end of a remedy that says how a sheet overrules the rule behind it. */
export function orOverrule(rule: string | null): string {
  return rule === null
    ? '; or overrule it under `work:`, with what is different on this unit'
    : `; or, where it does not hold on this unit, add under \`work:\` \`${rule}\``;
}

/** The part whose coming into one of its conditions is the start; null for a kind without one. */
export function startingPart(kind: Kind): KindPart | null {
  for (const part of kind.parts.values()) {
    for (const { startsUp } of part.conditions.values()) if (startsUp) return part;
  }
  return null;
}

/** `Unloader`, `Fast idle gap` and so on: headings in backticks, for people. */
export function headingsOf(operations: readonly Operation[]): readonly string[] {
  return operations.map(({ heading }) => heading.value);
}

/** The number that a step added at the end of an operation has. */
export function nextStep({ steps }: Operation): string {
  return String((steps.at(-1)?.number ?? 0) + 1);
}
