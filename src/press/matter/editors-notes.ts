import type { Finding } from '../../checks/index.ts';
import type { Kind } from '../../kinds/model.ts';

/** A doubtful point that the editor let stand, and why. */
export interface EditorsNote {
  readonly point: string;
  readonly reason: string;
}

/** The accepted findings as notes to print, in the order of the sheet. */
export function editorsNotes(findings: readonly Finding[], kind: Kind | null): EditorsNote[] {
  const seen = new Set<string>();
  const notes: EditorsNote[] = [];
  for (const finding of findings) {
    if (finding.accepted === null) continue;
    const note = { point: plainPoint(finding.message, kind), reason: finding.accepted };
    const key = `${note.point}\n${note.reason}`;
    if (!seen.has(key)) notes.push(note);
    seen.add(key);
  }
  return notes;
}

/** Keys that an editor writes, as the reader of a card would say them. */
const KEYS: ReadonlyMap<string, string> = new Map([
  ['also', 'the same size written another way'],
  ['value', 'the value'],
  ['gauge', 'the gauge'],
  ['go', 'the go gauge'],
  ['no-go', 'the no-go gauge'],
  ['at', 'where it is measured'],
  ['from', 'the source'],
  ['but', 'a source that differs'],
  ['travel', 'the travel'],
]);

/**
 * A finding as a sentence for the bench: what stands in backquotes for an editor is told by the label that
 * the card prints, `float-level` as “Float level”, and begins with a capital.
 */
export function plainPoint(message: string, kind: Kind | null): string {
  const plain = message.replace(/`([^`]*)`/g, (_all, name: string) => labelOf(name, kind));
  return plain.charAt(0).toUpperCase() + plain.slice(1);
}

function labelOf(written: string, kind: Kind | null): string {
  const name = /^:(?:value|state)\[(.*)\]$/.exec(written)?.[1] ?? written;
  const key = KEYS.get(name);
  if (key !== undefined) return key;
  const known =
    kind?.settings.get(name) ??
    kind?.operations.get(name) ??
    kind?.features.get(name) ??
    kind?.hazards.get(name) ??
    kind?.parts.get(name);
  if (known) return `“${known.label}”`;
  return /^[a-z]+(?:-[a-z]+)+$/.test(name) ? name.replace(/-/g, ' ') : name;
}
