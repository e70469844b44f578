/**
 * Advance widths in thousandths of the type size: from the `hmtx` table of Gaugeleaf Sans
 * (templates/fonts/sans-regular.woff2; fallback/sans-regular.ttf has the same), which a test holds
 * this table to. Each entry is a width and the characters that have it.
 */
export const glyphWidths: readonly (readonly [number, string])[] = [
  [236, ' \u00a0'],
  [242, "'′"],
  [250, 'ij'],
  [272, ',.l'],
  [273, '‘’'],
  [284, '!'],
  [292, ':;'],
  [314, '|'],
  [317, '[]'],
  [324, 'f'],
  [326, '·'],
  [335, '()'],
  [343, '{}'],
  [351, 't'],
  [367, 'r'],
  [383, '/\\'],
  [399, '-'],
  [400, 'I'],
  [419, '"″'],
  [450, '*'],
  [464, 'z'],
  [468, '°'],
  [474, '”'],
  [475, '“'],
  [477, '?'],
  [487, 's'],
  [492, 'v'],
  [499, 'y'],
  [501, 'L'],
  [503, 'c'],
  [507, 'x'],
  [510, 'J'],
  [527, 'k'],
  [528, 'g'],
  [534, 'a'],
  [549, 'e'],
  [559, 'F'],
  [560, 'o'],
  [565, '_'],
  [568, 'hnu'],
  [572, 'T'],
  [580, 'Zbdpq'],
  [581, 'S'],
  [583, 'E'],
  [588, '–'],
  [593, 'Y'],
  [598, '$'],
  [600, '+0123456789<=>^`~±×'],
  [606, 'P'],
  [609, 'V'],
  [613, 'X'],
  [621, 'C'],
  [634, 'K'],
  [640, 'R'],
  [641, 'A'],
  [653, 'B'],
  [671, 'D'],
  [678, 'U'],
  [694, '&'],
  [695, 'G'],
  [707, 'HN'],
  [708, 'OQ'],
  [713, '#'],
  [768, 'w'],
  [780, '—'],
  [803, '…'],
  [812, 'M'],
  [873, 'm'],
  [891, '@W'],
  [927, '%'],
];

/** What a character counts for that the table lacks: no narrower than a full-width sign or emoji. */
const WIDEST = 1250;

const widths = new Map(glyphWidths.flatMap(([width, all]) => [...all].map((one) => [one, width])));

/** The width of a line of text in Gaugeleaf Sans, in the unit of `size`; kerning only narrows it. */
export function textWidth(text: string, size: number): number {
  let total = 0;
  for (const character of text.normalize('NFC')) {
    const plain = character.normalize('NFD')[0] ?? character;
    total += widths.get(character) ?? widths.get(plain) ?? WIDEST;
  }
  return (total * size) / 1000;
}

/**
 * Text in lines no wider than `width`: parted at spaces and after hyphens, within a word only where
 * it is wider than a whole line. What is left after `lines` lines is cut off with an ellipsis.
 */
export function wrapText(text: string, size: number, width: number, lines: number): string[] {
  const wrapped: string[] = [];
  let line = '';
  const words = text.split(/(?<=-)(?=\p{L})|(?<=\s)/u);
  for (let word = words.shift(); word !== undefined; word = words.shift()) {
    if (textWidth((line + word).trimEnd(), size) <= width) {
      line += word;
      continue;
    }
    if (line.trim() !== '') {
      wrapped.push(line.trimEnd());
      line = '';
      words.unshift(word);
    } else {
      const head = fitting(word, size, width);
      wrapped.push(head);
      words.unshift(word.slice(head.length));
    }
    if (wrapped.length === lines) {
      const last = wrapped[lines - 1] ?? '';
      wrapped[lines - 1] = `${fitting(last, size, width - textWidth('…', size)).trimEnd()}…`;
      return wrapped;
    }
  }
  if (line.trim() !== '') wrapped.push(line.trimEnd());
  return wrapped;
}

/** As much of the text's start as fits, one character at least, never half of one. */
function fitting(text: string, size: number, width: number): string {
  let fits = '';
  for (const { segment } of new Intl.Segmenter('en', { granularity: 'grapheme' }).segment(text)) {
    if (fits !== '' && textWidth(fits + segment, size) > width) break;
    fits += segment;
  }
  return fits;
}

/** Text for the content or an attribute of XML: what means something there escaped, what XML 1.0 bars or advises against left out. */
export function escapeXml(text: string): string {
  return text
    .replace(/[^\t\n\r\u0020-\u007e\u00a0-\ud7ff\ue000-\ufffd\u{10000}-\u{10ffff}]/gu, '')
    .replaceAll('&', '&amp;')
    .replaceAll('<', '&lt;')
    .replaceAll('>', '&gt;')
    .replaceAll('"', '&quot;')
    .replaceAll("'", '&#39;');
}
