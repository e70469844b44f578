import { thread } from '../gauges/index.ts';
import type { BoundPlace, Kind } from '../kinds/model.ts';
import {
  allUnits,
  heightText,
  rational,
  readStatement,
  wireGaugeNamed,
} from '../quantity/index.ts';
import type { Dimension, GaugeBook, Statement } from '../quantity/model.ts';
import { unitCount } from '../sheet/index.ts';
import type { PlacedSize, Setting, Sheet } from '../sheet/model.ts';
import type { Span } from '../text/index.ts';
import { hasWord } from '../text/index.ts';
import { exactFigure, type Figure, figureOf } from './figure.ts';
import type { RelationDimension } from './model.ts';

/** What relations may know besides the sheet and its kind. */
export interface RelationFacts {
  readonly gauges: GaugeBook;
  /** What the edition says a bare `SWG` means; the sheet's own word goes first. */
  readonly wireGauge: string | null;
  /** The edition's altitude as written; null or absent where it says none. */
  readonly altitude?: string | null;
}

/** One place that a quantity is bound to, with what the sheet says there. */
export interface StatedPlace {
  /** The same for the same place in every relation. */
  readonly id: string;
  readonly bound: BoundPlace;
  /**
   * `stated`, `absent` (it may be worked), `unread`, or `other`: said in words or as another kind
   * of size, and so neither known nor missing.
   */
  readonly status: 'stated' | 'absent' | 'unread' | 'other';
  /** As the sheet has it; null where it says nothing. */
  readonly text: string | null;
  /** Null where it stands on no sheet: a fixed figure, one of the edition. */
  readonly span: Span | null;
  readonly statement: Statement | null;
  readonly figure: Figure | null;
  /** What a message calls it: a setting's name as written, a key, a size of the unit. */
  readonly key: string;
  readonly setting: Setting | null;
}

/** Looks up places of one sheet; each is read once. */
export class Places {
  readonly #sheet: Sheet;
  readonly #kind: Kind;
  readonly #facts: RelationFacts;
  readonly #settings = new Map<string, Setting>();
  readonly #known = new Map<string, StatedPlace>();

  constructor(sheet: Sheet, kind: Kind, facts: RelationFacts) {
    this.#sheet = sheet;
    this.#kind = kind;
    this.#facts = facts;
    for (const setting of sheet.settings.values()) {
      if (!this.#settings.has(setting.id)) this.#settings.set(setting.id, setting);
    }
  }

  /** The setting of the kind's name; null where the sheet has none. */
  setting(name: string): Setting | null {
    return this.#settings.get(name) ?? null;
  }

  /**
   * The place of a quantity of a dimension. `at` names the place of a setting that has several
   * (`primary`); null for the one value that serves all.
   */
  find(bound: BoundPlace, dimension: RelationDimension, at: string | null): StatedPlace {
    const key = `${idOf(bound, at)} at ${at} ${dimension}`;
    const known = this.#known.get(key);
    if (known) return known;
    const found = this.#read(bound, dimension, at);
    const own = idOf(bound, at);
    // What is worked for one barrel is no figure of the other.
    const id = found.status === 'absent' && at !== null ? `${own} at ${at}` : own;
    const place: StatedPlace = { ...found, id, bound };
    this.#known.set(key, place);
    return place;
  }

  #read(bound: BoundPlace, dimension: RelationDimension, at: string | null): Found {
    switch (bound.is) {
      case 'setting':
        return this.#ofSetting(bound, dimension, at);
      case 'unit': {
        const size = this.#sheet.unit.sizes.get(bound.name) ?? null;
        return size ? sized(size, bound.name, null, dimension) : absent(bound.name);
      }
      case 'thread':
        return this.#ofThread(bound.name);
      case 'count':
        return this.#ofCount(bound.name);
      case 'edition':
        return this.#ofText(heightText(this.#facts.altitude ?? '') || null, bound.name, dimension);
      case 'fixed':
        return this.#ofText(bound.text, bound.because, dimension);
      case 'worked':
        return absent(bound.name);
    }
  }

  #ofSetting(
    { setting: name, key, atPlace, only, unless }: Extract<BoundPlace, { is: 'setting' }>,
    dimension: RelationDimension,
    at: string | null,
  ): Found {
    const setting = this.setting(name);
    if (!setting) return absent(key ?? name);
    const suits = (text: string, isValue: boolean): boolean => {
      const spoken = spokenBeside(setting, text, isValue);
      const isMeant = only.length === 0 || only.some((word) => hasWord(spoken, word));
      return isMeant && !unless.some((word) => hasWord(spoken, word));
    };
    const found =
      key === null
        ? ownSize(setting, dimension, atPlace ?? at, suits)
        : this.#beside(setting, key, dimension);
    const { text } = found;
    const isOther = text !== null && !suits(text, key === null && text === setting.value?.text);
    return isOther ? { ...found, status: 'other', figure: null } : found;
  }

  #beside(setting: Setting, key: string, dimension: RelationDimension): Found {
    const placed = key === 'travel' ? setting.travel : key === 'gauge' ? setting.gauge : null;
    if (placed) return sized(placed, key, setting, dimension);
    const said = setting.said.get(key);
    if (!said) return absent(key, setting);
    if (dimension === 'ratio' && isPlainNumber(said.value)) {
      const { value, span } = said;
      const figure = exactFigure(rational(value));
      return { ...absent(key, setting), status: 'stated', text: value, span, figure };
    }
    const jets = key === MARKED ? setting.jets : undefined;
    // The number of a measured flow says no bore, and is none that is missing.
    if (jets === 'flow') return { ...absent(key, setting), status: 'other' };
    // A number that is stamped on the part says no size where nobody tells how its maker counts.
    if (key === MARKED && jets === undefined && /^\D{0,4}\d+$/.test(said.value.trim())) {
      return { ...absent(key, setting), status: 'other' };
    }
    const height = dimension === 'length' ? heightText(said.value) : said.value;
    return sized(
      { ...said, ...this.#reading(height, dimension, jets), text: said.value },
      key,
      setting,
      dimension,
    );
  }

  #reading(
    text: string,
    dimension: RelationDimension,
    jets?: Setting['jets'],
  ): Pick<PlacedSize, 'text' | 'reading'> {
    const { gauges, wireGauge } = this.#facts;
    const swg = wireGaugeNamed(this.#sheet.wireGauge?.value ?? wireGauge);
    // What a plunger sweeps is told as a volume too: that of one stroke.
    if (dimension === 'delivery') {
      const volume = readStatement(text, { gauges, expect: ['volume'], swg });
      if (volume.ok && volume.statement.dimension === 'volume') {
        const swept = readStatement(`${text} per stroke`, { gauges, expect: ['delivery'], swg });
        return { text, reading: swept.ok ? swept : volume };
      }
    }
    const expect = dimension === 'ratio' ? undefined : [dimension as Dimension];
    return { text, reading: readStatement(text, { gauges, expect, swg, jets }) };
  }

  /** A figure that stands on no sheet: a size, or a plain number for a ratio. */
  #ofText(text: string | null, key: string, dimension: RelationDimension): Found {
    if (text === null) return absent(key);
    const bare = { ...absent(key), text };
    if (dimension === 'ratio' && isPlainNumber(text)) {
      return { ...bare, status: 'stated', figure: exactFigure(rational(text)) };
    }
    const { reading } = this.#reading(text, dimension);
    if (!reading.ok || reading.statement.dimension !== dimension) return bare;
    const { statement } = reading;
    return { ...bare, status: 'stated', statement, figure: figureOf(statement) };
  }

  /** The pitch of a setting's screw, by its own `thread` or the unit's; or of a thread of the unit. */
  #ofThread(name: string): Found {
    const setting = this.setting(name);
    const own = setting?.said.get('thread');
    const ofUnit = this.#kind.settings.get(name)?.thread ?? name;
    const named = own ?? this.#sheet.unit.threads.get(ofUnit);
    if (!named) return { ...absent(ofUnit), status: 'other' };
    const screw = thread(named.value);
    return {
      ...absent(own ? 'thread' : ofUnit),
      status: screw ? 'stated' : 'unread',
      text: named.value,
      span: named.span,
      figure: screw && exactFigure(screw.pitchMm),
    };
  }

  /** A number that features say; not known where none or two of them do. */
  #ofCount(name: string): Found {
    const said = unitCount(this.#sheet, name);
    if (said === null) return { ...absent(name), status: 'other' };
    return {
      ...absent(name),
      status: 'stated',
      text: String(said.count),
      span: said.span,
      figure: exactFigure(rational(said.count)),
    };
  }
}

/** The key under which a jet's number stands beside its bore. */
const MARKED = 'marked';

/** Strokes, barrels: at most as many digits as a count has. */
function isPlainNumber(text: string): boolean {
  return /^\d{1,9}(?:\.\d{1,9})?$/.test(text);
}

type Found = Omit<StatedPlace, 'id' | 'bound'>;

function absent(key: string, setting: Setting | null = null): Found {
  return { status: 'absent', text: null, span: null, statement: null, figure: null, key, setting };
}

function idOf(bound: BoundPlace, at: string | null): string {
  if (bound.is === 'fixed') return `fixed ${bound.text}`;
  if (bound.is !== 'setting') return `${bound.is} ${bound.name}`;
  const { setting, key, atPlace, only } = bound;
  if (only.length > 0) return `setting ${setting} key ${key} only ${only.join(' ')}`;
  if (key !== null) return `setting ${setting} key ${key}`;
  const place = atPlace ?? at;
  return place === null ? `setting ${setting}` : `setting ${setting} place ${place}`;
}

/** A setting's own size: the value, or the first of the others that is the right kind of size. */
function ownSize(
  setting: Setting,
  dimension: RelationDimension,
  at: string | null,
  suits: (text: string, isValue: boolean) => boolean,
): Found {
  const key = setting.name.value;
  const place = at === null ? undefined : setting.places.get(at);
  const sizes = place ? [place] : [...(setting.value ? [setting.value] : []), ...setting.also];
  const fits = sizes.filter(
    ({ reading }) => reading.ok && reading.statement.dimension === dimension,
  );
  const first =
    fits.find((size) => suits(size.text, size === setting.value)) ?? fits[0] ?? sizes[0];
  // A setting that has only places, and none of this name, says it elsewhere.
  if (!first) {
    return { ...absent(key, setting), status: setting.places.size > 0 ? 'other' : 'absent' };
  }
  return sized(first, key, setting, dimension);
}

function sized(
  { text, span, reading }: PlacedSize,
  key: string,
  setting: Setting | null,
  dimension: RelationDimension,
): Found {
  const found = { ...absent(key, setting), text, span };
  if (!reading.ok) return { ...found, status: 'unread' };
  const { statement } = reading;
  // A bare wire number that may be two sizes is none yet.
  const figure =
    statement.dimension === dimension && statement.ambiguous.length === 0
      ? figureOf(statement)
      : null;
  return { ...found, statement, figure, status: figure ? 'stated' : 'other' };
}

/**
 * What is said with a figure: its own words, and for a value the words that stand beside it. Another
 * figure is of what the value is of, unless it says of what itself.
 */
function spokenBeside(setting: Setting, text: string, isValue: boolean): string {
  const own = text.toLowerCase();
  const ways = [...(setting.known?.saidBy.values() ?? [])].flat();
  if (!isValue && ways.some((word) => !isUnit(word) && hasWord(own, word))) return own;
  const words = [...setting.said.values()].map(({ value }) => value);
  const value = isValue ? [] : [setting.value?.text ?? ''];
  return [own, ...value, ...words.filter((word) => !/\d/.test(word))].join(' ; ').toLowerCase();
}

/** `rpm` says what a figure is counted in, not of what it is. */
function isUnit(word: string): boolean {
  return allUnits().some(({ id }) => id === word);
}
