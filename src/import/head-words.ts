import { levelName } from '../kinds/index.ts';
import type { Kind } from '../kinds/model.ts';
import { isUnit } from '../quantity/index.ts';
import { nearestName } from '../text/index.ts';
import { type Field, type RowField, type Target, targetText } from './mapping.ts';
import { type SizeTools, unitWorks } from './written-size.ts';

/** `sure`: the head says it; `likely`: it nearly does; `none`: it is not known what it means. */
export type Confidence = 'sure' | 'likely' | 'none';

/** What a head was taken for. */
export interface HeadGuess {
  readonly to: Target;
  /** The unit that the head states; null where it states none. */
  readonly unit: string | null;
  readonly confidence: Confidence;
  /** Half a sentence. */
  readonly because: string;
}

/** Heads that lists of any kind of unit have (common practice, no source). */
const FIELD_WORDS: Readonly<Record<Field, string>> = {
  maker: 'maker|make|manufacturer|mfr|made by|brand',
  model: 'model|type|unit|unit model|unit type|model no|model number',
  'part-numbers': 'part number|part numbers|part no|part nos|part|tag|tag number|tag no|p n|pn',
  features: 'features|feature|fittings|equipment|options',
  title: 'title|name|description',
  marque: 'marque|car|vehicle|machine|car make|vehicle make|fits|fitted to|application|used on',
  'fits-model': 'car model|vehicle model|machine model|fits model',
  years: 'year|years|model year|model years|car years|built',
  note: 'note|notes|remark|remarks|comment|comments',
  source: 'source|sources|reference|paper|manual|taken from|from|origin',
  'source-year': 'source year|year of source|year of print',
  page: 'page|pages|p|pp|page no|page number',
};

const ROW_WORDS: Readonly<Record<RowField, string>> = {
  setting: 'setting|adjustment|item|what|dimension|spec item|specification item',
  value: 'value|size|spec|specification|figure|reading|dimension value|setting value',
  also: 'also|equivalent|metric|conversion|other way',
  measure: 'unit of measure|units|uom|measure|in units of',
};

function fieldOf<Name extends string>(
  head: string,
  words: Readonly<Record<Name, string>>,
): Name | null {
  const level = levelName(head.replace(/#/g, ' no ')).replaceAll('-', ' ');
  for (const name of Object.keys(words) as Name[]) {
    if (words[name].split('|').includes(level)) return name;
  }
  return null;
}

/** What a head may say of a list in which a row is a setting. */
export function rowFieldOf(head: string): RowField | null {
  return fieldOf(head, ROW_WORDS);
}

/** What a head means where a row is a unit. Settings go before fields: `Float level` is never a note. */
export function guessHead(head: string, kind: Kind, tools: SizeTools): HeadGuess {
  const text = head.replace(/\s+/g, ' ').trim();
  const exact = settingOf(text, kind, tools);
  if (exact !== null) return exact;
  const field = fieldOf(text, FIELD_WORDS);
  if (field !== null) return sure({ to: 'field', field }, 'the head says it');
  const said = saidOf(text, kind);
  if (said !== null) return sure(said, 'the head names the setting and the key');
  for (const { name, unit } of headParts(text)) {
    const key = levelName(name);
    const dimensions = kind.dimensionsOfUnit.get(key);
    if (dimensions !== undefined && (unit === null || unitWorks(unit, dimensions, tools))) {
      return { ...sure({ to: 'unit', key }, 'the head says it'), unit };
    }
    if (kind.threadsOfUnit.has(key)) return sure({ to: 'unit', key }, 'the head says it');
  }
  const feature = kind.featureNamed(text);
  if (feature !== null) {
    return sure({ to: 'feature', feature: feature.name }, 'the head is a feature');
  }
  if (levelName(text) === levelName(kind.title)) {
    return likely({ to: 'field', field: 'model' }, 'the head is the kind of unit');
  }
  return nearHead(text, kind, tools);
}

/** A setting by its name or alias, with a unit behind it or without. */
function settingOf(text: string, kind: Kind, tools: SizeTools): HeadGuess | null {
  let bare: HeadGuess | null = null;
  for (const { name, unit } of headParts(text)) {
    const setting = kind.settingNamed(name);
    if (setting === null) continue;
    const to: Target = { to: 'value', setting: setting.name };
    if (unit === null) bare ??= sure(to, 'the head says it');
    else if (unitWorks(unit, setting.dimensions, tools)) {
      return { ...sure(to, 'the head says it, with its unit'), unit };
    }
  }
  return bare;
}

/** `Float level gasket`: a setting's name and a key that must be said beside it. */
function saidOf(text: string, kind: Kind): Target | null {
  const words = text.split(' ');
  for (let count = 1; count < Math.min(words.length, 4); count += 1) {
    const setting = kind.settingNamed(words.slice(0, -count).join(' '));
    const key = levelName(words.slice(-count).join(' '));
    if (setting?.mustSay.includes(key)) return { to: 'said', setting: setting.name, key };
  }
  return null;
}

/** A misspelt name: near one of the kind's, or of the fields'. */
function nearHead(text: string, kind: Kind, tools: SizeTools): HeadGuess {
  const names = new Map<string, Target>();
  for (const setting of kind.settings.values()) {
    const to: Target = { to: 'value', setting: setting.name };
    for (const name of [setting.name, setting.label, ...setting.aliases]) {
      names.set(levelName(name), to);
    }
  }
  for (const [field, words] of Object.entries(FIELD_WORDS) as [Field, string][]) {
    for (const word of words.split('|')) {
      if (word.length > 4) names.set(levelName(word), { to: 'field', field });
    }
  }
  for (const { name, unit } of headParts(text)) {
    const near = nearestName(levelName(name), names.keys());
    const to = near === null ? undefined : names.get(near);
    if (near === null || to === undefined) continue;
    const guess = likely(to, `the head is nearly \`${near.replaceAll('-', ' ')}\``);
    if (to.to !== 'value' || unit === null) return guess;
    const dimensions = kind.settings.get(to.setting)?.dimensions ?? [];
    if (unitWorks(unit, dimensions, tools)) return { ...guess, unit };
  }
  return { to: { to: 'nothing' }, unit: null, confidence: 'none', because: 'no name is near' };
}

/**
 * A head taken apart into a name and a unit in every way that heads are written: `Idle speed (rpm)`,
 * `Idle speed, rpm`, `Idle speed rpm`; ways with a unit come first, the whole head last.
 */
export function* headParts(head: string): Generator<{ name: string; unit: string | null }> {
  const text = head.replace(/\s+/g, ' ').trim();
  const open = /^(.*?)\s*[([]([^()[\]]+)[)\]]\s*(.*)$/.exec(text);
  if (open) yield* unitForms(`${open[1]} ${open[3]}`.trim(), open[2] ?? '');
  const parted = /^(.+?)\s*[,:;]\s*([^,:;]+)$/.exec(text) ?? /^(.+?)\s+[-–—]\s+(.+)$/.exec(text);
  if (parted) yield* unitForms(parted[1] ?? '', parted[2] ?? '');
  const words = text.split(' ');
  for (let count = Math.min(words.length - 1, 4); count > 0; count -= 1) {
    yield* unitForms(words.slice(0, -count).join(' '), words.slice(-count).join(' '));
  }
  yield { name: text, unit: null };
}

function* unitForms(name: string, written: string): Generator<{ name: string; unit: string }> {
  const given = written.trim().replace(/^in (?=\p{L})/u, '');
  if (given === '' || name === '') return;
  // `(IN.)`, `(RPM)`: heads in capitals, of units that nobody writes so.
  const isShouted = /^[A-Z][A-Z.]+$/.test(given) && isUnit(given);
  const unit = isShouted ? given.toLowerCase() : given;
  if (/^(?:drill (?:no|number|#)|(?:no|number)\.? drill)\.?s?$/i.test(unit)) {
    yield { name, unit: 'No. {} drill' };
  }
  yield { name, unit };
}

function sure(to: Target, because: string): HeadGuess {
  return { to, unit: null, confidence: 'sure', because };
}

function likely(to: Target, because: string): HeadGuess {
  return { to, unit: null, confidence: 'likely', because: `${because}: ${targetText(to)}` };
}
