import { describe, expect, it } from 'vitest';
import { figuresOf, runTrial } from './facts-trial.ts';
import { runEditionTrial, runSums, worked } from './measured-trial.ts';

/**
 * Three sheets with 300 readings of measured units, mistakes planted in them and in their edition, and all
 * sums worked in exact fractions by somebody who had read nothing of `src/`. `SHOW_TRIAL=1` prints what is
 * missed.
 */
describe('the trial of measured units', () => {
  const show = process.env.SHOW_TRIAL === '1';

  it('finds what was planted in sheets', () => {
    const outcome = runTrial(new URL('./measured/', import.meta.url));
    const figures = figuresOf(outcome);
    const { knowable, line, entry, missed, truths, truthNamed, furtherEach } = figures;
    const named = outcome.mistakes.filter(
      ({ mistake, said }) =>
        'finding' in mistake && said.some((each) => each.includes(` ${mistake.finding}: `)),
    ).length;
    const grave = outcome.mistakes.filter((one) => one.mistake.knowable && one.graveEnough).length;
    console.info(
      `measured units: of ${knowable} mistakes ${line} found at the line, ${entry} at the entry, ${missed} missed, ` +
        `${grave} as grave as asked, ${named} by the name that was asked; the true figure first or second in ` +
        `${truthNamed} of ${truths}; ${furtherEach.toFixed(2)} further findings a mistake; on ${figures.sheets} ` +
        `right sheets ${figures.errorsOnRight} errors and ${figures.warningsOnRight} warnings`,
    );
    if (show) {
      for (const { sheet, findings } of outcome.sheets)
        for (const each of findings) console.info(`right sheet ${sheet}: ${each}`);
      for (const { sheet, mistake, found, graveEnough, truthAt, said } of outcome.mistakes)
        console.info(
          `${sheet}: ${mistake.name}: ${found}${graveEnough ? '' : ', too mild'}` +
            `${mistake.truth === undefined ? '' : `, truth at ${truthAt}`}\n    ${said.join('\n    ')}`,
        );
    }
    expect(knowable).toBeGreaterThan(25);
    expect(missed).toBe(0);
    expect(figures.errorsOnRight).toBe(0);
  });

  it('finds what was planted in the edition', async () => {
    const outcomes = await runEditionTrial();
    const found = outcomes.filter(({ said }) => said.length > 0).length;
    const grave = outcomes.filter(({ graveEnough }) => graveEnough).length;
    console.info(
      `house tolerances: of ${outcomes.length} mistakes ${found} found, ${grave} as grave as asked`,
    );
    if (show)
      for (const { mistake, said } of outcomes)
        console.info(`edition: ${mistake.name}:\n    ${said.join('\n    ')}`);
    expect(outcomes.length).toBe(6);
  });

  it('sums 300 readings as they were worked apart', async () => {
    const faults = await runSums();
    console.info(
      `sums: ${faults.length} of them differ${show ? `:\n    ${faults.join('\n    ')}` : ''}`,
    );
    expect(faults).toEqual([]);
    expect(worked.sums.flatMap(({ n }) => n).reduce((sum, n) => sum + n, 0)).toBeGreaterThan(290);
  });
});
