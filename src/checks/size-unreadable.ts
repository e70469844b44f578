import type { SizeProblem } from '../quantity/model.ts';
import { defineCheck } from './define.ts';
import { statedSizes } from './stated-sizes.ts';

/** Problems that have a check of their own. */
const ELSEWHERE: ReadonlySet<SizeProblem['code']> = new Set([
  'bare-number',
  'no-unit',
  'no-such-gauge',
  'limits-inverted',
]);

/** A size that the notation cannot read. */
export default defineCheck({
  id: 'size-unreadable',
  severity: 'error',
  group: 'sizes',
  summary: 'A size is written in a way that cannot be read.',
  explain:
    'What cannot be read cannot be proved, converted or compared, and a reader of the card will ' +
    'stumble over it as well. Write it in one of the ways that the notation knows; remarks go under `note`.',
  messages: {
    unreadable: { message: '{problem}', fix: '{fix}' },
    unmended: { message: '{problem}', fix: null },
  },
  run(sheet, _context, report) {
    for (const { size, subject } of statedSizes(sheet)) {
      if (size.reading.ok || ELSEWHERE.has(size.reading.problem.code)) continue;
      if (size.reading.problem.code === 'empty') continue;
      const { message, fix } = size.reading.problem;
      if (fix === null)
        report({ message: 'unmended', span: size.span, values: { problem: message }, subject });
      else
        report({
          message: 'unreadable',
          span: size.span,
          values: { problem: message, fix },
          subject,
        });
    }
  },
  examples: [],
});
