import {
  agree,
  differenceText,
  exactText,
  inUnit,
  principal,
  readStatement,
  writeIn,
} from '../quantity/index.ts';
import type { Dimension, GaugeBook, Rational, Statement } from '../quantity/model.ts';
import type { Change, DissentSnapshot, SettingSnapshot } from './model.ts';
import { sameSubstance } from './substance.ts';

/** What reading the sizes of two snapshots takes besides their texts. */
export interface SizeReading {
  readonly gauges: GaugeBook;
  /** The dimensions that the setting of that name may have; undefined where nothing is known. */
  readonly dimensionsOf: (setting: string) => readonly Dimension[] | undefined;
}

/** Everything in which a setting differs from what it was. */
export function settingChanges(
  before: SettingSnapshot,
  after: SettingSnapshot,
  reading: SizeReading,
): Change[] {
  const changes: Change[] = [];
  const about = after.name;
  const expect = reading.dimensionsOf(about);
  const put = (change: Omit<Change, 'about' | 'label' | 'size'> & { size?: string | null }) =>
    changes.push({ about, label: after.label, size: null, ...change });
  for (const place of union(Object.keys(before.values), Object.keys(after.values))) {
    const [old, fresh] = [before.values[place], after.values[place]];
    if (old === fresh) continue;
    const of = (text: string | undefined) =>
      text === undefined ? null : place === '' ? text : `${place} ${text}`;
    const same = old !== undefined && fresh !== undefined && sameSize(old, fresh, expect, reading);
    put({
      kind: same ? 'setting-rewritten' : 'setting-changed',
      weight: same ? 'wording' : 'substance',
      before: of(old),
      after: of(fresh),
      size:
        same || old === undefined || fresh === undefined
          ? null
          : sizeOfChange(old, fresh, expect, reading),
    });
  }
  const { dropped, added } = differences(before.also, after.also);
  if (dropped.length + added.length > 0) {
    put({
      kind: 'equivalent-changed',
      weight: 'wording',
      before: listed(dropped),
      after: listed(added),
    });
  }
  for (const key of union(Object.keys(before.said), Object.keys(after.said))) {
    const [old, fresh] = [before.said[key], after.said[key]];
    if (old === fresh) continue;
    const of = (text: string | undefined) =>
      text === undefined ? null : `${key.replaceAll('-', ' ')} ${text}`;
    const same =
      old !== undefined && fresh !== undefined && sameSize(old, fresh, undefined, reading);
    put({
      kind: 'condition-changed',
      weight: same ? 'wording' : 'substance',
      before: of(old),
      after: of(fresh),
    });
  }
  if (before.from.join('\n') !== after.from.join('\n')) {
    put({
      kind: 'source-changed',
      weight: 'wording',
      before: listed(before.from),
      after: listed(after.from),
    });
  }
  const rulings = differences(before.but.map(dissentText), after.but.map(dissentText));
  if (rulings.dropped.length + rulings.added.length > 0) {
    put({
      kind: 'ruling-changed',
      weight: 'wording',
      before: listed(rulings.dropped),
      after: listed(rulings.added),
    });
  }
  if (before.note !== after.note) {
    const same = sameSubstance(before.note ?? '', after.note ?? '');
    put({
      kind: 'note-changed',
      weight: same ? 'wording' : 'substance',
      before: before.note,
      after: after.note,
    });
  }
  return changes;
}

function dissentText({ value, from, ruling }: DissentSnapshot): string {
  return `${value ?? 'no value'} in ${from ?? 'no source'}: ${ruling ?? 'no ruling'}`;
}

function listed(texts: readonly string[]): string | null {
  return texts.length === 0 ? null : texts.join('; ');
}

function union(one: readonly string[], other: readonly string[]): string[] {
  return [...new Set([...one, ...other])];
}

/** What each list has more of than the other, a text that stands twice counted twice. */
function differences(
  before: readonly string[],
  after: readonly string[],
): { readonly dropped: readonly string[]; readonly added: readonly string[] } {
  const left = [...before];
  const added = after.filter((text) => {
    const at = left.indexOf(text);
    if (at >= 0) left.splice(at, 1);
    return at < 0;
  });
  return { dropped: left, added };
}

function read(
  text: string,
  expect: readonly Dimension[] | undefined,
  { gauges }: SizeReading,
): Statement | null {
  const found = readStatement(text, expect ? { gauges, expect } : { gauges });
  return found.ok ? found.statement : null;
}

/**
 * Whether two texts state one size with the same limits, sense and datum: `13/64 drill` and
 * `13/64 in`, `18 to 22 thou` and `0.018–0.022 in`. A size with fewer places is another statement.
 */
function sameSize(
  old: string,
  fresh: string,
  expect: readonly Dimension[] | undefined,
  reading: SizeReading,
): boolean {
  const [one, two] = [read(old, expect, reading), read(fresh, expect, reading)];
  if (!one || !two) return squeezed(old) === squeezed(fresh);
  const equal = (first: Rational | undefined, second: Rational | undefined) =>
    first && second ? first.equals(second) : first === second;
  return (
    one.dimension === two.dimension &&
    one.condition === two.condition &&
    one.sense === two.sense &&
    one.datum === two.datum &&
    one.reference === two.reference &&
    one.about === two.about &&
    equal(one.nominal?.base, two.nominal?.base) &&
    equal(one.low?.base, two.low?.base) &&
    equal(one.high?.base, two.high?.base) &&
    agree(one, two, { gauges: null }).verdict === 'same'
  );
}

function squeezed(text: string): string {
  return text.toLowerCase().replace(/\s+/g, ' ').trim();
}

/** `0.010 in more, 0.3 of the old tolerance`; null where the two cannot be held against each other. */
function sizeOfChange(
  old: string,
  fresh: string,
  expect: readonly Dimension[] | undefined,
  reading: SizeReading,
): string | null {
  const [one, two] = [read(old, expect, reading), read(fresh, expect, reading)];
  if (!one || !two || one.dimension !== two.dimension) return null;
  if (one.condition !== null || two.condition !== null) return null;
  const [first, second] = [principal(one), principal(two)];
  const width = one.low && one.high ? one.high.base.sub(one.low.base) : null;
  const tolerance = (shift: Rational): string => {
    if (!width || width.n === 0n) return '';
    const share = shift.abs().div(width);
    return `, ${shareText(share)} of the old tolerance`;
  };
  if (first && second && !first.base.equals(second.base)) {
    const shift = second.base.sub(first.base);
    return `${differenceText(first, second, two)}${tolerance(shift)}`;
  }
  if (!width || !two.low || !two.high || !one.low || !one.high) {
    return two.low || two.high ? 'other limits' : null;
  }
  const band = two.high.base.sub(two.low.base);
  if (!first || !second) {
    const shift = two.low.base.add(two.high.base).sub(one.low.base).sub(one.high.base).div(2);
    if (shift.n !== 0n) return shiftText(shift, two) + tolerance(shift);
  }
  if (band.equals(width)) return null;
  const times = band.div(width);
  return `tolerance ${band.compare(width) > 0 ? 'wider' : 'narrower'}: ${shareText(times)} of the old`;
}

function shiftText(shift: Rational, two: Statement): string {
  const amount = two.low?.amount ?? two.high?.amount;
  if (!amount) return shift.s > 0n ? 'more' : 'less';
  const number = inUnit(shift.abs(), two.dimension, amount.unit);
  const places = amount.unit === 'in' ? 3 : 2;
  const text =
    number.d === 1n
      ? `${exactText(number)} ${amount.unit}`
      : writeIn(shift.abs(), two.dimension, amount.unit, places);
  return `middle ${text} ${shift.s > 0n ? 'more' : 'less'}`;
}

function shareText(share: Rational): string {
  const number = share.valueOf();
  return number >= 9.95 ? number.toFixed(0) : number.toFixed(1);
}
