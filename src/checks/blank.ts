import { LETTERS_PATTERN } from '../quantity/index.ts';

/** What may follow a figure that is still to come. */
const UNIT = `(?:${LETTERS_PATTERN}|in|inch(?:es)?|mm|cm|thou|°|deg(?:rees)?|rpm|r\\.p\\.m|psi|bar|kpa|inhg|turns?|flats?|notch(?:es)?|ft-lb|in-lb|n·?m|oz|drill|wire|leaf|ml|cc|cm3|"|%)(?![a-z]).{0,20}`;

/** What stands for a figure or words that nobody has given yet, wherever it stands. */
const FILLERS: readonly RegExp[] = [
  /^(?:please )?(?:to )?(?:be )?fill(?:ed)?(?:[- ]?(?:in|me|out))?(?: (?:here|later|please))?$/,
  /^(?:t\.?b\.?[dcas]\.?|to ?do|fix ?me|tk(?:tk)+|wip)(?:[ :,-].*)?$/,
  /^to be (?:added|advised|announced|completed|confirmed|decided|determined|filled in|supplied|written)(?: .*)?$/,
  /^(?:lorem ipsum\b.*|placeholder\b.*|(?:sample|dummy|example|filler) (?:text|figure|value)|blah(?: blah)*|asdf\w*|foobar)$/,
  // `x.xx in`, `0.xxx`, `?? turns`, `__/64 in`: figures without a figure.
  new RegExp(
    `^[\\s0./#-]*(?:x{2,}|x[./-]x+|\\?+|#{2,}|\\.{3,}|…)[\\s\\d./x?_#…-]*(?:${UNIT})?$`,
    'u',
  ),
];

/** What is a filler only in place of a value: as a step, `write the figure` is work. */
const IN_PLACE: readonly RegExp[] = [
  /^(?:to (?:come|follow|be (?:done|found|measured|read))|coming soon|pending|come back to this|ask \p{L}+|tk|n\.n\.?)(?: .*)?$/u,
  /^(?:dummy|foo|blank|empty|none yet|not yet(?: \p{L}+)?)$/u,
  /^(?:.* )?goes? (?:in )?here$/,
  /^(?:insert|enter|type|put|add|write|your) (?:\p{L}+ ){0,4}(?:here|text|name|value|figure)$/u,
  /^(?:a |the |some |your )?(?:text|title|name|value|figure|number|words|description|source|page)$/,
  new RegExp(`^[\\s0./-]*_+[\\s\\d./_-]*(?:${UNIT})?$`, 'u'),
  /^[\s?_.…*=~-]+$/,
];

const EVERY = [...FILLERS, ...IN_PLACE];

/**
 * What every filler within words has one of, in small letters: nearly all of a sheet is settled by this
 * one look, and not by the dozen that tell what it is.
 */
const MAYBE =
  /x[./-]?x|\?|##|\.{3}|…| here|fill|to\s+be|to\s*do|t\.?b\.?[dcas]|fix\s*me|tktk|wip|lorem|dolor|placeholder|sample|dummy|example|blah|asdf|foobar/;

const HELD = /^(?:\[([^[\]]*)\]|<([^<>]*)>|\{\{?([^{}]*)\}?\}|\(([^()]*)\))$/;

/**
 * Whether a text only holds the place of one that is still to come: `fill in`, as `gaugeleaf draft`
 * writes it, or what people write for it: TODO, tbd, xxx, `x.xx in`, ???, `text goes here`. Checks of
 * sizes pass such a text over: `blank-to-fill` speaks of it. A text in pointed, square or curly
 * brackets is one if it is a filler without them, or nothing.
 */
export function isBlank(text: string): boolean {
  return isOneOf(text, EVERY);
}

function isOneOf(text: string, fillers: readonly RegExp[]): boolean {
  const plain = text.trim().toLowerCase().replace(/\s+/g, ' ').slice(0, LONGEST);
  if (plain === '') return false;
  const held = HELD.exec(plain);
  const inner = (held?.[1] ?? held?.[2] ?? held?.[3] ?? held?.[4] ?? plain).trim();
  const bare = /[.!:]$/.test(inner) ? inner.replace(/(?<=\p{L})[.!:]+$/u, '').trim() : inner;
  if (held && bare === '') return fillers.length > FILLERS.length;
  return BEGINS_AS_ONE.test(bare) && fillers.some((filler) => filler.test(bare));
}

/** How every filler begins, or ends: what does not is settled by one look, and a dozen patterns stay unused. */
const BEGINS_AS_ONE =
  /^(?:please|to\b|be\b|fill|t\.?b|todo|fix|tk|wip|lorem|placeholder|sample|dummy|example|blah|asdf|foo|coming|pending|come|ask |n\.?n|blank|empty|none|not|insert|enter|type|put|add|write|your|(?:a |the |some )?(?:text|title|name|value|figure|number|words|description|source|page)$|[\s0./#-]*(?:x|[?…_]|##|\.{3})|[\s?_.…*=~-]+$)|here$/;

/** A filler is short; it also bounds the work. */
const LONGEST = 160;

/** A filler within words of the work: offsets into the text, end exclusive. */
export interface Filler {
  readonly start: number;
  readonly end: number;
}

/** What no sentence of a finished sheet holds. Capitals alone tell `TODO` from words that look like it. */
const WITHIN: readonly RegExp[] = [
  /\b(?:TODO|FIXME|TBD|TBC|TBA|TKTK|XXX+)\b/g,
  /\blorem ipsum\b|\bdolor sit amet\b|\b(?:placeholder|sample text|dummy text)\b/gi,
  /\?{3,}/g,
  /[[<{(] ?(?:to be )?fill(?:ed)? in(?: here| later)? ?[\])}>]|(?<=: )fill in(?=\s*[.;]?\s*$)/gi,
  /\b(?:to be (?:filled in|determined|confirmed|announced|advised|written|completed))(?=\s*[.;)]|\s*$)/gi,
  /\b(?:insert|enter|type|your) (?:\p{L}+ ){0,3}here\b/giu,
  /(?<![^\s(])(?:\d*[.,]?x{2,}|x[./-]x+|\?+|#{2,}|…) ?(?:in|inch|inches|mm|thou|rpm|psi|turns?|flats?|degrees|inHg|ft-lb)\b/g,
];

/**
 * `How to tell it from its near relations goes here.`, as drafts have it. `The spring goes here` is work.
 */
const GOES_HERE =
  /(?<![^\s(])(?:how|what|why|where|when|which|who)\b[^.!?]{0,120}\bgoes here\b|\b(?:text|words|description|note|notes|figure|value|number|picture|drawing|caption|name|title|story|history|paragraph|sentence|introduction|explanation|details|rest) goe?s? here\b/gi;

const noFiller: readonly Filler[] = [];

/** The fillers within a stretch of the work, in its order; a text that is nothing else is one. */
export function fillersIn(text: string): readonly Filler[] {
  if (!MAYBE.test(text.toLowerCase())) return noFiller;
  if (isOneOf(text, FILLERS)) {
    const start = text.search(/\S/);
    return [{ start, end: start + text.trim().length }];
  }
  const found: Filler[] = [];
  for (const pattern of [GOES_HERE, ...WITHIN]) {
    for (const match of text.matchAll(pattern)) {
      const [start, end] = [match.index, match.index + match[0].length];
      if (!found.some((other) => other.start < end && start < other.end))
        found.push({ start, end });
    }
  }
  return found.sort((a, b) => a.start - b.start);
}
