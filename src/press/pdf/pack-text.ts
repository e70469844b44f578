/** Advance by glyph, in thousandths of the size. */
export type Advances = readonly number[];

/** A line of glyphs as Chromium writes it: font, place, then each glyph moved to by itself. */
const run =
  /(\/([\w.+-]+) ([\d.]+) Tf\n(?:-?[\d.]+ ){6}Tm\n)((?:(?:-?[\d.]+ 0 Td )?<[0-9A-Fa-f]+> Tj\n)+)/g;

/**
 * Writes the lines of a page's content the short way (ISO 32000-1, 9.4.3): glyphs that follow each
 * other by their own advance in one string, with the difference between them where they do not. No
 * glyph moves by more than half a thousandth of its size. Lines in other forms stay as they are.
 */
export function packText(content: string, advancesOf: (font: string) => Advances | null): string {
  return content.replace(run, (whole, start: string, font: string, size: string, moves: string) => {
    const advances = advancesOf(font);
    const packed = advances === null ? null : shortened(moves, Number(size), advances);
    return packed === null ? whole : `${start}${packed}`;
  });
}

function shortened(moves: string, size: number, advances: Advances): string | null {
  let line = 0;
  let pen = 0;
  let glyphs = '';
  let array = '';
  for (const [, move, hex = ''] of moves.matchAll(/(?:(-?[\d.]+) 0 Td )?<([0-9A-Fa-f]+)>/g)) {
    line += Number(move ?? 0);
    const back = Math.round(((pen - line) * 1000) / size);
    if (back !== 0) {
      array += `${glyphs === '' ? '' : `<${glyphs}>`}${back}`;
      glyphs = '';
      pen -= (back * size) / 1000;
    }
    for (let at = 0; at < hex.length; at += 4) {
      const advance = advances[Number.parseInt(hex.slice(at, at + 4), 16)];
      if (advance === undefined) return null;
      pen += (advance * size) / 1000;
    }
    glyphs += hex;
  }
  return array === '' ? `<${glyphs}> Tj\n` : `[${array}<${glyphs}>]TJ\n`;
}
