import { describe, expect, test } from 'vitest';
import { typesetFormula } from '../../../src/press/lettering/formula.ts';
import { relations } from '../../../src/relations/formulas/list.ts';

/** What is written in it, without signs that only order it. */
function written(html: string): string {
  return html
    .replace(/<[^>]*>/g, '')
    .replaceAll('&#160;', '')
    .replace(/[\s()/[\]÷]/g, '');
}

describe('a formula', () => {
  test.each([
    [
      'gap = D/2',
      '<math displaystyle="true"><mtext>gap</mtext><mo stretchy="false">=</mo><mfrac><mrow><mi mathvariant="normal">D</mi></mrow><mrow><mn>2</mn></mrow></mfrac></math>',
    ],
    [
      's = 360° / n, n of the cam',
      '<math displaystyle="true"><mi mathvariant="normal">s</mi><mo stretchy="false">=</mo><mfrac><mrow><mn>360°</mn></mrow><mrow><mi mathvariant="normal">n</mi></mrow></mfrac></math>, <span class="said">n of the cam</span>',
    ],
  ])('%s', (line, html) => {
    expect(typesetFormula(line)).toBe(html);
  });

  test.each([
    ['A = √(4A ÷ π)', '<mo stretchy="false">/</mo><mi mathvariant="normal">π</mi></mrow></msqrt>'],
    ['A = π ÷ 4', '<mfrac><mrow><mi mathvariant="normal">π</mi></mrow>'],
    ['p ≤ p max', '<msub><mi mathvariant="normal">p</mi><mtext>max</mtext></msub>'],
    [
      'A = π d₀²/4',
      '<msubsup><mi mathvariant="normal">d</mi><mn>0</mn><mrow><mn>2</mn></mrow></msubsup>',
    ],
    ['x = (1 − a)^5.25', '</mrow><mrow><mn>5.25</mn></mrow></msup>'],
    ['crank speed = 2 × shaft speed', '<mtext>shaft speed</mtext>'],
    ['volume = strokes × delivery in a stroke', '<mtext>delivery in a stroke</mtext>'],
  ])('%s has %s', (line, part) => {
    expect(typesetFormula(line)).toContain(part);
  });

  test('of the program is set as one, and keeps every letter and figure in its order', () => {
    for (const { formula, id } of relations) {
      const html = typesetFormula(formula);
      expect(html, id).toContain('<math');
      const plain = formula
        .replace(/[₀-₉]/g, (one) => String('₀₁₂₃₄₅₆₇₈₉'.indexOf(one)))
        .replaceAll('²', '2')
        .replaceAll('½', '12')
        .replaceAll('∝', 'variesas')
        .replace(/[\s()/[\]÷√^]/g, '');
      expect(written(html), id).toBe(plain);
    }
  });

  test.each(['a = <b>', 'x = (1', '= = =', 'p = @'])('%s stays the line that it is', (line) => {
    expect(typesetFormula(line)).not.toContain('<math');
    expect(typesetFormula(line)).not.toContain('<b>');
  });
});
