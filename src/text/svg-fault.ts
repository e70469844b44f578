/** What keeps an SVG from being printed: what sort of thing it is, in words, and where. */
export interface SvgFault {
  /** It runs or loads something; or it takes longer to draw than anybody waits. */
  readonly sort: 'unsafe' | 'heavy';
  /** After `has`: `a script in it`. */
  readonly what: string;
  readonly start: number;
  readonly end: number;
}

/** What an SVG may not have: it runs or loads, which a picture on paper never needs. */
const forbidden: readonly (readonly [sign: RegExp, what: string])[] = [
  [/<\s*(?:\w+:)?script\b/i, 'a script'],
  [/<\s*(?:\w+:)?foreignObject\b/i, 'a foreign object'],
  [/<!ENTITY\b|<!DOCTYPE[^<>[]*\[/i, 'a document type with entities'],
  [/<\?xml-stylesheet\b/i, 'a style from outside'],
  [/\son[a-z]+\s*=\s*["']/i, 'a handler of events'],
  [/@import\b/i, 'a style from outside'],
  [
    /<(?!(?:\w+:)?a[\s>])[a-z][^<>]*?\b(?:href|src)\s*=\s*(["'])(?!#|data:image\/(?:png|jpeg|gif|webp)[;,])/i,
    'an address from outside',
  ],
  [/url\(\s*["']?(?!["']?#)/i, 'an address from outside'],
];

/** Parts drawn, each as often as it is repeated; elements within one another; steps of filters. */
const mostParts = 100_000;
const deepest = 256;
const mostFilters = 16;
/** Signs of a drawing that is none but a picture traced. */
const longestText = 4 * 1024 * 1024;
/** A side of more user units than this is a mistake, or means harm. */
const longestSide = 100_000;
/** Dashes shorter than so many user units are no dashes but a line. */
const shortestDash = 0.001;

/** What keeps an SVG from being printed; null where nothing does. */
export function svgFault(svg: string): SvgFault | null {
  if (svg.length > longestText) {
    return { sort: 'heavy', what: `${svg.length} signs`, start: 0, end: 0 };
  }
  for (const [sign, what] of forbidden) {
    const match = sign.exec(svg);
    if (match === null) continue;
    // Of an element that loads something, the attribute by which it does.
    const within = match[0].search(/\b(?:href|src)\s*=\s*["']$/);
    const start = match.index + Math.max(within, 0);
    return { sort: 'unsafe', what: `${what} in it`, start, end: match.index + match[0].length };
  }
  const root = /<(?:\w+:)?svg\b[^<>]*>/i.exec(svg);
  const heavy = (
    what: string,
    start = root?.index ?? 0,
    length = root?.[0].length ?? 0,
  ): SvgFault => ({
    sort: 'heavy',
    what,
    start,
    end: start + length,
  });
  for (const [whole, , number = ''] of (root?.[0] ?? '').matchAll(
    /\b(width|height)\s*=\s*["']\s*([\d.eE+]+)/g,
  )) {
    if (Number(number) > longestSide)
      return heavy(`a side of ${number} units`, root?.index, whole.length);
  }
  for (const match of svg.matchAll(/stroke-dasharray\s*[=:]\s*["']?([\d.eE+,\s-]+)/g)) {
    const dashes = (match[1] ?? '')
      .split(/[,\s]+/)
      .filter((each) => each !== '')
      .map(Number);
    const whole = dashes.reduce((sum, each) => sum + each, 0);
    if (whole > 0 && whole < shortestDash)
      return heavy('dashes too fine to draw', match.index, match[0].length);
  }
  const filter = [...svg.matchAll(/<(?:\w+:)?fe[A-Z]\w+/g)][mostFilters];
  if (filter !== undefined)
    return heavy(`more than ${mostFilters} steps of filters`, filter.index, filter[0].length);
  const { parts, depth } = drawn(svg);
  if (depth > deepest) return heavy(`parts within one another ${depth} deep`);
  return parts > mostParts
    ? heavy(`more than ${mostParts} parts to draw, those that it repeats counted`)
    : null;
}

interface Named {
  own: number;
  readonly shows: string[];
}

/** How many elements are drawn, with all that they show of one another, and how deep they nest. */
function drawn(svg: string): { readonly parts: number; readonly depth: number } {
  const all: Named = { own: 0, shows: [] };
  const named = new Map<string, Named>();
  const open: (Named | null)[] = [];
  let depth = 0;
  for (const [, close, , attributes = '', empty] of svg.matchAll(
    /<(\/?)([A-Za-z][\w:-]*)((?:[^<>"']|"[^"<]*"|'[^'<]*')*?)(\/?)>/g,
  )) {
    if (close === '/') {
      open.pop();
      continue;
    }
    const id = /(?:^|\s)id\s*=\s*["']([^"']*)/.exec(attributes)?.[1];
    const own = id === undefined ? null : { own: 0, shows: [] };
    if (id !== undefined && own !== null && !named.has(id)) named.set(id, own);
    // What stands within one that has a name is drawn with it.
    for (const each of [all, ...open, own]) {
      if (each === null) continue;
      each.own += 1;
      for (const match of attributes.matchAll(
        /href\s*=\s*["']#([^"']*)|url\(\s*["']?#([^"')]*)/g,
      )) {
        each.shows.push(match[1] ?? match[2] ?? '');
      }
    }
    if (empty === '/') continue;
    open.push(own);
    depth = Math.max(depth, open.length);
    if (depth > deepest || all.own > mostParts) break;
  }
  const known = new Map<string, number>();
  const count = (id: string): number => {
    const before = known.get(id);
    if (before !== undefined) return before;
    // One that shows itself is drawn once by a browser, and so counts as nothing here.
    known.set(id, 0);
    const sum = total(named.get(id));
    known.set(id, sum);
    return sum;
  };
  const total = (part: Named | undefined): number =>
    (part?.shows ?? []).reduce((sum, id) => sum + count(id), part?.own ?? 0);
  return { parts: total(all), depth };
}
