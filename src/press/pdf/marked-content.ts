/**
 * Mends what a browser's page content says to who does not see it. Chromium writes one operator a line.
 */

/** The glyph of the space in a font of the page, four figures of hex; null where it has none. */
export type SpaceOf = (font: string) => string | null;

/**
 * Words whole: a line that the next one goes on from ends without its space, and a reader that follows the
 * structure would join the last word to the first one of the next. Each line gets a space behind its last
 * glyph, but where the word itself was parted, behind a hyphen, a dash or a slash.
 */
export function wholeWords(content: string, spaceOf: SpaceOf, partsAfter: PartsAfter): string {
  const lines = content.split('\n');
  let font: string | null = null;
  let level: string | null = null;
  /** The line of the stream with the last glyphs that were shown, and what they were shown in. */
  let shown: { at: number; font: string; level: string | null } | null = null;
  for (let at = 0; at < lines.length; at++) {
    const line = lines[at] ?? '';
    font = /^\/([\w.+-]+) [\d.]+ Tf$/.exec(line)?.[1] ?? font;
    level = /^(?:-?[\d.]+ ){5}(-?[\d.]+) Tm$/.exec(line)?.[1] ?? level;
    if (font === null || !/(?:\]TJ|> Tj)$/.test(line)) continue;
    if (shown !== null && shown.level !== level) spaced(lines, shown, spaceOf, partsAfter);
    shown = { at, font, level };
  }
  if (shown !== null) spaced(lines, shown, spaceOf, partsAfter);
  return lines.join('\n');
}

/** Whether a word may be parted behind a glyph of a font: `002d` is the hyphen of none, a glyph of one. */
export type PartsAfter = (font: string, glyph: string) => boolean;

function spaced(
  lines: string[],
  { at, font }: { readonly at: number; readonly font: string },
  spaceOf: SpaceOf,
  partsAfter: PartsAfter,
): void {
  const space = spaceOf(font);
  const line = lines[at] ?? '';
  const last = /([0-9a-fA-F]{4})>(?:\]TJ| Tj)$/.exec(line)?.[1]?.toLowerCase();
  if (space === null || last === undefined || last === space || partsAfter(font, last)) return;
  lines[at] = line.replace(/>(\]TJ| Tj)$/, `${space}>$1`);
}

/**
 * What is painted in no marked stretch (frames, rules, grounds, signs that a style adds) says nothing and is
 * marked so: a file of which all is read or passed over on purpose (ISO 14289-1, 7.1; Matterhorn 01-005).
 */
export function artifactsMarked(content: string): string {
  const out: string[] = [];
  let depth = 0;
  /** Where the path or text that is being written begins in `out`. */
  let start: number | null = null;
  const wrap = (line: string) => {
    out.splice(start ?? out.length, 0, '/Artifact BMC');
    out.push(line, 'EMC');
    start = null;
  };
  for (const line of content.split('\n')) {
    if (/\b(?:BDC|BMC)$/.test(line)) depth++;
    else if (line === 'EMC') depth--;
    const operator = line.slice(line.lastIndexOf(' ') + 1);
    if (depth > 0) {
      out.push(line);
      start = null;
    } else if (line === 'BT' || ((operator === 'm' || operator === 're') && start === null)) {
      start = out.push(line) - 1;
    } else if (line === 'ET' || /^(?:f\*?|S|s|B\*?|b\*?)$/.test(operator)) wrap(line);
    else {
      out.push(line);
      if (operator === 'n') start = null;
    }
  }
  return out.join('\n');
}
