import { nearestName } from '../text/index.ts';
import { qualifierAt } from './behind-size.ts';
import { bareNumber } from './gauge-problems.ts';
import type { WireGauge } from './gauge-systems.ts';
import { hasUnit, type Parts, partsAt } from './grammar.ts';
import { asNumbered, FLOW_NUMBER, isJetNumber, type JetNumbering, jetSize } from './jets.ts';
import { CONDITIONS } from './lexicon.ts';
import type { Dimension, GaugeBook, Reading, SizeProblem, Statement } from './model.ts';
import { normalize } from './normalize.ts';
import { problem, unknownUnit } from './problems.ts';
import { conditionStatement, mayBeCondition, withoutStop, wordsOnly } from './read-words.ts';
import { readSequence } from './sequence.ts';
import { statementFrom } from './statement.ts';
import { type NotationContext, skipSpaces } from './term.ts';

/** What reading needs besides the text. */
export interface ReadOptions {
  readonly gauges: GaugeBook;
  /** The dimensions that the setting may be stated in: settles kPa and plain words; none is refused. */
  readonly expect?: readonly Dimension[] | undefined;
  /** Which system a bare `SWG` means; left out, it reads as imperial and is marked ambiguous. */
  readonly swg?: WireGauge | null | undefined;
  /** How a bare number of a jet is meant; null for a jet of which that is not said, left out for no jet. */
  readonly jets?: JetNumbering | null | undefined;
}

/** A size longer than this is no size; it bounds what a stranger's sheet can cost. */
const MAX_LENGTH = 200;

/**
 * Reads one size as a period paper writes it. The statement's `text` is `text` itself, exactly;
 * a problem says what is wrong in a restorer's words. Never throws.
 *
 * `readStatement('13/64 ± 1/64 in', { gauges })` has nominal 5.159375 mm and limits 4.7625 mm and
 * 5.55625 mm.
 */
export function readStatement(text: string, options: ReadOptions): Reading {
  const reading = readJet(text, options) ?? readOnce(text, options);
  return reading.ok ? reading : failure(onlyReadable(reading.problem, options));
}

/** A jet by its number, where that says a bore or a measured flow; null for anything else. */
function readJet(text: string, { jets, ...options }: ReadOptions): Reading | null {
  if (jets === undefined || text.length > MAX_LENGTH) return null;
  const lower = normalize(text.trim());
  if (!isJetNumber(lower)) return null;
  if (jets === 'flow') {
    const named = conditionStatement(text, withoutStop(lower));
    return { ok: true, statement: { ...named, qualifier: FLOW_NUMBER } };
  }
  const size = jets && jetSize(lower, jets);
  const reading = readOnce(size ?? text, options);
  if (size !== null) {
    return reading.ok ? { ok: true, statement: asNumbered(reading.statement, text) } : reading;
  }
  return reading.ok ? reading : failure({ ...reading.problem, fix: SAY_NUMBERING });
}

const SAY_NUMBERING =
  'say under `unit:` how its maker numbers jets: `jets: hundredths of mm`, `thousandths of in`, `drill` or `flow`';

function readOnce(text: string, options: ReadOptions): Reading {
  const trimmedStart = text.length - text.trimStart().length;
  const body = text.trim();
  if (body === '')
    return failure(
      problem('empty', 'the size is empty', 'write the size, with its unit', 0, text.length),
    );
  if (body.length > MAX_LENGTH) {
    return failure(
      problem(
        'too-long',
        `${body.slice(0, 24)}... is too long for a size`,
        'put remarks under note',
        0,
        text.length,
      ),
    );
  }
  const lower = normalize(body);
  const context: NotationContext = { gauges: options.gauges, swg: options.swg ?? null };
  const expect = options.expect ?? null;
  const plain = withoutStop(lower);
  const words = wordsOnly(text, plain);
  if (words) return { ok: true, statement: words };
  if (expect?.includes('sequence')) {
    const order = readSequence(text, lower);
    if (typeof order === 'string') {
      return { ok: true, statement: { ...conditionStatement(text, order), dimension: 'sequence' } };
    }
    if (expect.length === 1) return failure(order);
  }
  if (MILLIOHM.test(body)) return failure(thousandthsOfOhm(body, text));
  const result = readNumbers(body, lower, context, expect);
  if ('code' in result) {
    // Words come last: a letter drill and a size in words have no figure either.
    if (expect?.includes('condition') && mayBeCondition(lower, result)) {
      return { ok: true, statement: conditionStatement(text, plain) };
    }
    return failure({
      ...result,
      start: result.start + trimmedStart,
      end: result.end + trimmedStart,
    });
  }
  return { ok: true, statement: { ...result, text } };
}

/** A million ohms with a small letter, which the grammar, blind to case, would read as one. */
const MILLIOHM = /[\d ]m[ -]?(?:[Ωω\u2126]|[oO]hm)/;

function thousandthsOfOhm(body: string, text: string): SizeProblem {
  const message = `${body} is told in thousandths of an ohm`;
  const fix = 'write MΩ or megohms, if a million ohms is meant';
  return problem('unknown-unit', message, fix, 0, text.length);
}

/** Nobody is told to write what cannot be read: an offer that is no size itself is left out. */
function onlyReadable(found: SizeProblem, options: ReadOptions): SizeProblem {
  const { candidates, fix, offered } = found;
  const anyUnit = { gauges: options.gauges, swg: options.swg };
  const kept = candidates.filter((each) => readOnce(each, anyUnit).ok);
  if (kept.length === candidates.length) return found;
  const lost = candidates.slice(0, offered).some((each) => !kept.includes(each));
  const mended = kept.length > 0 ? `write ${kept.join(' or ')}, if that is meant` : LOOK_AGAIN;
  return { ...found, candidates: kept, offered: kept.length, fix: lost ? mended : fix };
}

const LOOK_AGAIN = 'look in the source again';

function failure(found: SizeProblem): Reading {
  return { ok: false, problem: found };
}

function readNumbers(
  body: string,
  lower: string,
  context: NotationContext,
  expect: readonly Dimension[] | null,
): Statement | SizeProblem {
  const parts = partsAt(lower, 0, context);
  if (!parts) return unreadable(body, lower);
  if ('problem' in parts) return parts.problem;
  const leftover = qualifierAt(lower, parts.end);
  if ('problem' in leftover) return onePart(body, lower, parts, context) ?? leftover.problem;
  const built = statementFrom(body, parts, context, expect);
  if ('problem' in built) return built.problem;
  const { qualifier, datum } = leftover;
  return {
    ...built,
    qualifier: qualifier
      ? body
          .slice(parts.end)
          .trim()
          .replace(/^[,(]\s*/, '')
          .replace(/^([^()]*)\)?\.?$/, '$1')
      : null,
    datum: datum ?? built.datum,
  };
}

/** A number with something behind it that is no unit: the unit is misspelt, or missing. */
function onePart(
  body: string,
  lower: string,
  { first, end, ...rest }: Parts,
  context: NotationContext,
): SizeProblem | null {
  if (hasUnit({ first, end, ...rest })) return null;
  if (first.bareName !== null) {
    return bareNumber(first.bareName, true, first.start, first.end, context.gauges);
  }
  const at = skipSpaces(lower, end);
  const word = /^[\p{L}°%"'′″./·-]+/u.exec(lower.slice(at))?.[0];
  const number = body.slice(0, end);
  if (!word) return bareNumber(number.trim(), false, 0, end, context.gauges);
  return unknownUnit(body.slice(at, at + word.length), number.trim(), at, at + word.length);
}

function unreadable(body: string, lower: string): SizeProblem {
  if (/^[+-] ?[\d.]/.test(lower)) {
    const message = `${body} has a sign, and a size has none`;
    const fix = 'say the direction in words: below, down, lean, after';
    return problem('unreadable', message, fix, 0, 1);
  }
  const digit = lower.search(/[\d½¼¾⅛⅜⅝⅞⅓⅔]/);
  if (digit > 0) {
    const message = `${body} does not start with a size`;
    return problem('unreadable', message, `start with the figure: ${body.slice(digit)}`, 0, digit);
  }
  const near = nearestName(lower, [...CONDITIONS]);
  return problem(
    'unreadable',
    `${body.slice(0, 60)} is no size and no condition that the notation knows`,
    near
      ? `write ${near}, if that is meant`
      : 'write the figure with its unit, such as 13/64 in, 5.16 mm or No. 29 drill',
    0,
    body.length,
  );
}
