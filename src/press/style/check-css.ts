import { nearestName, type Span } from '../../text/index.ts';
import { boundless, outside, plainCss } from './css-bounds.ts';
import { perhaps, type TemplateFault } from './template-fault.ts';

/** What a style may name, as the rest of the templates has it. */
export interface StyleWorld {
  readonly fonts: ReadonlySet<string>;
  /** Names of pages that some part of a print is on. */
  readonly pages: ReadonlySet<string>;
  /** Custom properties that some style reads: `--accent`. */
  readonly properties: ReadonlySet<string>;
}

/** The boxes in the margins of a page (CSS Paged Media 3, section 5). */
const marginBoxes = [
  ...['top', 'bottom'].flatMap((side) =>
    ['left-corner', 'left', 'center', 'right', 'right-corner'].map((at) => `${side}-${at}`),
  ),
  ...['left', 'right'].flatMap((side) => ['top', 'middle', 'bottom'].map((at) => `${side}-${at}`)),
];
const rules = [
  'page',
  'media',
  'font-face',
  'supports',
  'counter-style',
  'layer',
  'container',
  'property',
];
/** Said of `@page`: which of the pages (CSS Paged Media 3, section 4). */
const pagePlaces = ['left', 'right', 'first', 'blank'];

/** What is wrong in a style of a club: what leads out of it, and names that nothing has. */
export function checkCss(file: string, text: string, world: StyleWorld): TemplateFault[] {
  const faults: TemplateFault[] = [];
  const css = plainCss(text);
  const tell = (grave: boolean, start: number, length: number, message: string, fix: string) => {
    const span: Span = { start, end: start + length };
    faults.push({ file, grave, span, message, fix });
  };
  for (const { start, end, message, fix } of outside(css, world.fonts)) {
    tell(true, start, end - start, message, fix);
  }
  for (const { start, end, message, fix } of boundless(css)) {
    tell(true, start, end - start, message, fix);
  }
  for (const match of css.matchAll(/@(-?[a-z][a-z-]*)([^;{}]*)/gi)) {
    checkRule(match, world, tell);
  }
  // A declaration, not a use: `var(--x)` has no colon behind the name.
  for (const match of css.matchAll(/(?<=[{;\s])(--[\w-]+)\s*:/g)) {
    const [, name = ''] = match;
    if (world.properties.has(name)) continue;
    const near = nearestName(name, world.properties);
    tell(false, match.index, name.length, `nothing reads ${name}`, perhaps(near, [], ''));
  }
  return faults;
}

function checkRule(
  match: RegExpExecArray,
  world: StyleWorld,
  tell: (grave: boolean, start: number, length: number, message: string, fix: string) => void,
): void {
  const [, rule = '', rest = ''] = match;
  const name = rule.toLowerCase();
  const length = rule.length + 1;
  if (name === 'import') {
    const fix =
      'put what it has into this style, or into another that a template names with {{css}}';
    tell(
      true,
      match.index,
      length,
      '@import loads a style from outside, and a page loads nothing',
      fix,
    );
    return;
  }
  const known = [...rules, ...marginBoxes];
  if (name !== 'page') {
    // What begins with a hyphen is a browser's own.
    if (known.includes(name) || name.startsWith('-') || name.endsWith('keyframes')) return;
    const near = nearestName(name, known);
    const meant = near === null ? 'take it out' : `perhaps \`@${near}\` was meant`;
    tell(false, match.index, length, `there is no rule @${rule}`, meant);
    return;
  }
  const at = match.index + length;
  for (const each of rest.matchAll(/(^|[\s,])([A-Za-z][\w-]*)|:([\w-]+)/g)) {
    const [, before = '', page, place] = each;
    const start = at + each.index + (page === undefined ? 1 : before.length);
    if (page !== undefined && !world.pages.has(page) && !/^unit-\d+$/.test(page)) {
      const near = nearestName(page, world.pages);
      const fix = perhaps(near, world.pages, 'there are');
      tell(false, start, page.length, `no page has the name ${page}`, fix);
    }
    if (place !== undefined && !pagePlaces.includes(place)) {
      const fix = perhaps(nearestName(place, pagePlaces), pagePlaces, 'there are');
      tell(false, start, place.length, `@page has no :${place}`, fix);
    }
  }
}

/** The names of pages that files of templates put parts on: `page: cover`, in a style or on an element. */
export function pageNames(texts: Iterable<string>): Set<string> {
  const names = new Set<string>();
  for (const text of texts) {
    for (const [, name = ''] of text.matchAll(/(?<![\w-])page:\s*([A-Za-z][\w-]*)/g))
      names.add(name);
  }
  return names;
}

/** The custom properties that files of templates read. */
export function readProperties(texts: Iterable<string>): Set<string> {
  const names = new Set<string>();
  for (const text of texts) {
    for (const [, name = ''] of text.matchAll(/var\(\s*(--[\w-]+)/g)) names.add(name);
  }
  return names;
}
