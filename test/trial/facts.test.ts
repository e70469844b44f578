import { describe, expect, it } from 'vitest';
import { figuresOf, runTrial } from './facts-trial.ts';

/**
 * Right sheets in many voices, and mistakes planted in them with what ought to be said of each. Both
 * were written from the README and the format by people who had read nothing of `src/`, and the
 * verdicts were fixed before the first run. `SHOW_TRIAL=1` prints what is missed, and what right
 * sheets are told.
 */
const halves = ['first', 'second', 'third'] as const;

describe.each(halves)('the trial of facts, %s part', (half) => {
  const outcome = runTrial(new URL(`./facts/${half}/`, import.meta.url));
  const figures = figuresOf(outcome);

  it('prints its figures', () => {
    const { knowable, line, entry, missed, truths, truthNamed, furtherEach } = figures;
    const share = (part: number, whole: number) => `${((100 * part) / whole).toFixed(1)} %`;
    console.info(
      `${half} part: of ${knowable} mistakes ${line} found at the line, ${entry} at the entry, ` +
        `${missed} missed (${share(line + entry, knowable)} found); the true figure first or second ` +
        `in ${truthNamed} of ${truths} (${share(truthNamed, truths)}); ` +
        `${furtherEach.toFixed(2)} further findings a mistake; on ${figures.sheets} right sheets ` +
        `${figures.errorsOnRight} errors and ${figures.warningsOnRight} warnings`,
    );
    if (process.env.SHOW_TRIAL === '1') show(outcome);
    expect(knowable).toBeGreaterThan(75);
  });
});

function show({ sheets, mistakes }: ReturnType<typeof runTrial>): void {
  for (const { sheet, findings } of sheets) {
    for (const finding of findings) console.info(`right sheet ${sheet}: ${finding}`);
  }
  for (const { sheet, mistake, found, graveEnough, truthAt, further, said } of mistakes) {
    const untrue = mistake.truth !== undefined && (truthAt === null || truthAt > 2);
    const mild = found !== 'missed' && !graveEnough;
    if (found !== 'missed' && !untrue && !mild && further === 0) continue;
    const faults = [
      found === 'missed' ? (mistake.knowable ? 'MISSED' : 'missed, not knowable') : found,
      ...(untrue ? [`true figure ${mistake.truth} at ${truthAt ?? 'no place'}`] : []),
      ...(mild ? [`less than ${mistake.severity}`] : []),
      ...(further > 0 ? [`${further} further`] : []),
    ];
    console.info(
      `${sheet}: ${mistake.name} (${mistake.edit.map(({ from, to }) => `${from} → ${to}`).join(' & ')}): ` +
        `${faults.join(', ')}\n    ${said.join('\n    ')}`,
    );
  }
}
