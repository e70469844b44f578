import { describe, expect, it } from 'vitest';
import { firstSentences } from './first-sentences.ts';
import { secondSentences } from './second-sentences.ts';
import { missed, type Sentence } from './stand.ts';

function failures(sentences: readonly Sentence[]): readonly string[] {
  return sentences.flatMap((sentence) => {
    const why = missed(sentence);
    return why === null ? [] : [`${sentence[0]}: ${sentence[2]}: ${sentence[3]} -> ${why}`];
  });
}

describe('numbers in the text', () => {
  it.each([
    ['first', firstSentences],
    ['second', secondSentences],
  ])('says what it ought to of the %s sentences', (name, all) => {
    const wrong = failures(all);
    console.log(
      `${name} sentences: ${all.length - wrong.length} of ${all.length} as they ought to be`,
    );
    expect(wrong).toEqual([]);
  });
});
