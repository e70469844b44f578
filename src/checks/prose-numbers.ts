import type { Kind } from '../kinds/model.ts';
import { agree, liesInside, principal, sameFamily, scanStatements } from '../quantity/index.ts';
import type { Sense, Statement } from '../quantity/model.ts';
import { settingNamed } from '../sheet/index.ts';
import type { Operation, PlacedSize, Prose, Setting, Sheet } from '../sheet/model.ts';
import type { Span } from '../text/span.ts';
import type { CheckContext } from './define.ts';
import { readOf, sizesOfSetting } from './stated-sizes.ts';

/** A size typed in the prose, and the size of the front matter that it is or should be. */
export interface ProseNumber {
  readonly span: Span;
  readonly statement: Statement;
  /**
   * `typed`: it is a setting's own size; `near`: it stands beside a setting of its dimension and
   * is another size; `stray`: nothing on the sheet is that size.
   */
  readonly standing: 'typed' | 'near' | 'stray';
  readonly setting: Setting | null;
  /** What it is held against; null for a stray. */
  readonly against: { readonly size: PlacedSize; readonly statement: Statement } | null;
  /** Whether it is written just as the setting's value or one of its `also` is. */
  readonly verbatim: boolean;
}

/** Dimensions of which prose is full without meaning a setting: ten minutes, a liter, a pound. */
const CASUAL: ReadonlySet<Statement['dimension']> = new Set([
  'time',
  'volume',
  'mass',
  'temperature',
  'percent',
  'density',
  'area',
]);

const known = new WeakMap<Sheet, readonly ProseNumber[]>();

/**
 * Every size in the prose of the work that is no tool's, no step's and no part number's, with how
 * it stands to the settings. Read once a sheet; three checks share it.
 */
export function proseNumbers(sheet: Sheet, context: CheckContext): readonly ProseNumber[] {
  const before = known.get(sheet);
  if (before) return before;
  const found = readProse(sheet, context);
  known.set(sheet, found);
  return found;
}

function readProse(sheet: Sheet, context: CheckContext): readonly ProseNumber[] {
  const { kind } = sheet;
  const numbers: ProseNumber[] = [];
  if (kind === null) return numbers;
  const words = { tools: kind.toolWords, steps: kind.incrementWords };
  const beside = new Map<number, readonly Setting[]>();
  for (const prose of sheet.prose) {
    if (!/\d|[½¼¾⅓⅔⅛⅜⅝⅞]|drill|letter/i.test(prose.text)) continue;
    for (const { start, end, statement } of scanStatements(prose.text, {
      gauges: context.gauges,
    })) {
      const operation =
        prose.operation === null ? null : (sheet.operations[prose.operation] ?? null);
      const sense = statement.sense ?? senseBefore(prose, start, operation, kind);
      const sensed = sense === statement.sense ? statement : { ...statement, sense };
      if (isAside(prose, start, end, sensed, words)) continue;
      const span = { start: prose.span.start + start, end: prose.span.start + end };
      const near = operation ? settingsBeside(operation, sheet, beside) : [];
      const number = standing(span, sensed, near, sheet);
      if (number) numbers.push(number);
    }
  }
  return numbers;
}

const spaced = new WeakMap<readonly string[], readonly string[]>();

/** Whether any of a kind's words or phrases stands in a short text, whatever its case and points. */
function holdsAny(text: string, phrases: readonly string[]): boolean {
  let plain = spaced.get(phrases);
  if (plain === undefined) {
    plain = phrases.map(onlyWords);
    spaced.set(phrases, plain);
  }
  const words = onlyWords(text);
  return plain.some((phrase) => words.includes(phrase));
}

/** ` open end wrench `: small letters, a blank before and after each word. */
function onlyWords(text: string): string {
  return ` ${text
    .toLowerCase()
    .replace(/[^\p{L}]+/gu, ' ')
    .trim()} `;
}

/**
 * `back it out 1-1/2 turns`: the way said before the count. Where the engine runs, a screw is turned
 * from wherever it stands, and no such count is a setting.
 */
function senseBefore(
  prose: Prose,
  start: number,
  operation: Operation | null,
  kind: Kind,
): Sense | null {
  const stage = kind.operations.get(operation?.known?.name ?? '')?.stage;
  if (stage !== 'bench' && stage !== 'before-start') return null;
  const before = prose.text.slice(Math.max(0, start - 24), start);
  const way = /\b(out|in|down|up)(?: by| about| exactly)? $/i.exec(before)?.[1];
  return (way?.toLowerCase() ?? null) as Sense | null;
}

/** A tool's size, a step of so much at a time, or a time to wait: no setting. */
function isAside(
  prose: Prose,
  start: number,
  end: number,
  statement: Statement,
  words: { readonly tools: readonly string[]; readonly steps: readonly string[] },
): boolean {
  const after = /^[^.;:!?]*/.exec(prose.text.slice(end, end + 40))?.[0] ?? '';
  const before = /[^.;:!?]*$/.exec(prose.text.slice(Math.max(0, start - 30), start))?.[0] ?? '';
  // `a 1/2 in open-end wrench`: a tool's word comes within three words of its size.
  const next = firstWords(after, 3);
  if (statement.nominal?.gauge == null && holdsAny(next, words.tools)) return true;
  if (statement.dimension !== 'turns') return false;
  // A screw is turned by steps as well as set: only a count with its sense can be a setting.
  return (
    statement.sense === null ||
    holdsAny(next, words.steps) ||
    holdsAny(lastWords(before, 2), words.steps)
  );
}

function firstWords(text: string, count: number): string {
  return text
    .trim()
    .split(/[\s-]+/)
    .slice(0, count)
    .join(' ');
}

function lastWords(text: string, count: number): string {
  return text
    .trim()
    .split(/[\s-]+/)
    .slice(-count)
    .join(' ');
}

/** The settings that an operation makes, and those that its own steps print. */
function settingsBeside(
  operation: Operation,
  sheet: Sheet,
  cache: Map<number, readonly Setting[]>,
): readonly Setting[] {
  const before = cache.get(operation.index);
  if (before) return before;
  const beside = new Set<Setting>();
  for (const name of operation.known?.settings ?? []) {
    const setting = settingNamed(name, sheet);
    if (setting) beside.add(setting);
  }
  for (const use of sheet.values) {
    if (use.operation === operation.index && use.setting) beside.add(use.setting);
  }
  const settings = [...beside];
  cache.set(operation.index, settings);
  return settings;
}

function standing(
  span: Span,
  statement: Statement,
  near: readonly Setting[],
  sheet: Sheet,
): ProseNumber | null {
  for (const setting of near) {
    const match = matchIn(statement, setting);
    // A gauge taken in the hand, or a limit told in words, is no second statement of the setting.
    if (match === 'aside') return null;
    if (match) return { span, statement, standing: 'typed', setting, ...match };
  }
  for (const [, size] of sheet.unit.sizes) {
    const unit = readOf(size);
    if (unit && sameFamily(unit.dimension, statement.dimension) && isSame(unit, statement))
      return null;
  }
  const rival = isDistance(statement)
    ? undefined
    : near.find((setting) => comparable(readOf(setting.value), statement));
  for (const setting of sheet.settings.values()) {
    if (near.includes(setting)) continue;
    const match = matchIn(statement, setting);
    if (match === 'aside' && !rival) return null;
    if (match && match !== 'aside' && (!rival || match.verbatim)) {
      return { span, statement, standing: 'typed', setting, ...match };
    }
  }
  const value = readOf(rival?.value ?? null);
  if (rival?.value && value) {
    return {
      span,
      statement,
      standing: 'near',
      setting: rival,
      against: { size: rival.value, statement: value },
      verbatim: false,
    };
  }
  if (CASUAL.has(statement.dimension) || isDistance(statement)) return null;
  return { span, statement, standing: 'stray', setting: null, against: null, verbatim: false };
}

/** Longer than anything that is set on such a unit, in mm: how far off, or how long a hose. */
const DISTANCE = 150;

function isDistance(statement: Statement): boolean {
  const least = principal(statement)?.base ?? statement.low?.base;
  return statement.dimension === 'length' && least !== undefined && least.compare(DISTANCE) > 0;
}

/** Whether a size in prose could be meant as this value: same dimension and not the other way. */
function comparable(value: Statement | null, statement: Statement): boolean {
  if (!value || value.condition !== null || !sameFamily(value.dimension, statement.dimension))
    return false;
  return !(value.sense && statement.sense && value.sense !== statement.sense);
}

function isSame(one: Statement, two: Statement): boolean {
  const { verdict } = agree(one, two, { gauges: null });
  return verdict === 'same' || verdict === 'agrees' || verdict === 'chopped' || verdict === 'loose';
}

type Match = { readonly against: ProseNumber['against']; readonly verbatim: boolean };

function matchIn(statement: Statement, setting: Setting): Match | 'aside' | null {
  let aside = false;
  let loose: Match | null = null;
  for (const { size, role } of sizesOfSetting(setting)) {
    const stated = readOf(size);
    if (!stated || !sameFamily(stated.dimension, statement.dimension)) continue;
    if (stated.sense && statement.sense && stated.sense !== statement.sense) continue;
    if ((role === 'value' || role === 'also') && isSame(stated, statement)) {
      const verbatim = plain(stated.text) === plain(statement.text);
      if (verbatim) return { against: { size, statement: stated }, verbatim };
      loose ??= { against: { size, statement: stated }, verbatim };
    } else if (isSame(stated, statement) || isLimit(stated, statement)) {
      aside = true;
    } else if (statement.nominal?.gauge && liesInside(stated, statement.nominal)) {
      aside = true;
    }
  }
  if (loose && statement.nominal?.gauge) return 'aside';
  return loose ?? (aside ? 'aside' : null);
}

/** Whether a figure is one of the limits of a toleranced size. */
function isLimit(stated: Statement, statement: Statement): boolean {
  const amount = statement.nominal ?? statement.low?.amount ?? statement.high?.amount;
  if (!amount) return false;
  return [stated.low, stated.high].some(
    (limit) =>
      limit &&
      limit.base.compare(amount.could.low) >= 0 &&
      limit.base.compare(amount.could.high) <= 0,
  );
}

function plain(text: string): string {
  return text.toLowerCase().replace(/\s+/g, ' ').trim();
}
