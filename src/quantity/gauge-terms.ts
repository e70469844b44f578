import { noSuchDrill, noSuchGauge, plainDrillNumber, statedOtherwise } from './gauge-problems.ts';
import { systemRecord } from './gauge-systems.ts';
import {
  BEFORE_PATTERN,
  type Named,
  namedBy,
  SIZED_GAUGE_WORDS,
  SYSTEM_WORDS,
} from './gauge-words.ts';
import type { Gauge, GaugeBook, GaugeSystem } from './model.ts';
import { isFault, type Numeral, numeralAt } from './numeral.ts';
import { exactText } from './rational.ts';
import {
  emptyTerm,
  type NotationContext,
  phraseAt,
  skipSpaces,
  stick,
  type Term,
  type TermResult,
} from './term.ts';
import { type UnitOfMeasure, unitAt, unitById } from './units.ts';

const NUMBERED =
  /(?:(?:no\.?|nos\.?|number|size|gauge|#|№) ?)?(\d{1,6}(?:\/0)?)(?![\d.,]*[\d])(?!\/\d)/y;
const NUMBER_SIGN = /^(?:no\.?|nos\.?|number|size|#|№)/;
const QUOTE = `["'“”‘’]`;
const LETTER_DRILL = new RegExp(
  `(?:(?:letter|size) )?(?:${QUOTE}([a-z])${QUOTE}|([a-z]))(?:-?size)?[ -](?:twist )?drill(?: bit)?(?: size)?s?(?![\\p{L}\\d])|(?:letter )?(?:twist )?drill(?: bit)?(?: letter| size)? (?:${QUOTE}([a-z])${QUOTE}|([a-z])(?![\\p{L}\\d'-]))`,
  'uy',
);
const DRILL_NUMBER = /(?:twist )?drill(?: bit)? (?:no\.?|number|#) ?(\d{1,3})(?![\d./]*\d)/y;
const SYSTEM_FIRST = new RegExp(
  `(${BEFORE_PATTERN})(?: gauge)? (?:no\\.? ?|number |#)?(\\d{1,6}(?:\\/0)?)(?![\\d./]*\\d)`,
  'y',
);
const BEGINS_NAME = /[a-z#№"'“”‘’]/;

/** A gauge's name at an offset: `No. 29 drill`, `drill E`, `22 SWG`, `SWG 22`; null where none stands there. */
export function namedGaugeAt(lower: string, at: number, context: NotationContext): TermResult {
  const code = lower.charCodeAt(at);
  const isDigit = code >= 48 && code <= 57;
  if (!isDigit && !BEGINS_NAME.test(lower.charAt(at))) return null;
  if (isDigit) return numberedGaugeAt(lower, at, context);
  const letter = stick(LETTER_DRILL, lower, at);
  if (letter) {
    const end = LETTER_DRILL.lastIndex;
    return gaugeTerm(
      context,
      'letter-drill',
      (letter[1] ?? letter[2] ?? letter[3] ?? letter[4] ?? '').toUpperCase(),
      at,
      end,
    );
  }
  const drill = stick(DRILL_NUMBER, lower, at);
  if (drill) return gaugeTerm(context, 'number-drill', drill[1] ?? '', at, DRILL_NUMBER.lastIndex);
  const first = stick(SYSTEM_FIRST, lower, at);
  if (first) {
    const end = SYSTEM_FIRST.lastIndex;
    const named = namedBy((first[1] ?? '').replaceAll('.', ''));
    if (named) return systemTerm(context, named, first[2] ?? '', at, end, true);
  }
  return numberedGaugeAt(lower, at, context);
}

/** `No. 29 drill`, `#29 drill`, `22 SWG`; a `No. 29` alone waits for its system. */
function numberedGaugeAt(lower: string, at: number, context: NotationContext): TermResult {
  const numbered = stick(NUMBERED, lower, at);
  if (!numbered) return null;
  const afterName = NUMBERED.lastIndex;
  const named = NUMBER_SIGN.test(numbered[0]);
  // `No. 29 (.136) drill`: the size stands between the number and its system.
  const stated = statedSizeAt(lower, afterName);
  const system = systemAt(lower, skipSpaces(lower, stated?.end ?? afterName));
  if (system && stated) {
    const whole = systemTerm(context, system.system, numbered[1] ?? '', at, system.end, named);
    return whole && !('problem' in whole) ? heldAgainst(lower, whole, stated) : whole;
  }
  if (system) return systemTerm(context, system.system, numbered[1] ?? '', at, system.end, named);
  if (!named) return null;
  return { ...emptyTerm(at, afterName), bareName: numbered[1] ?? '' };
}

const DRILL_EXTRAS = [' gauge', ' size'];
const WIRE_EXTRAS = [' wire gauge', ' wire feeler', ' wire', ' gauge', ' feeler'];

/** The system that a word at an offset names, and the offset after it (and after `wire`, `gauge`). */
export function systemAt(lower: string, at: number): { system: Named; end: number } | null {
  const found = SYSTEM_WORDS.longest(lower, at);
  if (!found) return null;
  const { value: system, end } = found;
  const extras = system === 'drill' ? DRILL_EXTRAS : WIRE_EXTRAS;
  const extra = extras.find((each) => phraseAt(lower, end, each));
  return { system, end: end + (extra?.length ?? 0) };
}

function systemTerm(
  context: NotationContext,
  system: Named,
  name: string,
  start: number,
  end: number,
  named: boolean,
): TermResult {
  if (system === 'drill') {
    // `29 drill` could be a number, but so could a slip for `29/64 drill`: it has to be said.
    if (!named) return { problem: plainDrillNumber(name, start, end, context.gauges) };
    return gaugeTerm(context, 'number-drill', name, start, end);
  }
  const said = system.find((each) => systemRecord(each).meantBy === context.swg);
  const [first] = system;
  const chosen = (context.swg === null ? undefined : said) ?? first;
  if (chosen === undefined) return null;
  const term = gaugeTerm(context, chosen, name, start, end);
  if (!term || 'problem' in term || context.swg !== null) return term;
  const ambiguous = system
    .map((each) => context.gauges.find(each, name))
    .filter((other) => other !== null && term.gauge && !other.mm.equals(term.gauge.mm))
    .filter((other) => other !== null);
  return ambiguous.length > 0 ? { ...term, ambiguous } : term;
}

function gaugeTerm(
  context: NotationContext,
  system: GaugeSystem,
  name: string,
  start: number,
  end: number,
): TermResult {
  const gauge = context.gauges.find(system, name);
  if (!gauge) return { problem: noSuchGauge(system, name, start, end, context.gauges) };
  return { ...emptyTerm(start, end), gauge };
}

interface StatedSize {
  readonly start: number;
  readonly numeral: Numeral;
  readonly unit: UnitOfMeasure;
  readonly end: number;
}

/** The size that a paper prints behind a gauge's name in parentheses, inches where it names no unit. */
function statedSizeAt(lower: string, at: number): StatedSize | null {
  const open = skipSpaces(lower, at);
  if (lower.charAt(open) !== '(') return null;
  const numeral = numeralAt(lower, open + 1);
  if (!numeral || isFault(numeral) || numeral.style === 'integer') return null;
  const found = unitAt(lower, skipSpaces(lower, numeral.end));
  if (found && found.unit.dimension !== 'length') return null;
  const close = skipSpaces(lower, found?.end ?? numeral.end);
  if (lower.charAt(close) !== ')') return null;
  return { start: open, numeral, unit: found?.unit ?? unitById('in'), end: close + 1 };
}

/** A gauge with the size that stands behind it, or the problem that the two are not one. */
export function withStatedSize(lower: string, term: Term): TermResult {
  if (!term.gauge || term.numeral) return term;
  const stated = statedSizeAt(lower, term.end);
  return stated ? heldAgainst(lower, { ...term, end: stated.end }, stated) : term;
}

function heldAgainst(lower: string, term: Term, stated: StatedSize): TermResult {
  const { gauge } = term;
  const { numeral, unit } = stated;
  if (!gauge) return term;
  const off = numeral.value.mul(unit.factor).sub(gauge.mm).abs();
  const half = numeral.places === null ? 0 : unit.factor.div(10 ** numeral.places).div(2);
  return off.compare(half) <= 0
    ? term
    : { problem: statedOtherwise(lower, gauge, stated.start, stated.end) };
}

/** `.026 in. dia. wire`: a word that only says which way a round thing is measured. */
const DIAMETER = /(?:dia\.?|diam\.?|diameter) (?=wire|round|drill|twist|pin|rod|plug)/y;

/** `3.5 mm drill`, `13/64 in drill`, `0.026 in wire`, `0.38 mm leaf`. */
export function sizedGauge(lower: string, term: Term, context: NotationContext): TermResult {
  const { numeral, unit } = term;
  if (!numeral || !unit) return null;
  const beyond = skipSpaces(lower, lower.charAt(term.end) === '-' ? term.end + 1 : term.end);
  const at = stick(DIAMETER, lower, beyond) ? DIAMETER.lastIndex : beyond;
  for (const [word, system] of SIZED_GAUGE_WORDS) {
    if (!phraseAt(lower, at, word)) continue;
    const gauge = context.gauges.find(system, `${lower.slice(term.start, numeral.end)} ${unit.id}`);
    return gauge ? { ...term, gauge, end: at + word.length } : null;
  }
  const drill = systemAt(lower, at);
  if (drill?.system !== 'drill') return null;
  const gauge = drillOfSize(numeral, unit, context.gauges);
  if (gauge) return { ...term, gauge, end: drill.end };
  return {
    problem: noSuchDrill(
      lower.slice(term.start, term.end),
      numeral,
      unit,
      term.start,
      drill.end,
      context.gauges,
    ),
  };
}

/** The drill whose size is the one written: by its name, or the nearest that the figure rounds. */
function drillOfSize(numeral: Numeral, unit: UnitOfMeasure, gauges: GaugeBook): Gauge | null {
  if (numeral.ratio) return unit.id === 'in' ? fractionDrill(numeral, gauges) : null;
  if (unit.id === 'mm') return gauges.find('metric-drill', exactText(numeral.value));
  const half = unit.factor.div(10 ** (numeral.places ?? 0)).div(2);
  const mm = numeral.value.mul(unit.factor);
  let best: Gauge | null = null;
  let least = half;
  for (const system of ['number-drill', 'letter-drill', 'fraction-drill'] as const) {
    for (const gauge of gauges.all(system)) {
      const off = gauge.mm.sub(mm).abs();
      const nearer = best ? off.compare(least) < 0 : off.compare(least) <= 0;
      if (nearer) [best, least] = [gauge, off];
    }
  }
  return best;
}

/** The drill named by a fraction of an inch, reduced as its name is; null where there is none. */
export function fractionDrill(numeral: Numeral, gauges: GaugeBook): Gauge | null {
  if (!numeral.ratio) return null;
  const [n, d] = numeral.ratio;
  const whole = numeral.style === 'mixed' ? `${numeral.value.floor().toString()}-` : '';
  return gauges.find('fraction-drill', `${whole}${n}/${d}`);
}

/** A `No. 29` that got its system from a later term of the same statement. */
export function withSystem(term: Term, gauge: Gauge, context: NotationContext): TermResult {
  if (term.bareName === null) return term;
  return gaugeTerm(context, gauge.system, term.bareName, term.start, term.end);
}
