import type { Finding } from '../checks/define.ts';

/** A doubtful point that the editor let stand, and why. */
export interface EditorsNote {
  readonly point: string;
  readonly reason: string;
}

/** The accepted findings as notes to print, in the order of the sheet. */
export function editorsNotes(findings: readonly Finding[]): EditorsNote[] {
  const seen = new Set<string>();
  const notes: EditorsNote[] = [];
  for (const finding of findings) {
    if (finding.accepted === null) continue;
    const note = { point: finding.message, reason: finding.accepted };
    const key = `${note.point}\n${note.reason}`;
    if (!seen.has(key)) notes.push(note);
    seen.add(key);
  }
  return notes;
}
