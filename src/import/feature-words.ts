import type { Kind, KindFeature } from '../kinds/model.ts';

/** The words of a cell that lists features. */
export function featureWords(text: string): readonly string[] {
  return text.split(/\s*[,;+]\s*/).filter((word) => word !== '');
}

/**
 * The feature that a word in a column means: by itself, or together with the column's head, as lists
 * write `2` under `Barrels` and `auto` under `Choke`; null where it is none. The head's noun goes in
 * the singular too.
 */
export function featureSaid(word: string, head: string, kind: Kind): KindFeature | null {
  const noun = head.replace(/\([^()]*\)/g, ' ').trim();
  const single = noun.replace(/s$/i, '');
  for (const form of [word, `${word} ${noun}`, `${word} ${single}`, `${word}${single}`]) {
    const feature = kind.featureNamed(form);
    if (feature !== null) return feature;
  }
  return null;
}

/** What a cell answers to whether a unit has something; null where it is no answer. */
export function yesOrNo(text: string): 'yes' | 'no' | null {
  if (/^(?:yes|y|x|✓|✔|1|true)$/i.test(text)) return 'yes';
  return /^(?:no|n|0|false)$/i.test(text) ? 'no' : null;
}
