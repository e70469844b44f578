import { existsSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import type { Figures } from './reading-figures.ts';
import { type Half, readSentences, readVoices, summed, toldFigures } from './voices.ts';

/** Prints how each voice is read, and returns all of them together. */
function tell(what: string, byVoice: ReadonlyMap<string, Figures>, mayShow: boolean): Figures {
  const all = summed(byVoice.values());
  const rows = [...byVoice].map(([voice, figures]) => toldFigures(`${what}, ${voice}`, figures));
  console.log([...rows, toldFigures(`${what}, all`, all)].join('\n'));
  if (mayShow && process.env.SHOW_MISSED)
    console.log(`missed:\n${all.missed.join('\n')}\nwrong:\n${all.wrong.join('\n')}`);
  return all;
}

function hold({ recalled, marked, right, read }: Figures): void {
  expect(marked).toBeGreaterThan(60);
  expect(recalled / marked).toBeGreaterThanOrEqual(0.8);
  expect(right / read).toBeGreaterThanOrEqual(0.95);
}

describe('sheets with their marks passed over, by voice', () => {
  const trial = join(import.meta.dirname, '..', 'trial');
  const folders = process.env.READING_TRIAL
    ? [process.env.READING_TRIAL]
    : ['facts/first', 'facts/second'].map((each) => join(trial, each));
  for (const folder of folders) {
    test.runIf(existsSync(folder))(folder.slice(-24), () => {
      expect(readdirSync(join(folder, 'sheets')).length).toBeGreaterThan(0);
      hold(tell('sheets', readVoices(folder), true));
    });
  }
});

describe('sentences in four voices', () => {
  for (const half of ['seen', 'unseen'] satisfies Half[]) {
    test(`${half} while the words were tuned`, () => {
      hold(tell(`sentences ${half}`, readSentences(half), half === 'seen'));
    });
  }
});
