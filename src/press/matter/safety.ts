import type { SignalWord } from '../../kinds/model.ts';
import type { Sheet } from '../../sheet/model.ts';
import { signalOrder } from './signal-order.ts';
import { taskHazards } from './task-hazards.ts';

/** A safety message in its three parts, as the kind of unit words it. */
export interface SafetyLine {
  readonly signal: SignalWord;
  /** `WARNING`. */
  readonly word: string;
  /** Whether the alert symbol stands with it: not for NOTICE, which is about things, not people. */
  readonly alert: boolean;
  readonly label: string;
  readonly hazard: string;
  readonly consequence: string;
  readonly avoid: string;
  /** How to avoid it, in one imperative. */
  readonly imperative: string;
}

/**
 * The hazards that a sheet's work meets (by its operations) or names (in its own messages), in
 * falling order of harm and then in the kind's order; none where the kind is not known.
 */
export function safetyLines(sheets: readonly { readonly sheet: Sheet }[]): SafetyLine[] {
  const lines = new Map<string, SafetyLine>();
  for (const { sheet } of sheets) {
    const { kind } = sheet;
    if (kind === null) continue;
    const met = hazardsMet(sheet);
    for (const hazard of kind.hazards.values()) {
      const key = `${kind.name}/${hazard.name}`;
      if (!met.has(hazard.name) || lines.has(key)) continue;
      const same = [...lines.values()].some((line) => line.avoid === hazard.message.avoid);
      if (same) continue;
      lines.set(key, {
        signal: hazard.signal,
        word: hazard.signal.toUpperCase(),
        alert: hazard.signal !== 'notice',
        label: hazard.label,
        ...hazard.message,
      });
    }
  }
  return [...lines.values()].sort(
    (first, second) => signalOrder.indexOf(first.signal) - signalOrder.indexOf(second.signal),
  );
}

function hazardsMet(sheet: Sheet): Set<string> {
  const inWork = [...taskHazards(sheet).values()].flat().map(({ name }) => name);
  const told = sheet.messages.flatMap(({ hazards }) =>
    hazards.flatMap(({ known }) => known?.name ?? []),
  );
  return new Set([...inWork, ...told]);
}
