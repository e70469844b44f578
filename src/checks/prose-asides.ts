import type { Kind } from '../kinds/model.ts';
import { principal, sameFamily } from '../quantity/index.ts';
import type { Rational, Statement } from '../quantity/model.ts';
import type { Setting, Sheet } from '../sheet/model.ts';
import { oncePer } from '../text/index.ts';
import { readsOtherwise } from './prose-sources.ts';
import { namesThing } from './prose-things.ts';
import { readOf } from './stated-sizes.ts';

/** A figure in the text with the sentence that it stands in, in small letters. */
export interface Told {
  readonly statement: Statement;
  /** The sentence up to the figure. */
  readonly before: string;
  /** The sentence behind the figure. */
  readonly after: string;
  /** The settings that its operation makes or prints. */
  readonly near: readonly Setting[];
  /** Whether a near setting is printed behind the figure, in the same step. */
  readonly printedAfter: boolean;
  /** Whether a near setting is printed in the same step, before the figure or behind it. */
  readonly printedBeside: boolean;
  /** Whether it stands in a step or in a row of a table, where figures are worked by. */
  readonly inStep: boolean;
}

/**
 * Whether a sentence itself says that its figure is no statement of a setting: the size of a thing, a
 * difference, a stage on the way, the same angle elsewhere, another unit's figure, a speed that is only
 * run at. All of it common English, and no word of any trade but what the kind gives.
 */
export function isAside(told: Told, sheet: Sheet, kind: Kind): boolean {
  return (
    namesThing(told, kind) ||
    isStepSize(told, kind) ||
    isDifference(told, kind) ||
    isStage(told) ||
    isOtherMeasure(told) ||
    isPassing(told) ||
    readsOtherwise(told, sheet, kind)
  );
}

/** What of a near setting of the same dimension a figure is measured against; null for none. */
function ownAmount({ statement, near }: Told): { low: Rational; high: Rational } | null {
  for (const setting of near) {
    const own = readOf(setting.value);
    if (own === null || !sameFamily(own.dimension, statement.dimension)) continue;
    const amount = principal(own);
    const low = amount?.base ?? own.low?.base;
    const high = amount?.base ?? own.high?.base;
    if (low && high) return { low: low.abs(), high: high.abs() };
  }
  return null;
}

/** Whether a figure is at most a part of what is set: the size of a difference, not of a setting. */
function isSmall(told: Told, part: readonly [number, number]): boolean {
  const own = ownAmount(told);
  const figure = principal(told.statement)?.base ?? told.statement.high?.base;
  if (own === null || figure === undefined) return true;
  return figure.abs().mul(part[1]).compare(own.high.mul(part[0])) <= 0;
}

const STEPS_BEFORE = 3;
const BACK = /\bback (?:out|off|in|up|down)(?: by| about| exactly)? ?$/;

/** A screw is turned by steps as well as set; so is anything else, by much less than its figure. */
function isStepSize(told: Told, kind: Kind): boolean {
  const words = kind.incrementWords;
  const next = firstWords(told.after, 3);
  const last = lastWords(told.before, STEPS_BEFORE);
  if (told.statement.dimension === 'turns') {
    // `back 1/4 turn` is a step; `back out two turns` is how the setting itself is made.
    const way = BACK.test(told.before) && !isSmall(told, [1, 2]);
    return startsWithAny(next, words) || (!way && holdsAny(lastWords(told.before, 2), words));
  }
  return (startsWithAny(next, words) || endsWithAny(last, words)) && isSmall(told, [1, 2]);
}

const OFF_AFTER =
  /^[ ,]*(?:(?:or so|either way) )?(?:(?:out|off|wrong)(?= ?(?:is|does|do|are|makes?|matters?|will|would|may|can|either|at (?:the )?most|here|there|$|[,)]))|(?:of )?(?:wear|play|error|run-?out|difference|variation|lean|drag|wobble|slack|shake|lost motion)\b|worn\b|either (?:way|side)|(?:each|one) way or\b|too (?:high|low|wide|narrow|much|little|many|few|fast|slow|rich|lean|early|late|long|short|far|deep)\b|(?:more|less|higher|lower|faster|slower|wider|narrower|richer|leaner|longer|shorter|over|under|above|below|short|apart)(?: than)?(?= ?(?:$|[,)]|(?:than )?(?:it|this|that|these|those|the (?:figure|setting|other|first|last|one)|before|at (?:idle|first)|:value|specified|stated|given|each other|one another)\b)))/;
const OFF_BEFORE =
  /(?:±|\+\/-|\+-|[+-]|\bplus or minus|\bgive or take|\bwithin|\bto within|\bmore than|\bdiffers? by|\bvar(?:y|ies) by|\bdisagree by|\bout by|\boff by|\bwrong by|\bworn by|\b(?:wear|play|tolerance|allowance|error|difference|variation|run-?out|spread|slack) (?:of|is|to|up to|exceeds|over))(?: (?:about|only|some|as much as|more than|no more than|at most))? ?$/;
const CHANGE_BEFORE =
  /\b(?:drops?|dropped|falls?|fell|fallen|rises?|risen|rose|gains?|gained|loses?|lost|lowers?|lowered|raises?|raised|increases?|increased|reduces?|reduced|changes?|changed|shifts?|shifted|slows?|slowed|quickens?|climbs?|sinks?|sags?|jumps?|by)(?: (?:of|about|by|only|some|another|at least|at most|up to|no more than|more than|not more than|it|the engine|the speed|the reading|the needle|the gauge))* ?$/;
/** A count of turns is made by a way of saying it: `screw it out by 1-1/2 turns` is no difference. */
const COUNTS: ReadonlySet<Statement['dimension']> = new Set(['turns', 'notches']);

/** `25 rpm out is good enough`, `within 50 rpm of`, `0.002 in wear`, `dropped by 1 inHg`. */
function isDifference(told: Told, _kind: Kind): boolean {
  const { after, before, statement } = told;
  if (OFF_AFTER.test(after) && isSmall(told, [1, 2])) return true;
  if (OFF_BEFORE.test(before) && isSmall(told, [1, 2])) return true;
  // Beside the figure itself, a twelfth of it is a difference, whatever is said of it.
  if (told.printedBeside && isSmall(told, [1, 12])) return true;
  if (COUNTS.has(statement.dimension)) return false;
  return CHANGE_BEFORE.test(before) && isSmall(told, [1, 2]);
}

const STAGE =
  /\b(?:first|at first|stages?|passes|rounds?|go round|all round|begin(?:ning)?|start(?:ing)?|initial(?:ly)?|snug|nip|lightly|half-?way|finger|finish|final(?:ly)?|then(?: (?:to|up|on|go|bring|draw|tighten|set|down))?|next|afterwards?|last(?:ly)?|before (?:going|bringing|drawing|tightening))\b/;
/** What is gone up to, or down to, by and by. */
const STAGED: ReadonlySet<Statement['dimension']> = new Set([
  'torque',
  'pressure',
  'vacuum',
  'speed',
  'mass',
]);

/** `to 8 ft-lb first, then :value[...]`: on the way to the figure that the same step prints. */
function isStage(told: Told): boolean {
  const { statement, before, after, printedAfter } = told;
  if (!printedAfter || !STAGED.has(statement.dimension)) return false;
  if (!STAGE.test(before) && !STAGE.test(after.replace(/:value\[[^\]]*\].*$/s, ''))) return false;
  // A stage lies below what it leads to; a speed may be come down to.
  return statement.dimension === 'speed' || isSmall(told, [9, 10]);
}

const AT_CRANK =
  /\b(?:crank(?:shaft)?|engine|flywheel|pulley|damper|timing light|strobe|stroboscope)\b/;
const AT_CAM = /\b(?:distributor|cam(?:shaft)?|distributor machine|test machine|half speed)\b/;

/** `24 crank degrees` beside 12° of the distributor: twice or half, where the measure is said. */
function isOtherMeasure(told: Told): boolean {
  const { statement, before, after } = told;
  if (statement.dimension !== 'angle' && statement.dimension !== 'speed') return false;
  const said = `${statement.text.toLowerCase()} ${lastWords(before, 8)} | ${firstWords(after, 6)}`;
  if (!AT_CRANK.test(said) && !AT_CAM.test(said)) return false;
  // `One degree on the distributor is two at the crank` speaks of no setting.
  if (AT_CRANK.test(before + after) && AT_CAM.test(before + after) && isSmall(told, [1, 2]))
    return true;
  const own = ownAmount(told);
  const figure = principal(statement)?.base;
  if (own === null || figure === undefined) return false;
  const size = figure.abs();
  return [own.low, own.high].some((each) => size.equals(each.mul(2)) || each.equals(size.mul(2)));
}

const WORKED_AT =
  /\b(?:blip|rev(?! counter)|race|gun|run up|warm(?:ed|ing)?(?: it| her| up)*|cranking|speed up|hold|run|running|open(?:ed)? up)\b[^,;]*$/;
const WHILE =
  /^[ ,]*(?:or so )?(?:once|twice|for (?:an?|some|half|about|\w+) |until |till |to (?:clear|warm|clean|cool|settle|check|be sure)|and (?:let|shut|snap|release|close)|while )/;
const AT_SPEED =
  /\b(?:at|above|below|over|under|beyond|past|near|(?:between|from) [^,;]*(?:and|to)) (?:about )?$/;
const BLOWN = /\b(?:blow|air|leak|test|compress(?:or|ed)|line pressure)\b[^,;]*$/;

/** A speed that the engine is held at for a while, a pressure that air is blown at. */
function isPassing(told: Told): boolean {
  const { statement, before, after } = told;
  // Where no speed is set, one says when something is read.
  if (statement.dimension === 'speed' && ownAmount(told) === null && AT_SPEED.test(before))
    return true;
  if (statement.dimension === 'speed')
    return /\b(?:blip|rev|race|gun)\b(?! counter)[^,;]*$/.test(before)
      ? true
      : WORKED_AT.test(before) && WHILE.test(after);
  return statement.dimension === 'pressure' && BLOWN.test(before);
}

/** The first words of a text, parted by single blanks. */
export function firstWords(text: string, count: number): string {
  return words(text).slice(0, count).join(' ');
}

/** The last words of a text, parted by single blanks. */
export function lastWords(text: string, count: number): string {
  return words(text).slice(-count).join(' ');
}

function words(text: string): readonly string[] {
  return text
    .trim()
    .split(/[\s-]+/)
    .filter((word) => word !== '');
}

/** ` open end wrench `: small letters, a blank before and after each word. */
function onlyWords(text: string): string {
  return ` ${text
    .toLowerCase()
    .replace(/[^\p{L}]+/gu, ' ')
    .trim()} `;
}

const plainPhrases = oncePer((phrases: readonly string[]): readonly string[] =>
  phrases.map(onlyWords),
);

/** Whether any of a kind's words or phrases stands in a short text, whatever its case and points. */
export function holdsAny(text: string, phrases: readonly string[]): boolean {
  const plain = onlyWords(text);
  return plainPhrases(phrases).some((phrase) => plain.includes(phrase));
}

function startsWithAny(text: string, phrases: readonly string[]): boolean {
  const plain = onlyWords(text);
  return plainPhrases(phrases).some((phrase) => plain.startsWith(phrase));
}

function endsWithAny(text: string, phrases: readonly string[]): boolean {
  const plain = onlyWords(text);
  return plainPhrases(phrases).some((phrase) => plain.endsWith(phrase));
}
