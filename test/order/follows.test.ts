import { describe, expect, test } from 'vitest';
import { walkSheet } from '../../src/order/walk.ts';
import { readSheet } from '../../src/sheet/index.ts';
import { demoContext } from './demo-sheets.ts';

/** The walk of a sheet with a float level, measured with the cover off and no gasket, and these steps. */
function walked(steps: readonly string[], cover = 'removed') {
  const work = steps.map((step, index) => `${index + 1}. ${step}`).join('\n');
  const text = `---
gaugeleaf: 1
sheet: tarn-t64
unit: { kind: carburetor, maker: Tarn, model: T64, features: [two-barrel, downdraft] }
settings:
  float-level: { value: 13/64 in, cover: ${cover}, gasket: removed, at: free end }
---

## Float level

${work}
`;
  const kind = demoContext.kinds.get('carburetor');
  if (!kind) throw new Error('no kind');
  const { steps: passed, faults } = walkSheet(readSheet(text, 'tarn-t64.md', demoContext), kind);
  const now = passed.at(-1)?.after.get('cover');
  return {
    cover: now && `${now.condition} by ${now.by}`,
    unmet: faults.flatMap((fault) => (fault.kind === 'unmet' ? fault.need.part : [])),
  };
}

const measure = 'Measure :value[float-level].';

describe('who lifts the gasket has the cover off', () => {
  test('a terse sheet that speaks of the gasket alone is not asked for the cover', () => {
    expect(walked([measure]).unmet).toEqual(['cover', 'cover-gasket']);
    expect(walked(['Lift away the cover gasket.', measure])).toEqual({
      cover: 'off by reading',
      unmet: [],
    });
    expect(walked(['Clear it. :state[gasket off]', measure])).toEqual({
      cover: 'off by mark',
      unmet: [],
    });
  });

  test('a cover that is turned over stays so', () => {
    const steps = ['Turn it over. :state[cover inverted]', 'Lift away the cover gasket.', measure];
    expect(walked(steps, 'inverted')).toEqual({ cover: 'inverted by mark', unmet: [] });
    const marked = [steps[0] ?? '', 'Clear it. :state[gasket off]', measure];
    expect(walked(marked, 'inverted')).toEqual({ cover: 'inverted by mark', unmet: [] });
  });

  test('a cover off by a mark stays as sure; one off by words is made sure by a mark', () => {
    const lift = 'Lift away the cover gasket.';
    expect(walked(['Part them. :state[cover off]', lift, measure]).cover).toBe('off by mark');
    const clear = 'Clear it. :state[gasket off]';
    expect(walked(['Take off the cover.', clear, measure]).cover).toBe('off by mark');
  });

  test('a cover that the sheet turns over still has to be turned over', () => {
    expect(walked(['Lift away the cover gasket.', measure], 'inverted').unmet).toEqual(['cover']);
  });
});
