import { oncePer } from '../text/index.ts';
import {
  type ConditionWords,
  KEPT,
  type Lexicon,
  type Noun,
  type Phrase,
  type VerbForm,
} from './reading-lexicon.ts';
import {
  CONDITIONALS,
  CONJUNCTIONS,
  DETERMINERS,
  type Form,
  NEGATIONS,
  PARTICLES,
  PRONOUNS,
  STATIVES,
  UNDONE,
} from './reading-words.ts';

/** What begins with a word, looked up once: a step is gone through several times. */
export interface WordInfo {
  readonly nouns: readonly Noun[] | undefined;
  readonly verbs: SortedForms | undefined;
  readonly phrases: readonly Phrase[] | undefined;
  readonly conditions: readonly ConditionWords[] | undefined;
  readonly isPronoun: boolean;
  readonly isDeterminer: boolean;
  /** Whether it can end, join, bind or deny what is said. */
  readonly binds: boolean;
  /** `off`, `back`, `up`: the way that something goes. */
  readonly isWay: boolean;
}

const BINDING: readonly ReadonlySet<string>[] = [
  new Set(['.', ',', 'should', 'where']),
  CONJUNCTIONS,
  CONDITIONALS,
  NEGATIONS,
  UNDONE,
  STATIVES,
];

const infosKnown = oncePer((_: Lexicon) => new Map<string, WordInfo>());

/** The words of a step with what begins with each. */
export function infosOf(words: readonly { readonly word: string }[], lexicon: Lexicon): WordInfo[] {
  const known = infosKnown(lexicon);
  const found: WordInfo[] = [];
  for (const { word } of words) {
    let info = known.get(word);
    if (info === undefined) {
      info = {
        nouns: lexicon.nouns.get(word),
        verbs: sortedForms(lexicon.verbs.get(word)),
        phrases: lexicon.phrases.get(word),
        conditions: lexicon.conditions.get(word),
        isPronoun: PRONOUNS.has(word),
        isDeterminer: DETERMINERS.has(word),
        binds: BINDING.some((words) => words.has(word)),
        isWay: PARTICLES.has(word),
      };
      if (known.size < KEPT) known.set(word, info);
    }
    found.push(info);
  }
  return found;
}

export interface SortedForms {
  /** Which forms they are. */
  readonly forms: readonly Form[];
  readonly plain: readonly VerbForm[];
  /** By the first word of what must follow the object. */
  readonly byTail: ReadonlyMap<string, readonly VerbForm[]>;
}

/** The forms that a word has, parted by their particles: of sixty of `let` a step can mean two or three. */
function sortedForms(forms: readonly VerbForm[] | undefined): SortedForms | undefined {
  if (forms === undefined) return undefined;
  const byTail = new Map<string, VerbForm[]>();
  const plain: VerbForm[] = [];
  for (const each of forms) {
    const first = each.tail[0];
    if (first === undefined) plain.push(each);
    else if (byTail.has(first)) byTail.get(first)?.push(each);
    else byTail.set(first, [each]);
  }
  return { forms: [...new Set(forms.map(({ form }) => form))], plain, byTail };
}
