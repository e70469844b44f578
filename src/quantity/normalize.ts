const DASHES = /[\u2010-\u2015\u2212\uFE58\uFE63\uFF0D]/g;
const SPACES = /[\u00A0\u1680\u2000-\u200A\u202F\u205F\u3000\t\r\n]/g;
const SLASHES = /[\u2044\u2215]/g;
const FANCY = /[\u00A0\u1680\u2000-\u206F\u2212\u2215\u3000\uFE58\uFE63\uFF0D\t\r\n]/;

/**
 * The same text for the grammar: lower case, every dash a hyphen, every space a plain one, the
 * fraction slash a slash. Offsets stay as they are, one UTF-16 unit for one.
 */
export function normalize(text: string): string {
  let plain = text;
  if (FANCY.test(plain)) {
    plain = plain.replace(DASHES, '-').replace(SPACES, ' ').replace(SLASHES, '/');
  }
  const lower = plain.toLowerCase();
  // A few letters outside English change length in lower case; then only A-Z is lowered.
  return lower.length === plain.length
    ? lower
    : plain.replace(/[A-Z]/g, (letter) => letter.toLowerCase());
}
