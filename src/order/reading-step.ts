import type { Kind, StateTerm } from '../kinds/model.ts';
import type { ReadState } from './reading.ts';
import { type Clauses, clausesOf, isAdverb } from './reading-clauses.ts';
import {
  attributeOf,
  beforeName,
  type Condition,
  conditionOf,
  isOpener,
} from './reading-conditions.ts';
import { infosOf, type SortedForms, type WordInfo } from './reading-infos.ts';
import { type Lexicon, lexiconOf, type VerbForm } from './reading-lexicon.ts';
import { type Mention, mentionsOf, type Topic } from './reading-mentions.ts';
import { coordinatedBefore, type Named, objectAt, tailAfter, withTail } from './reading-objects.ts';
import { isMeasuredFrom, isStart, phraseEnd } from './reading-phrases.ts';
import { isStop, looseEnd, matchesAt, type Token, tokensOf } from './reading-tokens.ts';
import { isActive, subjectBefore } from './reading-verbs.ts';
import { DEGREES, type Form, GOING, PARTICLES, WEAK } from './reading-words.ts';

/** How far behind a verb its particle may stand. */
const FAR = 24;

/** A verb done again to `it`, which may be what an earlier verb of the step was done to. */
interface Undone {
  readonly group: string;
  readonly from: number;
  readonly end: number;
}

/** One step being read. */
export class StepReader {
  /** What `it` in the next step may mean. */
  readonly topic: Topic;
  readonly #kind: Kind;
  readonly #lexicon: Lexicon;
  readonly #tokens: readonly Token[];
  readonly #infos: readonly WordInfo[];
  readonly #clauses: Clauses;
  readonly #mentions: readonly Mention[];
  readonly #mentionAt: (Mention | undefined)[];
  readonly #found: ReadState[] = [];
  readonly #undone: Undone[] = [];

  constructor(text: string, kind: Kind, topic: Topic) {
    this.#kind = kind;
    this.#lexicon = lexiconOf(kind);
    this.#tokens = tokensOf(text, kind);
    this.#infos = infosOf(this.#tokens, this.#lexicon);
    this.#clauses = clausesOf(text, this.#tokens, this.#lexicon, this.#infos);
    const named = mentionsOf(this.#tokens, this.#clauses, this.#lexicon, topic, this.#infos);
    this.#mentions = named.mentions;
    this.topic = named.topic;
    this.#mentionAt = new Array(this.#tokens.length);
    for (const mention of this.#mentions)
      for (let i = mention.at; i < mention.end; i++) this.#mentionAt[i] = mention;
  }

  read(): readonly ReadState[] {
    this.#phrases();
    this.#inverted();
    this.#alone();
    this.#verbs();
    for (const mention of this.#mentions) if (mention.parts.length > 0) this.#about(mention);
    for (const each of this.#undone) this.#again(each);
    if (this.#found.length < 2) return this.#found;
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
      const known = this.#infos[at]?.phrases;
      if (!known || this.#clauses.modes[at] === 'open' || this.#isPurpose(at)) continue;
      const told: string[] = [];
      for (const { words, term } of known) {
        const isAnchored = words[0] === '.';
        if (isAnchored && !isStart(this.#tokens, at)) continue;
        const end = phraseEnd(this.#tokens, at, words, isAnchored ? 1 : 0);
        if (end < 0 || told.includes(term.part) || isMeasuredFrom(this.#tokens, at)) continue;
        told.push(term.part);
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

  #verbs(): void {
    let subject: readonly Mention[] = [];
    for (let at = 0; at < this.#tokens.length; at++) {
      const word = this.#tokens[at]?.word ?? '';
      if (word === '.') subject = [];
      const forms = this.#infos[at]?.verbs;
      if (!forms || this.#mentionAt[at] || this.#clauses.modes[at] === 'open') continue;
      if (this.#active(at, forms)) continue;
      if (!forms.forms.includes('past')) continue;
      for (const verb of this.#likely(at, forms)) {
        if (verb.form !== 'past' || !matchesAt(this.#tokens, at + 1, verb.rest)) continue;
        const passive = this.#passive(at, verb, subject);
        if (!passive) continue;
        subject = passive;
        break;
      }
    }
  }

  /** `Off with the cap`, `Back goes the lid`, `then out come both rods`. */
  #inverted(): void {
    for (let at = 0; at < this.#tokens.length; at++) {
      if (!this.#infos[at]?.isWay) continue;
      const way = this.#tokens[at]?.word ?? '';
      if (this.#clauses.modes[at] === 'open' || !isStart(this.#tokens, at)) continue;
      let from = at + 1;
      while (isAdverb(this.#tokens[from]?.word ?? '')) from++;
      const word = this.#tokens[from]?.word ?? '';
      if (word !== 'with' && !GOING.has(word)) continue;
      const object = objectAt(this.#tokens, from + 1, this.#mentionAt, this.#lexicon);
      if (object === null) continue;
      for (const { parts } of object.mentions) {
        for (const part of parts) {
          const term = this.#wayOf(part, way);
          if (term) this.#add(term, at, object.end, null);
        }
      }
    }
  }

  /** What a part that goes a way is left in: in the condition of that name, else as the verb of that way leaves it. */
  #wayOf(part: string, way: string): StateTerm | null {
    for (const known of this.#lexicon.conditions.get(way) ?? [])
      if (known.part === part && known.words.length === 1)
        return { part, condition: known.condition };
    const group = this.#lexicon.ways.get(way);
    const condition = this.#kind.parts.get(part)?.reads.get(group ?? '');
    return condition === undefined ? null : { part, condition };
  }

  /** `Neutral.`, `Upside down, ...`: a condition that only one part can be in, or the one spoken of. */
  #alone(): void {
    for (let at = 0; at < this.#tokens.length; at++) {
      if (at > 0 && this.#tokens[at - 1]?.word !== '.') continue;
      const word = this.#tokens[at]?.word ?? '';
      if (WEAK.has(word) || this.#clauses.modes[at] !== 'told') continue;
      const known = this.#lexicon.conditions.get(word);
      if (!known || this.#mentionAt[at]) continue;
      const whole = known.filter(({ words }) => {
        const end = looseEnd(this.#tokens, at, words);
        return end > 0 && isStop(this.#tokens[end]?.word);
      });
      const meant = [...new Set(whole.map(({ part }) => part))];
      const part = meant.length === 1 ? meant[0] : undefined;
      const found = whole.find((each) => each.part === part);
      if (found)
        this.#add(
          { part: found.part, condition: found.condition },
          at,
          at + found.words.length,
          null,
        );
    }
  }

  /**
   * A verb that does something to what it names: of those that begin alike the one whose particle
   * stands nearest, then the one that says most. False where it says nothing of a part.
   */
  #active(at: number, forms: SortedForms): boolean {
    let best: { readonly object: Named; readonly verb: VerbForm; readonly at: number } | null =
      null;
    let form: Form | null = null;
    let isDoing = false;
    let from = -1;
    let plain: Named | null = null;
    if (!forms.forms.some((each) => this.#isActive(at, each))) return false;
    for (const verb of this.#likely(at, forms)) {
      if (verb.form !== form) {
        form = verb.form;
        isDoing = this.#isActive(at, form);
      }
      if (!isDoing) continue;
      if (!matchesAt(this.#tokens, at + 1, verb.rest)) continue;
      if (from !== at + 1 + verb.rest.length) {
        from = at + 1 + verb.rest.length;
        plain = objectAt(this.#tokens, from, this.#mentionAt, this.#lexicon);
      }
      if (plain === null) continue;
      if (!this.#reads(plain, verb.group)) {
        if (best === null && plain.mentions.every(({ isPronoun }) => isPronoun)) {
          const end = tailAfter(this.#tokens, plain.end, verb.tail, isAdverb);
          if (end >= 0 && /^(?:again|back)$/.test(this.#tokens[end]?.word ?? '.')) {
            this.#undone.push({ group: verb.group, from: at, end });
            return true;
          }
        }
        continue;
      }
      if (verb.tail.length === 0) {
        const nearest = verb.rest.length > 0 ? at : Number.POSITIVE_INFINITY;
        if (best === null || nearest < best.at) best = { object: plain, verb, at: nearest };
        continue;
      }
      const tailed = withTail(this.#tokens, plain, verb.tail, this.#mentionAt, this.#lexicon);
      if (tailed && (best === null || tailed.at < best.at)) best = { ...tailed, verb };
    }
    if (best === null || this.#isOutdone(best.object, best.verb)) return false;
    if (this.#isPartial(at, best.object, { ...best.verb, tail: [] })) return false;
    return this.#brings(best.object, best.verb.group, at);
  }

  /** `Lift the pair back on the engine`: where a bare verb puts a thing says more than the verb. */
  #isOutdone({ mentions }: Named, { rest, tail, group }: VerbForm): boolean {
    const last = mentions[mentions.length - 1];
    const first = mentions[0];
    if (rest.length + tail.length > 0 || !first || !last) return false;
    const said = this.#conditionOf(last, first, last.parts);
    if (said === null) return false;
    return this.#kind.parts.get(said.term.part)?.reads.get(group) !== said.term.condition;
  }

  #conditionOf(mention: Mention, first: Mention, parts: readonly string[]): Condition | null {
    const { modes } = this.#clauses;
    return conditionOf(this.#tokens, mention, first, parts, this.#lexicon, modes);
  }

  /** Of a verb's forms those whose particle stands behind it, nearest first, and those without one. */
  #likely(at: number, { plain, byTail }: SortedForms): readonly VerbForm[] {
    if (byTail.size === 0) return plain;
    let found: readonly VerbForm[] | null = null;
    for (let i = at + 1; i < this.#tokens.length && i < at + FAR; i++) {
      const word = this.#tokens[i]?.word ?? '.';
      if (word === '.') break;
      const tailed = byTail.get(word);
      if (tailed) found = found === null ? tailed : [...found, ...tailed];
    }
    if (found === null) return plain;
    return plain.length === 0 ? found : [...found, ...plain];
  }

  #isActive(at: number, form: Form): boolean {
    if (this.#clauses.modes[at] === 'held' && form !== 'ing' && form !== 'past') return false;
    return isActive(this.#tokens, at, form);
  }

  /** `Open the choke half way`, `half close it`: what is done in part is not done. */
  #isPartial(at: number, { end }: Named, { group, tail }: VerbForm): boolean {
    if (!this.#lexicon.whole.has(group)) return false;
    const isBehind = (from: number): boolean => {
      const word = this.#tokens[from]?.word ?? '.';
      return DEGREES.has(word) || (word === 'a' && isBehind(from + 1));
    };
    return (
      isBehind(end + tail.length) || isBehind(end) || DEGREES.has(this.#tokens[at - 1]?.word ?? '')
    );
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
      found === 'shared'
        ? shared.length > 0
          ? shared
          : this.#headBefore(at)
        : coordinatedBefore(this.#tokens, found, this.#mentionAt);
    if (mentions.length === 0) return null;
    const from = at + 1 + verb.rest.length;
    const end = tailAfter(this.#tokens, from, verb.tail, isAdverb);
    if (end < 0 || this.#isPartial(at, { mentions, end }, { ...verb, tail: [] })) return null;
    const start = mentions[0]?.at ?? at;
    const first = found === 'shared' ? at : Math.min(start, at);
    const isRead = this.#brings({ mentions, end }, verb.group, first);
    return isRead ? mentions : null;
  }

  /** `Vacuum hose off, and plugged`: what the clause before began with. */
  #headBefore(at: number): readonly Mention[] {
    for (let i = this.#mentions.length - 1; i >= 0; i--) {
      const mention = this.#mentions[i];
      if (!mention || mention.at >= at) continue;
      for (let j = mention.end; j < at; j++) if (this.#tokens[j]?.word === '.') return [];
      if (isOpener(this.#tokens[beforeName(this.#tokens, mention.at)]?.word)) return [mention];
    }
    return [];
  }

  /** `up to its lever, and then in one turn`: a way that a part goes on without a verb. */
  #onward(part: string, from: number): void {
    let at = from;
    while (/^(?:,|and)$/.test(this.#tokens[at]?.word ?? '.')) at++;
    if (this.#tokens[at]?.word !== 'then') return;
    at++;
    while (isAdverb(this.#tokens[at]?.word ?? '') && !PARTICLES.has(this.#tokens[at]?.word ?? ''))
      at++;
    const way = this.#tokens[at]?.word ?? '.';
    if (!PARTICLES.has(way) || this.#clauses.modes[at] === 'open') return;
    for (const known of this.#lexicon.conditions.get(way) ?? [])
      if (known.part === part && known.words.length === 1)
        this.#add({ part, condition: known.condition }, at, at + 1, null);
  }

  /** `Nudge it loose, shift the plate, and nip it up again`: `again` is what was moved before. */
  #again({ group, from, end }: Undone): void {
    const start = this.#tokens[from]?.start ?? 0;
    const moved = this.#found.filter((each) => each.start < start).reverse();
    for (const { term } of moved) {
      const condition = this.#kind.parts.get(term.part)?.reads.get(group);
      if (condition === undefined || condition === term.condition) continue;
      this.#add({ part: term.part, condition }, from, end, group);
      return;
    }
  }

  #brings({ mentions, end, along }: Named, group: string, from: number): boolean {
    let isRead = false;
    for (const mention of mentions) {
      const { parts, isPronoun } = mention;
      // What only goes with another thing is not said to be put back itself.
      const verb = along?.has(mention) ? null : group;
      for (const part of parts) {
        const condition = this.#kind.parts.get(part)?.reads.get(group);
        if (condition === undefined) continue;
        this.#add({ part, condition }, from, end, verb);
        this.#onward(part, end);
        isRead = true;
        if (isPronoun) break;
      }
    }
    return isRead;
  }

  /** `one turn in after it touches`: what a part was in before the step's verb moved it on. */
  #isAfter({ at, parts }: Mention): boolean {
    if (this.#tokens[at - 1]?.word !== 'after') return false;
    const start = this.#tokens[at]?.start ?? 0;
    return this.#found.some((each) => each.start < start && parts.includes(each.term.part));
  }

  /** What a part does by itself, or the condition that it is said to be in. */
  #about(mention: Mention): void {
    const mode = this.#clauses.modes[mention.at];
    if (mode === 'open' || this.#isAfter(mention)) return;
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
      const read = this.#conditionOf(mention, mentions[0] ?? mention, each.parts);
      if (!read) continue;
      this.#add(read.term, from, read.end, null);
      this.#onward(read.term.part, read.end);
    }
  }
}
