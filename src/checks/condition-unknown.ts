import { FLOW_NUMBER, NOT_STATED } from '../quantity/index.ts';
import { capitalized } from '../text/index.ts';
import { isBlank } from './blank.ts';
import { defineCheck } from './define.ts';
import { readOf, sizesOfSetting } from './stated-sizes.ts';
import { nearest } from './vocabulary.ts';

/** `value: paralell`: words that stand for a figure and that nobody knows. */
export default defineCheck({
  id: 'condition-unknown',
  severity: 'warning',
  group: 'sizes',
  summary: 'A setting is stated in words that its kind does not know.',
  explain:
    'Where a setting may be stated in words, a misspelt word, or a figure that was written in letters, ' +
    'would pass for one. Known are the words of the kind, and those that the sheet declares under ' +
    '`conditions:` beside the value. Accept it where the words are right and used once.',
  messages: {
    near: {
      message: '{text} is no condition that {setting} is stated in',
      fix: 'write `{near}`, if that is meant',
      suggest: [{ write: '{near}' }],
    },
    unknown: {
      message: '{text} is no condition that {setting} is stated in',
      fix: 'write one of {known}, or the figure; words that are right here are declared by `conditions: [{text}]` beside the value',
      suggest: [{ say: 'conditions', as: '[{text}]' }],
    },
  },
  run(sheet, _context, report) {
    for (const setting of sheet.figures) {
      const known = setting.known?.conditions ?? [];
      if (known.length === 0) continue;
      const words = [...known, ...setting.ownConditions.map(({ value }) => value)];
      for (const { role, size, subject } of sizesOfSetting(setting)) {
        if (!STATED.has(role) || isBlank(size.text)) continue;
        const statement = readOf(size);
        if (statement?.qualifier === FLOW_NUMBER) continue;
        const condition = statement?.condition ?? null;
        if (condition === null || condition === NOT_STATED) continue;
        const values = { text: size.text, setting: setting.name.value };
        const meant = misspelt(condition, words);
        if (meant !== null) {
          const near = matchCase(size.text, meant);
          report({ message: 'near', span: size.span, values: { ...values, near }, subject });
          continue;
        }
        if (words.some((word) => says(condition, level(word)))) continue;
        const near = nearest(condition, words) ?? nearest(firstWord(condition), words);
        if (near !== null) {
          report({ message: 'near', span: size.span, values: { ...values, near }, subject });
        } else {
          const list = known.map((word) => `\`${word}\``).join(', ');
          report({
            message: 'unknown',
            span: size.span,
            values: { ...values, known: list },
            subject,
          });
        }
      }
    }
  },
  examples: [
    {
      name: 'a misspelt condition',
      sheet: { settings: 'float-alignment: { value: paralell, from: m48 p. 30 }' },
      expect: [
        {
          at: 'paralell',
          message: 'paralell is no condition that float-alignment is stated in',
          fix: 'write `parallel`, if that is meant',
        },
      ],
    },
    {
      name: 'a misspelt condition with words behind it',
      sheet: { settings: 'float-drop: { value: flsh with the cover, from: m48 p. 30 }' },
      expect: [
        {
          at: 'flsh with the cover',
          message: 'flsh with the cover is no condition that float-drop is stated in',
          fix: 'write `flush`, if that is meant',
        },
      ],
    },
    {
      name: 'a misspelt word behind a known one',
      sheet: { settings: 'metering-rods: { value: bottomed and clampde, from: m48 p. 30 }' },
      expect: [
        {
          at: 'bottomed and clampde',
          message: 'bottomed and clampde is no condition that metering-rods is stated in',
          fix: 'write `bottomed and clamped`, if that is meant',
        },
      ],
    },
    {
      name: 'words that stand for nothing',
      sheet: { settings: 'balance: { value: as desired, from: m48 p. 30 }' },
      expect: [
        {
          at: 'as desired',
          message: 'as desired is no condition that balance is stated in',
          fix: 'write one of `equal`, `the same`, `balanced`, `level`, `parallel`, or the figure; words that are right here are declared by `conditions: [as desired]` beside the value',
        },
      ],
    },
    {
      name: 'words that the sheet declares, words of the kind with more behind them, and none at all',
      sheet: {
        settings:
          'float-alignment: { value: hanging true, conditions: [hanging true], from: m48 p. 30 }\n' +
          'float-drop: { value: Parallel to the cover face, from: m48 p. 31 }\n' +
          'balance: { value: not stated, from: m48 p. 32 }\n' +
          'vacuum-piston: { value: drill Z, from: m48 p. 33 }',
      },
      expect: [],
    },
  ],
});

/**
 * Words that begin as known ones do and, whole, are a letter or two off longer known ones: `flush with
 * the pisten face` for `flush with the piston face`. Null where they are known themselves or unlike any.
 */
function misspelt(condition: string, words: readonly string[]): string | null {
  const levels = words.map(level);
  if (levels.includes(condition)) return null;
  const near = nearest(
    condition,
    levels.filter((word) => word.includes(' ')),
  );
  if (near === null) return null;
  const [said, meant] = [condition.split(' '), near.split(' ')];
  if (said.length !== meant.length) return null;
  // Each word is the known one or a slip of it: `the bowl` is no slip of `the body`.
  const isSlip = said.every(
    (word, i) => word === meant[i] || (word.length > 3 && nearest(word, [meant[i] ?? '']) !== null),
  );
  return isSlip ? near : null;
}

/** Known words with the capital that a statement begins with. */
function matchCase(text: string, words: string): string {
  return /^\p{Lu}/u.test(text) ? capitalized(words) : words;
}

const STATED: ReadonlySet<string> = new Set(['value', 'also', 'place', 'but']);

function level(words: string): string {
  return words.trim().toLowerCase().replace(/\s+/g, ' ');
}

/** Whether it is the words, alone or with where or to what behind them: `parallel to the cover`. */
function says(condition: string, words: string): boolean {
  if (condition === words) return true;
  return condition.startsWith(words) && WHERE.test(condition.slice(words.length));
}

const WHERE = /^,? (?:to|with|at|on|of|in|by|and|when|against|under|over|all|for|from|between)\b/;

function firstWord(condition: string): string {
  return condition.split(' ')[0] ?? '';
}
