import { agree, liesInside, principal, sameFamily } from '../quantity/index.ts';
import type { Statement } from '../quantity/model.ts';
import type { Setting, Sheet } from '../sheet/model.ts';
import type { Span } from '../text/index.ts';
import type { Told } from './prose-asides.ts';
import { settingsNamed } from './prose-names.ts';
import type { ProseNumber } from './prose-numbers.ts';
import { readOf, sizesOfSetting } from './stated-sizes.ts';

/** Dimensions of which prose is full without meaning a setting: ten minutes, a liter, a 12-volt lamp. */
const CASUAL: ReadonlySet<Statement['dimension']> = new Set([
  'time',
  'volume',
  'mass',
  'temperature',
  'percent',
  'density',
  'area',
  'voltage',
  'current',
]);

/**
 * How a figure stands to the settings; null where nothing is to be said of it. What the sentence names
 * goes before what its heading makes, and that before what merely has the same size.
 */
export function standing(span: Span, told: Told, sheet: Sheet): ProseNumber | null {
  const { statement, near } = told;
  const found = { span, statement, elsewhere: null, meant: true };
  const named = settingsNamed(told, sheet).filter((setting) => isRival(setting, statement));
  for (const setting of [...named, ...near]) {
    const match = matchIn(statement, setting);
    // A gauge taken in the hand, or a limit told in words, is no second statement of the setting.
    if (match === 'aside') return null;
    if (match) return { ...found, standing: 'typed', setting, ...match };
  }
  for (const [, size] of sheet.unit.sizes) {
    const unit = readOf(size);
    if (unit && sameFamily(unit.dimension, statement.dimension) && isSame(unit, statement))
      return null;
  }
  const rivals = isDistance(statement) ? [] : near.filter((each) => isRival(each, statement));
  const rival =
    (isDistance(statement) ? undefined : named.find((each) => rivals.includes(each))) ??
    (told.inStep && !isDistance(statement) ? named[0] : undefined) ??
    rivals[0];
  let elsewhere: Setting | null = null;
  for (const setting of sheet.figures) {
    if (near.includes(setting)) continue;
    const match = matchIn(statement, setting);
    if (match === 'aside' && !rival) return null;
    if (!match || match === 'aside') continue;
    if (!rival) return { ...found, standing: 'typed', setting, ...match, meant: false };
    elsewhere ??= setting;
  }
  const value = readOf(rival?.value ?? null);
  if (rival?.value && value) {
    const against = { size: rival.value, statement: value };
    return { ...found, standing: 'near', setting: rival, against, verbatim: false, elsewhere };
  }
  if (CASUAL.has(statement.dimension) || isDistance(statement)) return null;
  return { ...found, standing: 'stray', setting: null, against: null, verbatim: false };
}

/** Longer than anything that is set on such a unit, in mm: how far off, or how long a hose. */
const DISTANCE = 150;

function isDistance(statement: Statement): boolean {
  const least = principal(statement)?.base ?? statement.low?.base;
  return statement.dimension === 'length' && least !== undefined && least.compare(DISTANCE) > 0;
}

/** Whether a size in prose could be meant as a setting's: same dimension and not the other way. */
function isRival(setting: Setting, statement: Statement): boolean {
  const value = readOf(setting.value);
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
