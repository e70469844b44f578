import { expect, test } from 'vitest';
import type { Figures } from './reading-figures.ts';
import { type Half, readSentences, readVoices, summed, toldFigures } from './voices.ts';

function tell(what: string, byVoice: ReadonlyMap<string, Figures>, showMissed: boolean): Figures {
  const all = summed(byVoice.values());
  console.log(
    [
      ...[...byVoice].map(([voice, figures]) => toldFigures(`${what}, ${voice}`, figures)),
      toldFigures(`${what}, all`, all),
    ].join('\n'),
  );
  if (showMissed) console.log(`missed:\n${all.missed.join('\n')}\nwrong:\n${all.wrong.join('\n')}`);
  return all;
}

const folder = process.env.READING_TRIAL;
const shown = process.env.SHOW_MISSED !== undefined;

test.runIf(folder)('sheets of a folder, by voice', () => {
  const all = tell('sheets', readVoices(folder ?? ''), shown);
  expect(all.read).toBeGreaterThan(0);
});

for (const half of ['seen', 'unseen'] satisfies Half[]) {
  test(`sentences ${half} while the words were tuned`, () => {
    const all = tell(`sentences ${half}`, readSentences(half), shown && half === 'seen');
    expect(all.marked).toBeGreaterThan(60);
  });
}
