import { noSuchDrill, noSuchGauge, plainDrillNumber } from './gauge-problems.ts';
import { SIZED_GAUGE_WORDS, SYSTEM_WORDS } from './lexicon.ts';
import type { Gauge, GaugeBook, GaugeSystem } from './model.ts';
import type { Numeral } from './numeral.ts';
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
import type { UnitOfMeasure } from './units.ts';

const NUMBERED =
  /(?:(?:no\.?|nos\.?|number|size|gauge|#|№) ?)?(\d{1,6}(?:\/0)?)(?![\d.,]*[\d])(?!\/\d)/y;
const NUMBER_SIGN = /^(?:no\.?|nos\.?|number|size|#|№)/;
const LETTER_DRILL =
  /(?:(?:letter|size) )?([a-z])(?:-?size)? (?:twist )?drill(?: bit)?s?(?![\p{L}\d])|(?:letter )?(?:twist )?drill(?: bit)?(?: letter| size)? ([a-z])(?![\p{L}\d'-])/uy;
const DRILL_NUMBER = /(?:twist )?drill(?: bit)? (?:no\.?|number|#) ?(\d{1,3})(?![\d./]*\d)/y;
const SYSTEM_FIRST =
  /(imperial swg|s\.w\.g\.|swg|a\.w\.g\.|awg|b&s|bwg|music wire|us steel wire)(?: gauge)? (?:no\.? ?|number |#)?(\d{1,6}(?:\/0)?)(?![\d./]*\d)/y;
const BEGINS_NAME = /[a-z#№]/;

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
      (letter[1] ?? letter[2] ?? '').toUpperCase(),
      at,
      end,
    );
  }
  const drill = stick(DRILL_NUMBER, lower, at);
  if (drill) return gaugeTerm(context, 'number-drill', drill[1] ?? '', at, DRILL_NUMBER.lastIndex);
  const first = stick(SYSTEM_FIRST, lower, at);
  if (first) {
    const end = SYSTEM_FIRST.lastIndex;
    const word = SYSTEM_WORDS.find(([spelling]) => spelling === first[1]);
    if (word) return systemTerm(context, word[1], first[2] ?? '', at, end, true);
  }
  return numberedGaugeAt(lower, at, context);
}

/** `No. 29 drill`, `#29 drill`, `22 SWG`; a `No. 29` alone waits for its system. */
function numberedGaugeAt(lower: string, at: number, context: NotationContext): TermResult {
  const numbered = stick(NUMBERED, lower, at);
  if (!numbered) return null;
  const afterName = NUMBERED.lastIndex;
  const named = NUMBER_SIGN.test(numbered[0]);
  const system = systemAt(lower, skipSpaces(lower, afterName));
  if (system) return systemTerm(context, system.system, numbered[1] ?? '', at, system.end, named);
  if (!named) return null;
  return { ...emptyTerm(at, afterName), bareName: numbered[1] ?? '' };
}

const SYSTEM_LETTERS: ReadonlySet<number> = new Set(
  SYSTEM_WORDS.map(([spelling]) => spelling.charCodeAt(0)),
);

/** The system that a word at an offset names, and the offset after it (and after `wire`, `gauge`). */
export function systemAt(
  lower: string,
  at: number,
): { system: GaugeSystem | 'drill' | 'bare-swg'; end: number } | null {
  // Every system's word starts with one of these; most figures are followed by something else.
  if (!SYSTEM_LETTERS.has(lower.charCodeAt(at))) return null;
  for (const [spelling, system] of SYSTEM_WORDS) {
    const plural = phraseAt(lower, at, `${spelling}s`);
    if (!plural && !phraseAt(lower, at, spelling)) continue;
    let end = at + spelling.length + (plural ? 1 : 0);
    for (const extra of [' wire gauge', ' wire feeler', ' wire', ' gauge', ' feeler']) {
      if (system !== 'drill' && phraseAt(lower, end, extra)) {
        end += extra.length;
        break;
      }
    }
    return { system, end };
  }
  return null;
}

function systemTerm(
  context: NotationContext,
  system: GaugeSystem | 'drill' | 'bare-swg',
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
  if (system !== 'bare-swg') return gaugeTerm(context, system, name, start, end);
  const chosen = context.swg === 'us-steel' ? 'us-steel-wire' : 'swg';
  const term = gaugeTerm(context, chosen, name, start, end);
  if (!term || 'problem' in term || context.swg !== null) return term;
  const other = context.gauges.find('us-steel-wire', name);
  return other && term.gauge && !other.mm.equals(term.gauge.mm)
    ? { ...term, ambiguous: [other] }
    : term;
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

/** `3.5 mm drill`, `13/64 in drill`, `0.026 in wire`, `0.38 mm leaf`. */
export function sizedGauge(lower: string, term: Term, context: NotationContext): TermResult {
  const { numeral, unit } = term;
  if (!numeral || !unit) return null;
  const at = skipSpaces(lower, lower.charAt(term.end) === '-' ? term.end + 1 : term.end);
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
