/** Stands for what cannot be shown in place; no reader of sizes reads across it. */
const opaque = '\uFFFC';

const reference = /&(?:#(\d{1,7})|#[xX]([0-9a-fA-F]{1,6})|([A-Za-z][A-Za-z0-9]{0,31}));/y;

/** Second characters of the named references that stand for two (HTML, "Named character references"). */
const seconds = '\u0338\u20D2\u20E5\uFE00\u0333\u0331\u200A';

/**
 * A stretch of Markdown source as its text, at the same length: `&plusmn;` becomes `±` and blanks,
 * `\*` a blank and `*`, the `>` of a quote's next line a blank. `value` is what the parser made of
 * the source. A word with an escape within it (`5\.16`) cannot keep both its look and its places; it
 * is made opaque.
 */
export function maskedSource(source: string, value: string): string {
  if (source.length === value.length) return value;
  let out = '';
  let j = 0;
  let hiding = false;
  const put = (text: string): void => {
    if (!hiding) out += text;
    else if (/^\s/.test(text)) {
      hiding = false;
      out += text;
    } else out += opaque.repeat(text.length);
  };
  for (let i = 0; i < source.length; ) {
    const sign = source.charAt(i);
    const next = source.charAt(i + 1);
    if (sign === '\\' && isAsciiPunctuation(next)) {
      if (isInsideWord(out, source.charAt(i + 2)) && '.,-/+'.includes(next)) {
        const word = /\S*$/.exec(out)?.[0].length ?? 0;
        out = out.slice(0, out.length - word) + opaque.repeat(word);
        hiding = true;
      }
      put(hiding ? opaque + opaque : ` ${next}`);
      i += 2;
      j += 1;
      continue;
    }
    if (sign === '&') {
      const width = decodedWidth(source, i, value, j);
      if (width !== null) {
        const length = reference.lastIndex - i;
        put(value.slice(j, j + width).padEnd(length));
        i += length;
        j += width;
        continue;
      }
    }
    if (sign === value.charAt(j)) {
      put(sign);
      j += 1;
    } else put(isBlank(sign) ? sign : ' ');
    i += 1;
  }
  return out;
}

/** How many characters of the value a reference stands for; null where it is no reference. */
function decodedWidth(source: string, i: number, value: string, j: number): number | null {
  reference.lastIndex = i;
  const match = reference.exec(source);
  if (!match) return null;
  const [, decimal, hex, name] = match;
  const number = decimal ? Number(decimal) : hex ? Number.parseInt(hex, 16) : null;
  if (value.charAt(j) === '&' && number !== 38 && name !== 'amp' && name !== 'AMP') return null;
  const code = value.charCodeAt(j);
  if (code >= 0xd800 && code <= 0xdbff) return 2;
  if (name === 'fjlig') return 2;
  const second = value.charAt(j + 1);
  const behind = source.charAt(i + match[0].length);
  return name && second !== '' && seconds.includes(second) && behind !== second ? 2 : 1;
}

function isInsideWord(before: string, after: string): boolean {
  return /\S$/.test(before) && after !== '' && !isBlank(after);
}

function isBlank(sign: string): boolean {
  return sign === ' ' || sign === '\t' || sign === '\n' || sign === '\r';
}

function isAsciiPunctuation(sign: string): boolean {
  return /^[!-/:-@[-`{-~]$/.test(sign);
}
