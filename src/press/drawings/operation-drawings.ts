import { thread } from '../../gauges/index.ts';
import { type DrawingChoice, drawingForm, type KindDrawing } from '../../kinds/index.ts';
import { isFlat } from '../../quantity/index.ts';
import type { Statement } from '../../quantity/model.ts';
import { settingNamed, unitCount } from '../../sheet/index.ts';
import type { Operation, PlacedSize, Setting, Sheet } from '../../sheet/model.ts';
import { draws } from './draws.ts';
import type { FedGauge, FedSize, Feed } from './feed.ts';
import { type Drawing, finish } from './finish.ts';

export type { Drawing } from './finish.ts';

/** A drawing of an operation, with the name of what it shows. */
export interface OperationDrawing extends Drawing {
  readonly shows: string;
  /** Its place among the drawings of a unit where there is room for a few: 1 first. */
  readonly rank: number;
}

/**
 * How drawings are made: what the ids of each begin with, whether each is a file of its own, and whether
 * it is printed at seven tenths of its size; see `finish`.
 */
export interface DrawingOptions {
  readonly prefix: string;
  readonly alone: boolean;
  readonly reduced?: boolean;
}

/**
 * The drawings that an operation of a sheet shows, as its kind says and from the sheet's own sizes, in
 * the kind's order. None where the kind shows none, where the sheet lacks or cannot state a size that
 * a drawing needs, or where it does not say which form of the drawing holds: nothing is guessed. Each
 * is about 60 mm wide with lettering of 2.3 mm and more, to be printed at that size.
 */
export function operationDrawings(
  sheet: Sheet,
  operation: Operation,
  options: DrawingOptions,
): readonly OperationDrawing[] {
  const { known } = operation;
  const drawn: OperationDrawing[] = [];
  for (const drawing of known?.drawings ?? []) {
    if (!shows(drawing, sheet)) continue;
    const feed = feedOf(drawing, sheet, operation);
    const sketch = feed === null ? null : draws[drawing.shows](feed);
    if (sketch === null) continue;
    const { scene, title, words } = sketch;
    const prefix = drawn.length === 0 ? options.prefix : `${options.prefix}-${drawn.length + 1}`;
    drawn.push({
      shows: drawing.shows,
      rank: drawing.rank,
      ...finish(scene, {
        prefix,
        alone: options.alone,
        reduced: options.reduced ?? false,
        title,
        words,
      }),
    });
  }
  return drawn;
}

/** A drawing with the operation beside whose steps it stands. */
export interface RankedDrawing extends OperationDrawing {
  readonly operation: Operation;
}

/**
 * The drawings of a whole sheet, those first that its kind ranks first, and among equals in the order of
 * the work: whoever has room for two or three takes them from the start. `options.prefix` is
 * followed by the number of the operation.
 */
export function rankedDrawings(sheet: Sheet, options: DrawingOptions): readonly RankedDrawing[] {
  const drawn = new Map<string, RankedDrawing>();
  for (const operation of sheet.operations) {
    const prefix = `${options.prefix}-${operation.index + 1}`;
    for (const drawing of operationDrawings(sheet, operation, { ...options, prefix })) {
      // An operation that is done again shows the same.
      const key = `${operation.known?.name} ${drawing.shows}`;
      if (!drawn.has(key)) drawn.set(key, { ...drawing, operation });
    }
  }
  // Sorting keeps the order of equals; two without a rank have the same.
  return [...drawn.values()].sort((a, b) => (a.rank === b.rank ? 0 : a.rank - b.rank));
}

/** Whether a drawing shows the unit at hand, by its features. */
function shows({ ifFeature, unlessFeature }: KindDrawing, { unit }: Sheet): boolean {
  const has = (names: readonly string[]) => unit.features.some(({ id }) => names.includes(id));
  return (ifFeature.length === 0 || has(ifFeature)) && !has(unlessFeature);
}

/** What a drawing is fed with from a sheet; null where something that it needs is not there. */
function feedOf(drawing: KindDrawing, sheet: Sheet, operation: Operation): Feed | null {
  const form = drawingForm(drawing.shows);
  if (form === null) return null;
  const sizes = new Map<string, FedSize>();
  let first: Setting | null = null;
  for (const [slot, { dimensions, needed }] of Object.entries(form.sizes)) {
    const from = drawing.sizes.get(slot);
    const setting = from === undefined ? null : settingNamed(from, sheet);
    first ??= setting;
    const size = setting?.value ?? (from === undefined ? undefined : sheet.unit.sizes.get(from));
    const fed = size === undefined ? null : fedSize(size, setting);
    if (fed !== null && dimensions.some((each) => each === fed.dimension)) sizes.set(slot, fed);
    else if (needed) return null;
  }
  const choices = new Map<string, string>();
  for (const slot of Object.keys(form.choices)) {
    const chosen = choiceOf(drawing.choices.get(slot), first);
    if (chosen === null) return null;
    choices.set(slot, chosen);
  }
  const counts = new Map<string, number>();
  for (const slot of form.counts ?? []) {
    const said = unitCount(sheet, drawing.counts.get(slot) ?? '');
    if (said === null) return null;
    counts.set(slot, said.count);
  }
  const texts = workText(sheet, operation);
  const label = (slot: string) =>
    firstOf(drawing.called.get(slot) ?? [], texts) ??
    drawing.labels.get(slot) ??
    form.labels[slot] ??
    slot;
  return {
    size: (slot) => sizes.get(slot) ?? null,
    pitchMm: (slot) => {
      const named = sheet.unit.threads.get(drawing.threads.get(slot) ?? '');
      return (named === undefined ? null : thread(named.value))?.pitchMm.valueOf() ?? null;
    },
    choice: (slot) => choices.get(slot) ?? '',
    count: (slot) => counts.get(slot) ?? 0,
    label,
  };
}

/** The stretches of words below an operation's heading: none runs on into the next. */
function workText(sheet: Sheet, operation: Operation): readonly string[] {
  return sheet.prose.filter((prose) => prose.operation === operation.index).map(({ text }) => text);
}

/** Of some names, in the singular or the plural, the one that stands first; of two at one place the longer. */
function firstOf(names: readonly string[], texts: readonly string[]): string | null {
  const longest = [...names].sort((a, b) => b.length - a.length);
  for (const text of texts) {
    const level = leveled(text);
    let first: { readonly name: string; readonly at: number } | null = null;
    for (const name of longest) {
      const words = leveled(name);
      for (const at of [level.indexOf(words), level.indexOf(`${words.trimEnd()}s `)]) {
        if (at >= 0 && (first === null || at < first.at)) first = { name, at };
      }
    }
    if (first !== null) return first.name;
  }
  return null;
}

function choiceOf(choice: DrawingChoice | undefined, setting: Setting | null): string | null {
  if (choice === undefined) return null;
  const said = choice.by === null ? undefined : saidUnder(choice.by, setting);
  for (const [form, words] of choice.when) {
    if (said !== undefined && words.some((word) => hasWords(said, word))) return form;
  }
  return choice.otherwise;
}

function saidUnder(key: string, setting: Setting | null): string | undefined {
  const placed = key === 'at' ? setting?.at : setting?.said.get(key);
  return placed?.value;
}

/** Whether words stand in a text, whole: `on` is not in `horizontal`. */
function hasWords(text: string, words: string): boolean {
  return leveled(text).includes(leveled(words));
}

/** Words in small letters with one space around each. */
function leveled(text: string): string {
  return ` ${text
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, ' ')
    .trim()} `;
}

function fedSize(size: PlacedSize, setting: Setting | null): FedSize | null {
  if (!size.reading.ok) return null;
  const { statement } = size.reading;
  const sense = statement.sense ?? null;
  const travel = setting?.travel?.text ?? null;
  const gauge = gaugeOf(setting, statement);
  const { text, dimension } = { text: size.text, dimension: statement.dimension };
  return { text, dimension, value: middle(statement), gauge, travel, sense };
}

/** The nominal; of limits alone the middle; of one limit alone that limit. */
function middle({ nominal, low, high }: Statement): number | null {
  if (nominal !== null) return nominal.base.valueOf();
  if (low !== null && high !== null) return low.base.add(high.base).div(2).valueOf();
  return (low ?? high)?.base.valueOf() ?? null;
}

/** The gauge that the sheet names for a setting, or by whose name it states the size. */
function gaugeOf(setting: Setting | null, statement: Statement): FedGauge | null {
  const own = statement.nominal?.gauge ?? null;
  if (own !== null) return { text: null, mm: own.mm.valueOf(), flat: isFlat(own.system) };
  const named = setting?.gauge ?? null;
  if (named === null || !named.reading.ok) return null;
  const { nominal } = named.reading.statement;
  if (nominal === null) return null;
  const flat = nominal.gauge !== null && isFlat(nominal.gauge.system);
  return { text: named.text, mm: nominal.base.valueOf(), flat };
}
