import { escapeHtml } from './typeset.ts';

/**
 * Formulas as MathML, which the browser sets itself: fractions over a bar, roots, powers and indices. They
 * are read from one line as it stands in the program: `gap = D/2 × (1 − cos ψ ÷ cos ψ₀)`, words behind a
 * comma or a semicolon. What can't be read as a formula stays the line that it is.
 */
export function typesetFormula(line: string): string {
  const parts = segments(line).map(({ text, mark }) => {
    const math = /[=≤≥∝×÷√²]/.test(text) ? parsed(text) : null;
    return `${math ?? words(text)}${escapeHtml(mark)}`;
  });
  return parts.join(' ');
}

/** The formula of a stretch as a `math` element; null where it can't be read. */
function parsed(text: string): string | null {
  try {
    const reader = new Reader(tokens(text));
    const html = reader.relation();
    if (!reader.ended) return null;
    return `<math displaystyle="true">${html}</math>`;
  } catch (error) {
    if (error instanceof Unreadable) return null;
    throw error;
  }
}

class Unreadable extends Error {}

function words(text: string): string {
  return `<span class="said">${escapeHtml(text)}</span>`;
}

/** Stretches of a line between the commas and semicolons that stand in no parentheses. */
function segments(line: string): readonly { readonly text: string; readonly mark: string }[] {
  const found: { text: string; mark: string }[] = [];
  let depth = 0;
  let from = 0;
  for (let at = 0; at < line.length; at++) {
    const one = line.charAt(at);
    if (one === '(' || one === '[') depth++;
    if (one === ')' || one === ']') depth--;
    if (depth !== 0 || !/[,;]/.test(one) || line.charAt(at + 1) !== ' ') continue;
    found.push({ text: line.slice(from, at).trim(), mark: one });
    from = at + 1;
  }
  found.push({ text: line.slice(from).trim(), mark: '' });
  return found;
}

interface Token {
  readonly is: 'number' | 'word' | 'letter' | 'index' | 'power' | 'sign';
  readonly text: string;
  /** Whether a space stands before it. */
  readonly apart: boolean;
}

const patterns: readonly (readonly [Token['is'], RegExp])[] = [
  ['number', /^\d+(?:\.\d+)?[°%]?/u],
  ['letter', /^[\p{Script=Greek}]/u],
  ['word', /^[a-zA-Z]{2,}/u],
  ['letter', /^[a-zA-Z%]/u],
  ['index', /^[₀-₉]+/u],
  ['power', /^[²³½]/u],
  ['sign', /^[=≤≥∝+−×÷/^√()[\],]/u],
];

function tokens(text: string): readonly Token[] {
  const found: Token[] = [];
  let rest = text;
  while (rest !== '') {
    const apart = /^\s/.test(rest);
    rest = rest.trimStart();
    const match = patterns
      .map(([is, pattern]) => ({ is, text: pattern.exec(rest)?.[0] ?? '' }))
      .find((each) => each.text !== '');
    if (match === undefined) throw new Unreadable();
    found.push({ ...match, apart });
    rest = rest.slice(match.text.length);
  }
  return found;
}

const functions = new Set(['sin', 'cos', 'asin']);
const relations = new Set(['=', '≤', '≥', '∝']);
const digits = '₀₁₂₃₄₅₆₇₈₉';
const raised: ReadonlyMap<string, string> = new Map([
  ['²', '<mn>2</mn>'],
  ['³', '<mn>3</mn>'],
  ['½', '<mn>1</mn><mo>/</mo><mn>2</mn>'],
]);
const operator = (sign: string) => `<mo stretchy="false">${escapeHtml(sign)}</mo>`;
const row = (html: string) => `<mrow>${html}</mrow>`;

/** Reads a formula by precedence: relations, sums, products, and what stands side by side. */
class Reader {
  readonly #tokens: readonly Token[];
  #at = 0;
  /** Roots around what is read: their sign does not grow, so that nothing below it stands over a bar. */
  #roots = 0;

  constructor(read: readonly Token[]) {
    this.#tokens = read;
  }

  get ended(): boolean {
    return this.#at === this.#tokens.length;
  }

  relation(): string {
    let html = this.#sum();
    while (relations.has(this.#next()?.text ?? '')) {
      const sign = this.#take().text;
      // The fonts lack the sign of proportion.
      html += sign === '∝' ? '<mtext>&#160;varies as&#160;</mtext>' : operator(sign);
      html += this.#sum();
    }
    return html;
  }

  #sum(): string {
    let html = this.#product();
    while (['+', '−'].includes(this.#next()?.text ?? '')) {
      html += operator(this.#take().text);
      html += this.#product();
    }
    return html;
  }

  #product(): string {
    let html = '';
    let last = this.#beside();
    for (;;) {
      const sign = this.#next()?.text ?? '';
      if (sign === '×') {
        this.#take();
        html += last + operator('×');
        last = this.#beside();
      } else if (sign === '÷' || sign === '/') {
        this.#take();
        const below = this.#beside();
        last =
          this.#roots > 0
            ? `${last}${operator('/')}${below}`
            : `<mfrac>${row(bare(last))}${row(bare(below))}</mfrac>`;
      } else return html + last;
    }
  }

  /** Factors without a sign between them: `ρ g h`, `2 gap`. */
  #beside(): string {
    const factors = [this.#factor()];
    for (let next = this.#next(); next !== undefined; next = this.#next()) {
      if (next.is === 'sign' && !['(', '[', '√'].includes(next.text)) break;
      factors.push(this.#factor());
    }
    return factors.join('<mspace width="0.17em"/>');
  }

  #factor(): string {
    let base = this.#atom();
    const index = this.#next();
    let below = '';
    if (index?.is === 'index') {
      this.#take();
      below = `<mn>${[...index.text].map((one) => digits.indexOf(one)).join('')}</mn>`;
    }
    let above = '';
    if (this.#next()?.is === 'power') above = raised.get(this.#take().text) ?? '';
    else if (this.#next()?.text === '^') {
      this.#take();
      const exponent = this.#take();
      above = raised.get(exponent.text) ?? `<mn>${escapeHtml(exponent.text)}</mn>`;
    }
    if (below !== '' && above !== '') base = `<msubsup>${base}${below}${row(above)}</msubsup>`;
    else if (below !== '') base = `<msub>${base}${below}</msub>`;
    else if (above !== '') base = `<msup>${base}${row(above)}</msup>`;
    // A function of something: `A(h)`, not `p (a / b)`.
    const next = this.#next();
    const called = next?.text === '(' && !next.apart && /<\/m(?:i|sub|text)>$/.test(base);
    return called ? base + this.#enclosed() : base;
  }

  #atom(): string {
    const token = this.#next();
    if (token === undefined) throw new Unreadable();
    if (token.text === '(' || token.text === '[') return this.#enclosed();
    this.#take();
    if (token.text === '√') {
      this.#roots++;
      const under = bare(this.#enclosed());
      this.#roots--;
      return `<msqrt>${row(under)}</msqrt>`;
    }
    if (token.is === 'number') return `<mn>${token.text}</mn>`;
    if (token.is === 'word') {
      if (functions.has(token.text)) return `<mi class="function">${token.text}</mi>`;
      const said = [token.text];
      for (let next = this.#next(); this.#runsOn(next); next = this.#next()) {
        said.push(this.#take().text);
      }
      return `<mtext>${escapeHtml(said.join(' '))}</mtext>`;
    }
    if (token.is !== 'letter') throw new Unreadable();
    const letter = `<mi mathvariant="normal">${escapeHtml(token.text)}</mi>`;
    const next = this.#next();
    // A letter with its word behind it: the greatest p, the A of all together.
    if (next?.is === 'word' && /^[a-zA-Z]$/.test(token.text) && next.text.length > 2) {
      if (!functions.has(next.text) && next.text !== 'gap') {
        return `<msub>${letter}<mtext>${escapeHtml(this.#take().text)}</mtext></msub>`;
      }
    }
    return letter;
  }

  /** Whether a word of several goes on: with another word, or a short one that has a word behind it. */
  #runsOn(next: Token | undefined): boolean {
    if (next?.is === 'word') return !functions.has(next.text);
    return next?.text === 'a' && this.#tokens[this.#at + 1]?.is === 'word';
  }

  #enclosed(): string {
    const open = this.#take().text;
    const close = open === '(' ? ')' : ']';
    if (open !== '(' && open !== '[') throw new Unreadable();
    let html = this.relation();
    while (this.#next()?.text === ',') {
      this.#take();
      html += `<mo separator="true">,</mo>${this.relation()}`;
    }
    if (this.#take().text !== close) throw new Unreadable();
    return `<mrow>${operator(open)}${html}${operator(close)}</mrow>`;
  }

  #next(): Token | undefined {
    return this.#tokens[this.#at];
  }

  #take(): Token {
    const token = this.#next();
    if (token === undefined) throw new Unreadable();
    this.#at++;
    return token;
  }
}

/** What stands alone above or below a bar, or under a root, needs no parentheses. */
function bare(html: string): string {
  const inner =
    /^<mrow><mo stretchy="false">\(<\/mo>(.*)<mo stretchy="false">\)<\/mo><\/mrow>$/.exec(
      html,
    )?.[1];
  if (inner === undefined) return html;
  // Not `(a) … (b)`, whose first parenthesis is closed on the way.
  let depth = 0;
  for (const [sign] of inner.matchAll(/>\(<|>\)</g)) {
    depth += sign === '>(<' ? 1 : -1;
    if (depth < 0) return html;
  }
  return inner;
}
