const DASHES = /[\u2010-\u2015\u2212\uFE58\uFE63\uFF0D]/g;
const SPACES = /[\u00A0\u1680\u2000-\u200A\u202F\u205F\u3000\t\r\n]/g;
const SLASHES = /[\u2044\u2215]/g;
/** A decimal point raised to mid-line, as British papers print it; `N·m` has none. */
const RAISED_POINT = /[\u00B7\u22C5](?=\d)/g;
/** `¹³⁄₆₄`, as a typeset fraction pastes; after a figure it would run together with it. */
const TYPESET_FRACTION =
  /(?<!\d)[\u00B9\u00B2\u00B3\u2070\u2074-\u2079]{1,4}\/[\u2080-\u2089]{1,4}/g;
const RAISED_DIGITS = '⁰¹²³⁴⁵⁶⁷⁸⁹';
const FANCY =
  /[\u00B7\u2080-\u2089\u22C5\u00A0\u1680\u2000-\u206F\u2212\u2215\u3000\uFE58\uFE63\uFF0D\t\r\n]/;

/**
 * The same text for the grammar: lower case, every dash a hyphen, every space a plain one, the
 * fraction slash a slash, a raised decimal point a full stop. Offsets stay as they are, one UTF-16 unit for one.
 */
export function normalize(text: string): string {
  let plain = text;
  if (FANCY.test(plain)) {
    plain = plain
      .replace(DASHES, '-')
      .replace(SPACES, ' ')
      .replace(SLASHES, '/')
      .replace(RAISED_POINT, '.')
      .replace(TYPESET_FRACTION, plainDigits);
  }
  const lower = plain.toLowerCase();
  // A few letters outside English change length in lower case; then only A-Z is lowered.
  return lower.length === plain.length
    ? lower
    : plain.replace(/[A-Z]/g, (letter) => letter.toLowerCase());
}

function plainDigits(fraction: string): string {
  return [...fraction]
    .map((digit) => {
      const raised = RAISED_DIGITS.indexOf(digit);
      if (raised >= 0) return String(raised);
      return digit === '/' ? digit : String(digit.charCodeAt(0) - 0x2080);
    })
    .join('');
}
