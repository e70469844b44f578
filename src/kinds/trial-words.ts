import type { KindData } from './data.ts';
import { wordsOf } from './lexicon.ts';
import type { Reached } from './reached.ts';
import type { Add } from './trial.ts';

/** Parts that nothing moves, and conditions that nothing brings them into. */
export function partTrial(data: KindData, { moved, can }: Reached, add: Add): void {
  for (const [name, { conditions }] of Object.entries(data.parts ?? {})) {
    const path = ['parts', name];
    const names = Object.keys(conditions);
    if (!names.some((each) => moved.has(`${name} ${each}`))) {
      add(
        path,
        `no words of a step are read as moving the \`${name}\`: it has no verb, phrase or marked step`,
        'add `reads:` with the verbs that move it, or take the part out',
      );
      continue;
    }
    for (const each of names)
      if (!can.has(`${name} ${each}`))
        add(
          [...path, 'conditions', each],
          `no words of a step are read as bringing the \`${name}\` to \`${each}\``,
          'add the words, the verb or the phrase that does, or take the condition out',
        );
  }
}

/** Verbs that no part reads, and words that say two things. */
export function readingFaults(data: KindData, add: Add): void {
  const { parts } = wordsOf(data);
  const read = new Set(Object.values(parts).flatMap(({ reads = {} }) => Object.keys(reads)));
  for (const group of Object.keys(data.verbs ?? {}))
    if (!read.has(group))
      add(
        ['verbs', group],
        `no part reads the verbs \`${group}\``,
        `name them under \`reads:\` of the part that they move, or take them out`,
      );
  const said = new Map<string, string>();
  for (const [state, phrases] of Object.entries(data.phrases ?? {}))
    phrases.forEach((phrase, i) => {
      const other = said.get(phrase);
      if (other === undefined || other.split(' ')[0] !== state.split(' ')[0]) {
        said.set(phrase, other ?? state);
        return;
      }
      add(
        ['phrases', state, i],
        other === state
          ? `\`${phrase}\` stands twice under \`${state}\``
          : `\`${phrase}\` says both \`${other}\` and \`${state}\``,
        'leave it in one place',
        false,
      );
    });
  for (const [name, part] of Object.entries(data.parts ?? {})) {
    const owner = new Map<string, string>();
    for (const [condition, { aliases = [] }] of Object.entries(part.conditions))
      aliases.forEach((alias, i) => {
        const other = owner.get(alias);
        owner.set(alias, other ?? condition);
        if (other === undefined || other === condition) return;
        add(
          ['parts', name, 'conditions', condition, 'aliases', i],
          `\`${alias}\` says both \`${other}\` and \`${condition}\` of the \`${name}\``,
          'leave it to one of them',
          false,
        );
      });
  }
}
