import type { Kind, StateTerm } from '../kinds/model.ts';
import type { ReadState } from './reading.ts';
import { type Clauses, clausesOf, isAdverb } from './reading-clauses.ts';
import { attributeOf, conditionOf } from './reading-conditions.ts';
import { type Lexicon, lexiconOf, type VerbForm } from './reading-lexicon.ts';
import { type Mention, mentionsOf, type Topic } from './reading-mentions.ts';
import { coordinatedBefore, type Named, objectAt, tailAfter, withTail } from './reading-objects.ts';
import { isStop, matchesAt, type Token, tokensOf } from './reading-tokens.ts';
import { isActive, subjectBefore } from './reading-verbs.ts';
import type { Form } from './reading-words.ts';

/** How many words the `...` of a phrase may stand for. */
const GAP = 7;

/** One step being read. */
export class StepReader {
  /** What `it` in the next step may mean. */
  readonly topic: Topic;
  readonly #kind: Kind;
  readonly #lexicon: Lexicon;
  readonly #tokens: readonly Token[];
  readonly #clauses: Clauses;
  readonly #mentions: readonly Mention[];
  readonly #mentionAt: (Mention | undefined)[];
  readonly #found: ReadState[] = [];

  constructor(text: string, kind: Kind, topic: Topic) {
    this.#kind = kind;
    this.#lexicon = lexiconOf(kind);
    this.#tokens = tokensOf(text, kind);
    this.#clauses = clausesOf(this.#tokens, this.#lexicon);
    const named = mentionsOf(this.#tokens, this.#clauses, this.#lexicon, topic);
    this.#mentions = named.mentions;
    this.topic = named.topic;
    this.#mentionAt = new Array(this.#tokens.length);
    for (const mention of this.#mentions)
      for (let i = mention.at; i < mention.end; i++) this.#mentionAt[i] = mention;
  }

  read(): readonly ReadState[] {
    this.#phrases();
    this.#verbs();
    for (const mention of this.#mentions) if (mention.parts.length > 0) this.#about(mention);
    return this.#found.sort((a, b) => a.start - b.start).filter(this.#saysMore, this);
  }

  /** `turned over and laid aside`: what is said later and was meant already says nothing new. */
  #saysMore({ term }: ReadState, index: number, found: readonly ReadState[]): boolean {
    for (let i = index - 1; i >= 0; i--) {
      const earlier = found[i]?.term;
      if (earlier?.part !== term.part) continue;
      const known = this.#kind.parts.get(term.part)?.conditions.get(earlier.condition);
      return !known?.countsAs.includes(term.condition);
    }
    return true;
  }

  #add(term: StateTerm, from: number, to: number, verb: string | null): void {
    const start = this.#tokens[from]?.start ?? 0;
    const end = this.#tokens[Math.min(to, this.#tokens.length) - 1]?.end ?? start;
    const isTold = this.#found.some(
      (each) => each.term.part === term.part && each.start < end && start < each.end,
    );
    if (!isTold) this.#found.push({ term, start, end, verb });
  }

  #phrases(): void {
    for (let at = 0; at < this.#tokens.length; at++) {
      const word = this.#tokens[at]?.word ?? '';
      const known = this.#lexicon.phrases.get(word);
      if (!known || this.#clauses.modes[at] === 'open' || this.#isPurpose(at)) continue;
      const told = new Set<string>();
      for (const { words, term } of known) {
        const end = this.#phraseEnd(at, words);
        if (end < 0 || told.has(term.part)) continue;
        told.add(term.part);
        this.#add(term, at, end, null);
      }
    }
  }

  /** `To stop the engine, ...` stops nothing yet. */
  #isPurpose(at: number): boolean {
    if (
      this.#tokens[at - 1]?.word !== 'to' ||
      !this.#lexicon.verbs.has(this.#tokens[at]?.word ?? '')
    )
      return false;
    return !isActive(this.#tokens, at, 'base');
  }

  /** The end of a phrase that begins here; -1 where it does not. */
  #phraseEnd(from: number, words: readonly string[]): number {
    let at = from;
    for (let i = 0; i < words.length; i++) {
      const wanted = words[i];
      if (wanted === '...') {
        const next = words[i + 1];
        const limit = at + GAP;
        while (at < limit && this.#tokens[at]?.word !== next) {
          if (isStop(this.#tokens[at]?.word)) return -1;
          at++;
        }
      } else if (wanted === '.') {
        const word = this.#tokens[at]?.word;
        return isStop(word) || word === 'and' || word === 'then' ? at : -1;
      } else {
        if (this.#tokens[at]?.word !== wanted) return -1;
        at++;
      }
    }
    return at;
  }

  #verbs(): void {
    let subject: readonly Mention[] = [];
    for (let at = 0; at < this.#tokens.length; at++) {
      const word = this.#tokens[at]?.word ?? '';
      if (word === '.') subject = [];
      const forms = this.#lexicon.verbs.get(word);
      if (!forms || this.#mentionAt[at] || this.#clauses.modes[at] === 'open') continue;
      if (this.#active(at, forms)) continue;
      for (const verb of forms) {
        if (verb.form !== 'past' || !matchesAt(this.#tokens, at + 1, verb.rest)) continue;
        const passive = this.#passive(at, verb, subject);
        if (!passive) continue;
        subject = passive;
        break;
      }
    }
  }

  /**
   * A verb that does something to what it names: of those that begin alike the one whose particle
   * stands nearest, then the one that says most. False where it says nothing of a part.
   */
  #active(at: number, forms: readonly VerbForm[]): boolean {
    let best: { readonly object: Named; readonly verb: VerbForm; readonly at: number } | null =
      null;
    let form: Form | null = null;
    let isDoing = false;
    let from = -1;
    let plain: Named | null = null;
    for (const verb of forms) {
      if (verb.form !== form) {
        form = verb.form;
        isDoing = this.#isActive(at, form);
      }
      if (!isDoing || !matchesAt(this.#tokens, at + 1, verb.rest)) continue;
      if (from !== at + 1 + verb.rest.length) {
        from = at + 1 + verb.rest.length;
        plain = objectAt(this.#tokens, from, this.#mentionAt, this.#lexicon);
      }
      if (plain === null || !this.#reads(plain, verb.group)) continue;
      if (verb.tail.length === 0) {
        const nearest = verb.rest.length > 0 ? at : Number.POSITIVE_INFINITY;
        if (best === null || nearest < best.at) best = { object: plain, verb, at: nearest };
        continue;
      }
      const tailed = withTail(this.#tokens, plain, verb.tail, this.#mentionAt, this.#lexicon);
      if (tailed && (best === null || tailed.at < best.at)) best = { ...tailed, verb };
    }
    return best !== null && this.#brings(best.object, best.verb.group, at);
  }

  #isActive(at: number, form: Form): boolean {
    if (this.#clauses.modes[at] === 'held' && form !== 'ing' && form !== 'past') return false;
    return isActive(this.#tokens, at, form);
  }

  #reads({ mentions }: Named, group: string): boolean {
    return mentions.some(({ parts }) =>
      parts.some((each) => this.#kind.parts.get(each)?.reads.has(group)),
    );
  }

  /** A verb done to what stands before it; returns what that is, for a second verb to share. */
  #passive(at: number, verb: VerbForm, shared: readonly Mention[]): readonly Mention[] | null {
    const found = subjectBefore(this.#tokens, at, this.#mentionAt);
    if (found === null) return null;
    const mentions =
      found === 'shared' ? shared : coordinatedBefore(this.#tokens, found, this.#mentionAt);
    if (mentions.length === 0) return null;
    const from = at + 1 + verb.rest.length;
    const end = tailAfter(this.#tokens, from, verb.tail, isAdverb);
    if (end < 0) return null;
    const start = mentions[0]?.at ?? at;
    const first = found === 'shared' ? at : Math.min(start, at);
    const isRead = this.#brings({ mentions, end }, verb.group, first);
    return isRead ? mentions : null;
  }

  #brings({ mentions, end }: Named, group: string, from: number): boolean {
    let isRead = false;
    for (const { parts, isPronoun } of mentions) {
      for (const part of parts) {
        const condition = this.#kind.parts.get(part)?.reads.get(group);
        if (condition === undefined) continue;
        this.#add({ part, condition }, from, end, group);
        isRead = true;
        if (isPronoun) break;
      }
    }
    return isRead;
  }

  /** What a part does by itself, or the condition that it is said to be in. */
  #about(mention: Mention): void {
    const mode = this.#clauses.modes[mention.at];
    if (mode === 'open') return;
    const mentions = coordinatedBefore(this.#tokens, mention, this.#mentionAt);
    const from = mentions[0]?.at ?? mention.at;
    for (let at = mention.end; at < mention.end + 4; at++) {
      const word = this.#tokens[at]?.word ?? '.';
      if (this.#clauses.modes[at] === 'open') break;
      const doings = this.#lexicon.doings.get(word) ?? [];
      const doing = doings.find(
        ({ words, group }) =>
          matchesAt(this.#tokens, at, words) &&
          this.#brings({ mentions, end: at + words.length }, group, from),
      );
      if (doing) return;
      if (!isAdverb(word) && word !== 'to') break;
    }
    const named = attributeOf(this.#tokens, mention, this.#lexicon);
    if (named) this.#add(named, mention.at - 1, mention.end, null);
    for (const each of mentions) {
      const read = conditionOf(
        this.#tokens,
        mention,
        each.parts,
        this.#lexicon,
        this.#clauses.modes,
      );
      if (read) this.#add(read.term, from, read.end, null);
    }
  }
}
