import { describe, expect, it } from 'vitest';
import { runTrial } from './facts-trial.ts';

const trial = runTrial(new URL('curves/', import.meta.url));

/**
 * Sheets with tables and planted mistakes, written from the format alone before there was any code for them.
 */
describe('the trial of curves', () => {
  it.each(trial.sheets)('$sheet is a right sheet', ({ findings, errors, warnings }) => {
    expect(errors, findings.join('\n')).toBe(0);
    expect(warnings, findings.join('\n')).toBe(0);
  });

  it('finds what can be known, at its line and as grave as asked', () => {
    const knowable = trial.mistakes.filter(({ mistake }) => mistake.knowable);
    const missed = knowable.filter(({ found, graveEnough }) => found === 'missed' || !graveEnough);
    for (const each of missed)
      console.info(`${each.sheet}: ${each.mistake.name}: ${each.found}: ${each.said.join(' | ')}`);
    const atLine = knowable.filter(({ found }) => found === 'line').length;
    console.info(
      `curves: ${knowable.length - missed.length} of ${knowable.length} found, ${atLine} at the line`,
    );
    expect(missed.length).toBeLessThanOrEqual(3);
  });
});
