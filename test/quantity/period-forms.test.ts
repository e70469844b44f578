import { describe, expect, it } from 'vitest';
import { gaugeBook } from '../../src/gauges/index.ts';
import { readStatement } from '../../src/quantity/index.ts';
import type { Statement } from '../../src/quantity/model.ts';
import { DOUBTFUL_FORMS, PERIOD_FORMS } from './period-forms.ts';

const gauges = gaugeBook();

/** What a statement comes to, without how it was written. */
function meaning(statement: Statement) {
  const { dimension, form, nominal, low, high, about, sense, datum, reference } = statement;
  return {
    dimension,
    form,
    nominal: nominal?.base.toFraction() ?? null,
    low: low?.base.toFraction() ?? null,
    high: high?.base.toFraction() ?? null,
    about,
    sense,
    datum,
    reference,
    gauge: nominal?.gauge?.label ?? null,
  };
}

function read(text: string) {
  const reading = readStatement(text, { gauges });
  if (!reading.ok) throw new Error(`${text}: ${reading.problem.message}`);
  return reading.statement;
}

describe('sizes as papers print them', () => {
  it.each(PERIOD_FORMS)('$written is $means', ({ written, means }) => {
    expect(meaning(read(written))).toEqual(meaning(read(means)));
    expect(read(written).text).toBe(written);
  });

  it.each(DOUBTFUL_FORMS)('$written is told with what it may mean', ({ written, offers }) => {
    const reading = readStatement(written, { gauges });
    if (reading.ok) throw new Error(`${written} was read as ${reading.statement.form}`);
    for (const offer of offers) expect(reading.problem.candidates).toContain(offer);
  });
});
