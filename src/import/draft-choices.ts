import type { Kind } from '../kinds/model.ts';
import { type Choice, nearestName } from '../text/index.ts';

function will<T>(value: T): Choice<T> {
  return { ok: true, value };
}

function wont(message: string, fix: string | null = null): Choice<never> {
  return { ok: false, message, fix };
}

/**
 * The features of a list parted by commas, by their names in the kind, each once and in the kind's
 * order. None of them may be unknown, no two exclude one another, and one of a set be lacking.
 */
export function chosenFeatures(text: string, kind: Kind): Choice<readonly string[]> {
  const chosen = new Set<string>();
  for (const part of text.split(',')) {
    const word = part.trim();
    if (word === '') continue;
    const feature = kind.featureNamed(word);
    if (feature === null) {
      const near = nearestName(word, kind.features.keys());
      return wont(
        `a ${kind.name} has no feature called ${word}`,
        near === null
          ? `the features are: ${[...kind.features.keys()].join(', ')}`
          : `perhaps ${near} was meant`,
      );
    }
    chosen.add(feature.name);
  }
  for (const name of chosen) {
    const other = kind.features.get(name)?.excludes.find((each) => chosen.has(each));
    if (other !== undefined) {
      return wont(`a ${kind.name} cannot be ${name} and ${other} at once`, 'leave one out');
    }
  }
  for (const set of kind.oneOf) {
    if (!set.some((name) => chosen.has(name))) {
      return wont(`one of these features is needed: ${set.join(', ')}`);
    }
  }
  return will([...kind.features.keys()].filter((name) => chosen.has(name)));
}

/** A name of a maker or model: 1 to 100 letters on one line, blanks at the ends taken off. */
export function chosenName(text: string, what: string): Choice<string> {
  const name = text.trim();
  // biome-ignore lint/suspicious/noControlCharactersInRegex: control characters are refused here.
  if (name === '' || name.length > 100 || /[\u0000-\u001f\u007f]/.test(name)) {
    return wont(`the ${what} has to be a name of at most 100 letters on one line`);
  }
  return will(name);
}

/**
 * The one kind there is, or the one whose features the most of the given ones are; undefined where
 * the features fit several kinds alike, or none.
 */
export function kindOfFeatures(
  features: string | undefined,
  kinds: ReadonlyMap<string, Kind>,
): string | undefined {
  if (kinds.size === 1) return [...kinds.keys()][0];
  const words = (features ?? '').split(',').map((word) => word.trim());
  const known = [...kinds.values()].map((kind) => ({
    name: kind.name,
    count: words.filter((word) => word !== '' && kind.featureNamed(word) !== null).length,
  }));
  const most = Math.max(...known.map(({ count }) => count));
  const best = known.filter(({ count }) => count === most);
  return most > 0 && best.length === 1 ? best[0]?.name : undefined;
}

/** The features that words parted by commas name in any of some kinds, by their names there. */
export function featuresNamed(text: string, kinds: readonly Kind[]): Choice<readonly string[]> {
  const found: string[] = [];
  for (const word of text.split(',').map((each) => each.trim())) {
    if (word === '') continue;
    const feature = kinds.map((each) => each.featureNamed(word)).find((each) => each !== null);
    if (feature == null) return wont(`no kind of unit has a feature called ${word}`);
    found.push(feature.name);
  }
  return will(found);
}
