import { settingLabel } from '../sheet/index.ts';
import type { Sheet } from '../sheet/model.ts';
import { scalar, visible } from '../text/index.ts';
import { askedOf, noPage } from './asked.ts';
import type { Asked } from './model.ts';

/** What a blank is written for. */
export interface ReadingBlank {
  readonly sheet: Sheet;
  /** The sheet's name, as its file has it. */
  readonly id: string;
  readonly source: string;
  /** Only this page, as the sheet cites it; null for all. */
  readonly page: string | null;
  /** Null leaves it to be filled in. */
  readonly by: string | null;
  /** What the settings of a page are shuffled by; null for the sheet's order. */
  readonly seed: number | null;
  /** The way from the file to the schema that editors use. */
  readonly schema: string;
}

/** One page of a blank: what is asked of it, in the order it is asked in. */
export interface BlankPage {
  readonly page: string;
  readonly asked: readonly Asked[];
}

/** The pages of a source that a sheet cites, ascending, those without a number last. */
export function blankPages(
  sheet: Sheet,
  source: string,
  page: string | null,
  seed: number | null,
): readonly BlankPage[] {
  const pages = new Map<string, Asked[]>();
  for (const asked of askedOf(sheet)) {
    if (asked.source !== source || (page !== null && !isPage(asked.page, page))) continue;
    const listed = pages.get(asked.page);
    if (listed) listed.push(asked);
    else pages.set(asked.page, [asked]);
  }
  const shuffle = seed === null ? null : shuffler(seed);
  return [...pages]
    .sort(([one], [two]) => pageNumber(one) - pageNumber(two) || (one < two ? -1 : 1))
    .map(([name, asked]) => ({ page: name, asked: shuffle ? shuffle(asked) : asked }));
}

/** Whether a page as cited is the one that somebody names: `31` is `p. 31`. */
export function isPage(cited: string, named: string): boolean {
  const level = (text: string) =>
    text
      .toLowerCase()
      .replace(/^(?:pages?|pp?)\b\.?/, '')
      .replace(/\s+/g, ' ')
      .trim();
  return level(cited) === level(named);
}

/** The sources of a sheet that can be read again, with how many statements each is cited for. */
export function readableSources(sheet: Sheet): ReadonlyMap<string, number> {
  const counts = new Map<string, number>();
  for (const { source } of askedOf(sheet)) counts.set(source, (counts.get(source) ?? 0) + 1);
  return counts;
}

/** The text of a blank: what to look for on which page, and no word of what the sheet says. */
export function readingBlank(blank: ReadingBlank): string {
  const { sheet, id, source, page, by, seed, schema } = blank;
  const described = sheet.sources.get(source);
  const title = [described?.title?.value, described?.year?.source].filter(Boolean).join(', ');
  const out = [
    `# yaml-language-server: $schema=${schema}`,
    `# What ${visible(source)} says of the ${visible(unitWords(sheet))}. Write each figure as the paper prints it, without`,
    '# looking at the sheet: `not there` where the page has none. Words too: where the paper is silent, `not there`.',
    '# A line with (if printed) may be left empty. Then: gaugeleaf reread and the name of this file.',
    'gaugeleaf-reading: 1',
    `sheet: ${scalar(id)}`,
    `source: ${scalar(source)}${title === '' ? '' : ` # ${visible(title)}`}`,
    by === null ? 'by: # who reads' : `by: ${scalar(by)}`,
    'date: # day of reading, YYYY-MM-DD',
    ...(seed === null ? [] : ['order: shuffled', `seed: ${seed}`]),
    'pages:',
  ];
  for (const { page: name, asked } of blankPages(sheet, source, page, seed)) {
    out.push(`  ${pageKey(name)}:`);
    for (const each of asked) out.push(...askedLines(each));
  }
  out.push('found: # figures on these pages that were not asked for, as in the next line');
  out.push('  # - { page: , what: , value: }');
  return `${out.join('\n')}\n`;
}

function unitWords(sheet: Sheet): string {
  const { maker, model } = sheet.unit;
  const words = [maker?.value, model?.value].filter((word) => word !== undefined).join(' ');
  return words === '' ? 'unit' : words;
}

function pageKey(page: string): string {
  return page === noPage ? noPage : /^[a-z]+\.? ?\d+[a-z]?$/i.test(page) ? page : scalar(page);
}

function askedLines({ key, setting, parts }: Asked): string[] {
  const lines = [`    ${scalar(key)}: # ${visible(settingLabel(setting))}`];
  const places = parts.filter(({ path }) => path[0] === 'places');
  for (const { path, role } of parts) {
    if (path[0] === 'places') continue;
    const word = scalar(path[0] ?? '');
    lines.push(`      ${word}:${role === 'beside' ? ' # (if printed)' : ''}`);
  }
  if (places.length > 0) {
    lines.push('      places:', ...places.map(({ path }) => `        ${scalar(path[1] ?? '')}:`));
  }
  return lines;
}

function pageNumber(page: string): number {
  const digits = /\d+/.exec(page)?.[0];
  return digits === undefined ? Number.POSITIVE_INFINITY : Number(digits);
}

/**
 * Shuffles lists one after another by a seed (mulberry32 and the shuffle of Fisher and Yates, as Durstenfeld
 * wrote it: Communications of the ACM 7, 1964, algorithm 235; both from memory).
 */
function shuffler(seed: number): <T>(list: readonly T[]) => T[] {
  let state = seed >>> 0;
  const next = () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4_294_967_296;
  };
  return (list) => {
    const out = [...list];
    for (let last = out.length - 1; last > 0; last--) {
      const at = Math.floor(next() * (last + 1));
      const [one, two] = [out[last], out[at]];
      if (one !== undefined && two !== undefined) {
        out[last] = two;
        out[at] = one;
      }
    }
    return out;
  };
}
