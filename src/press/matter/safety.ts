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

/** How one kind of unit words a hazard that several have. */
interface SafetyWords {
  /** `Carburetor`; null where all word it alike. */
  readonly kind: string | null;
  readonly hazard: string;
  readonly consequence: string;
  readonly avoid: string;
}

/** A hazard in the words of every kind that has it. */
interface SharedSafety extends Omit<SafetyLine, 'hazard' | 'consequence' | 'avoid' | 'imperative'> {
  readonly words: readonly SafetyWords[];
}

/** The cautions of all kinds of unit together, or of one kind alone. */
export interface SafetyGroup {
  /** The kind's title; null for what holds for all. */
  readonly kind: string | null;
  readonly lines: readonly SharedSafety[];
}

/**
 * The hazards that the work of an edition meets, none twice: those of one name first, which all its kinds of
 * unit have, each in the words of every kind that words it otherwise; then those of each kind alone.
 */
export function safetyGroups(sheets: readonly { readonly sheet: Sheet }[]): readonly SafetyGroup[] {
  const kinds = [...new Set(sheets.map(({ sheet }) => sheet.kind))].flatMap((kind) => kind ?? []);
  const byKind = kinds.map((kind) => ({
    kind,
    lines: safetyLines(sheets.filter(({ sheet }) => sheet.kind === kind)),
  }));
  const shared = (label: string) =>
    kinds.length > 1 && byKind.every(({ lines }) => lines.some((line) => line.label === label));
  const words = (label: string) =>
    byKind.flatMap(({ kind, lines }) =>
      lines.filter((line) => line.label === label).map((line) => ({ ...line, kind: kind.title })),
    );
  const all = (byKind[0]?.lines ?? [])
    .filter(({ label }) => shared(label))
    .map((line) => sharedLine(line, words(line.label)));
  const own = byKind.map(({ kind, lines }) => ({
    kind: kinds.length > 1 ? kind.title : null,
    lines: lines
      .filter(({ label }) => !shared(label))
      .map((line) => sharedLine(line, [{ ...line, kind: kind.title }])),
  }));
  return [{ kind: null, lines: all }, ...own].filter(({ lines }) => lines.length > 0);
}

function sharedLine(
  { signal, word, alert, label }: SafetyLine,
  worded: readonly (SafetyLine & { readonly kind: string })[],
): SharedSafety {
  const texts = new Set(
    worded.map(({ hazard, consequence, avoid }) => `${hazard} ${consequence} ${avoid}`),
  );
  const words = (texts.size === 1 ? worded.slice(0, 1) : worded).map(
    ({ kind, hazard, consequence, avoid }) => ({
      kind: texts.size === 1 ? null : kind,
      hazard,
      consequence,
      avoid,
    }),
  );
  return { signal, word, alert, label, words };
}

function hazardsMet(sheet: Sheet): Set<string> {
  const inWork = [...taskHazards(sheet).values()].flat().map(({ name }) => name);
  const told = sheet.messages.flatMap(({ hazards }) =>
    hazards.flatMap(({ known }) => known?.name ?? []),
  );
  return new Set([...inWork, ...told]);
}
