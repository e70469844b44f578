import { type ReadOptions, readStatement } from '../quantity/index.ts';
import type { Statement } from '../quantity/model.ts';
import type { Sheet } from '../sheet/model.ts';
import type { Placed } from '../text/index.ts';
import { askedOf } from './asked.ts';
import { answerDigest, sheetDigest } from './digests.ts';
import type {
  Answers,
  Asked,
  AskedPart,
  Compared,
  ComparedPart,
  Comparison,
  Digest,
  SecondReading,
  Verdict,
} from './model.ts';
import { sameSize } from './same-size.ts';
import { sameWords } from './same-words.ts';
import { type WitnessContext, witnessesOf } from './witnesses.ts';
import { isNotThere } from './words.ts';

/** What comparing needs besides the two texts. */
export interface CompareContext extends WitnessContext {
  /** By which a size of the sheet is read: gauges, and what a bare `SWG` means. */
  readonly read: ReadOptions;
  readonly digest: Digest;
}

/** What weighs more than the others before it. */
const weight: readonly Verdict[] = [
  'same',
  'same, written otherwise',
  'unread',
  'not on that page',
  'differs',
];

/** Holds a second reading against its sheet: page by page as they were read, on each in the order of the sheet. */
export function compareReading(
  reading: SecondReading,
  sheet: Sheet,
  context: CompareContext,
): Comparison {
  const asked = askedOf(sheet).filter(({ source }) => source === reading.source.value);
  const used = new Set<Answers>();
  const pages = [...new Set(reading.answers.map(({ page }) => page))];
  const compared = asked
    .filter(({ page }) => pages.includes(page))
    .sort((one, two) => pages.indexOf(one.page) - pages.indexOf(two.page))
    .map((each) => {
      const answers =
        reading.answers.find(({ page, key }) => page === each.page && key === each.key) ?? null;
      if (answers !== null) used.add(answers);
      return compareOne(each, answers, reading, sheet, context);
    });
  return { reading, compared, unasked: reading.answers.filter((each) => !used.has(each)) };
}

function compareOne(
  asked: Asked,
  answers: Answers | null,
  reading: SecondReading,
  sheet: Sheet,
  context: CompareContext,
): Compared {
  const whole = answers?.given.get('value') ?? null;
  const gone = whole !== null && isNotThere(whole.value);
  const parts = asked.parts
    .filter(({ role }) => !gone || role === 'figure')
    .map((part) => {
      const answer = answers?.given.get(part.path.join('/')) ?? (gone ? whole : null);
      return comparePart(part, answer, asked, sheet, context);
    });
  const verdict = parts.reduce<Verdict>(
    (worst, part) => (weight.indexOf(part.verdict) > weight.indexOf(worst) ? part.verdict : worst),
    'same',
  );
  const [first, second] = [
    sheetDigest(asked, context.digest),
    answerDigest(answers, context.digest),
  ];
  const settled = reading.settled.findLast(
    (each) =>
      each.page === asked.page &&
      each.setting === asked.key &&
      each.sheet === first &&
      each.answer === second,
  );
  return { asked, verdict, parts, sheet: first, answer: second, settled: settled ?? null };
}

function comparePart(
  part: AskedPart,
  answer: Placed<string> | null,
  asked: Asked,
  sheet: Sheet,
  context: CompareContext,
): ComparedPart {
  const as = (verdict: Verdict, more: Partial<ComparedPart> = {}): ComparedPart => ({
    part,
    answer,
    verdict,
    difference: null,
    misprint: null,
    witnesses: [],
    ...more,
  });
  // What the paper need not print is nobody's omission.
  if (answer === null) return as(part.role === 'beside' ? 'same' : 'unread');
  if (isNotThere(answer.value)) {
    if (isNotThere(part.text)) return as('same, written otherwise');
    // What nobody printed the sheet says on its own: where a figure holds is often the editor's word.
    return as(part.role === 'figure' ? 'not on that page' : 'same');
  }
  if (level(answer.value) === level(part.text)) return as('same');
  const key = part.path.at(-1) ?? '';
  if (part.size === null) {
    const found = sameWords(key, part.text, answer.value, sheet);
    if (found !== 'differs') return as(found === 'same' ? 'same' : 'same, written otherwise');
    const sizes = [part.text, answer.value].map((text) => readStatement(text, context.read));
    const [one, two] = sizes.map((each) => (each.ok ? each.statement : null));
    if (one && two && one.condition === null && sameSize(one, two, context.read.gauges).same) {
      return as('same, written otherwise');
    }
    return as('differs');
  }
  const { reading } = part.size;
  if (!reading.ok) return as('differs');
  const found = readAnswer(answer.value, part, asked, context.read);
  if (found === null) return as('differs', { difference: 'it cannot be read as a size' });
  const first = reading.statement;
  for (const second of found) {
    const { same, difference, misprint } = sameSize(first, second, context.read.gauges);
    if (same || isSameCondition(key, first, second, sheet)) continue;
    const witnesses =
      part.role === 'figure' ? witnessesOf(part, second, answer.value, asked, sheet, context) : [];
    return as('differs', { difference, misprint, witnesses });
  }
  return as('same, written otherwise');
}

function isSameCondition(key: string, first: Statement, second: Statement, sheet: Sheet): boolean {
  if (first.condition === null || second.condition === null) return false;
  return sameWords(key, first.condition, second.condition, sheet) !== 'differs';
}

/**
 * What was answered, read as the sheet's own figure is; two statements where a paper prints the figure
 * with another behind it in brackets. Null for what is no size.
 */
function readAnswer(
  text: string,
  { size }: AskedPart,
  { setting }: Asked,
  options: ReadOptions,
): readonly Statement[] | null {
  const dimension = size?.reading.ok ? size.reading.statement.dimension : undefined;
  const expect = setting.known?.dimensions ?? (dimension && [dimension]);
  const read = (part: string) => {
    const reading = readStatement(part, { ...options, expect, jets: setting.jets });
    return reading.ok ? reading.statement : null;
  };
  const whole = read(text);
  const split = /^([^()[\]]+)[([]([^()[\]]+)[)\]]\s*$/.exec(text);
  const both = split && [read(split[1] ?? ''), read(split[2] ?? '')];
  const [head, tail] = both ?? [];
  if (head && tail && head.condition === null && tail.condition === null) return [head, tail];
  return whole && [whole];
}

/** A text in one spelling of letters, blanks, dashes and the signs for inch. */
function level(text: string): string {
  return text
    .trim()
    .toLowerCase()
    .replace(/\s+/g, ' ')
    .replace(/[–—−]/g, '-')
    .replace(/(?<=\d) ?(?:["“”″]|in\b\.?|inch(?:es)?\b)/g, ' in');
}
