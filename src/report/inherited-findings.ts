import type { FileReport, PlacedFinding } from './placed.ts';

/**
 * Findings of variants that stand in the file of their base. Most are the base's own and told there;
 * the others, which come of what a variant states, are told once, when all sheets have been read.
 */
export class InheritedFindings {
  readonly #told = new Set<string>();
  readonly #held = new Map<string, PlacedFinding>();

  /** Remembers what was told of a file when it was itself checked. */
  told({ findings }: FileReport): void {
    for (const finding of findings) this.#told.add(keyOf(finding));
  }

  /** Keeps what was found in a base's file through a variant, which is named by its file. */
  hold({ findings }: FileReport, variant: string): void {
    for (const finding of findings) {
      const key = keyOf(finding);
      if (this.#held.has(key)) continue;
      const start = { line: 1, column: 1, endLine: 1, endColumn: 1 };
      const through = { ...start, label: 'which is based on this', file: variant };
      this.#held.set(key, { ...finding, related: [...finding.related, through] });
    }
  }

  /** What was held and not told where it stands, file by file. */
  rest(): readonly FileReport[] {
    const reports = new Map<string, PlacedFinding[]>();
    for (const [key, finding] of this.#held) {
      if (this.#told.has(key)) continue;
      const known = reports.get(finding.file);
      if (known) known.push(finding);
      else reports.set(finding.file, [finding]);
    }
    return [...reports].map(([file, findings]) => ({ file, findings }));
  }
}

function keyOf({ file, line, column, name, message }: PlacedFinding): string {
  return `${file}\n${line}:${column} ${name} ${message}`;
}
