import type { SignalWord } from '../../kinds/model.ts';
import type { Sheet } from '../../sheet/model.ts';

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
}

/** The signal words of ANSI Z535.6 in falling order of harm. */
export const signalOrder: readonly SignalWord[] = ['danger', 'warning', 'caution', 'notice'];

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
  const met = new Set<string>();
  for (const operation of sheet.operations) {
    const { known } = operation;
    for (const name of known?.hazards ?? []) met.add(name);
  }
  for (const message of sheet.messages) {
    for (const hazard of message.hazards) {
      const { known } = hazard;
      if (known) met.add(known.name);
    }
  }
  return met;
}
