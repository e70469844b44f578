import type { Imposed, Imposition } from './impose.ts';

/** How the sheets are printed, folded and bound, a line each. */
export function howToFold(
  imposed: Imposed,
  how: Pick<Imposition, 'sheetsInSignature' | 'thicknessMm'>,
): string[] {
  const { sheets, signatures, blanks, sheetLabel, creepMm } = imposed;
  const count = `${sheets.length} ${sheets.length === 1 ? 'sheet' : 'sheets'} of ${sheetLabel}`;
  const blank =
    blanks === 0
      ? 'no blank page'
      : `${blanks} blank ${blanks === 1 ? 'page' : 'pages'} at the end`;
  const lines = [
    `${count}, ${blank}: print on both sides, flipped on the short edge, at 100 % with no fitting`,
  ];
  if (signatures.length > 1) {
    const why = how.sheetsInSignature === null ? ', for one fold would be too thick' : '';
    lines.push(
      `${signatures.length} signatures of ${listed(signatures)} sheets${why}: fold each, lay them side by side in order, and sew or glue their backs`,
    );
  } else {
    lines.push('fold the sheets together, and staple them through the fold');
  }
  if (creepMm > 0) {
    lines.push(`pages in the middle stand ${creepMm.toFixed(2)} mm nearer to the fold`);
  } else if (Math.max(...signatures) > 1 && how.thicknessMm === null) {
    lines.push(
      'no allowance for creep: if the fore edge is trimmed, give --paper-thickness (0.1 for ordinary paper)',
    );
  }
  return lines;
}

/** `8, 7, 7 and 7`; `8` where all are alike. */
function listed(counts: readonly number[]): string {
  if (new Set(counts).size === 1) return String(counts[0]);
  return `${counts.slice(0, -1).join(', ')} and ${counts.at(-1)}`;
}
