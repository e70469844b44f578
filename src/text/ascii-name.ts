/** Letters that no decomposition takes apart, as typesetters without them write them. */
const SPELLED: Readonly<Record<string, string>> = {
  ß: 'ss',
  æ: 'ae',
  œ: 'oe',
  ø: 'o',
  đ: 'd',
  ð: 'd',
  þ: 'th',
  ł: 'l',
  ħ: 'h',
  ı: 'i',
  ŋ: 'ng',
};

const SPELLED_LETTER = new RegExp(`[${Object.keys(SPELLED).join('')}]`, 'gu');

/**
 * A name in lower-case ASCII letters, figures and single hyphens, as ids, files and links take it:
 * `Régime à chaud` is `regime-a-chaud`, `Größe` is `grosse`. Empty where nothing is left.
 */
export function asciiName(name: string): string {
  return name
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .replace(SPELLED_LETTER, (letter) => SPELLED[letter] ?? '')
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-|-$/g, '');
}
