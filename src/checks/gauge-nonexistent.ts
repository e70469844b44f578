import { defineCheck } from './define.ts';
import { statedSizes } from './stated-sizes.ts';

/** A drill, wire or leaf that no maker's index has. */
export default defineCheck({
  id: 'gauge-nonexistent',
  severity: 'error',
  group: 'sizes',
  summary: 'A drill or wire is named that does not exist.',
  explain:
    'Nobody can set by it, so the name or the number is a misprint. The nearest that exist are named; ' +
    'which of them is right only the source can say.',
  messages: {
    nonexistent: { message: '{problem}', fix: '{fix}' },
  },
  run(sheet, _context, report) {
    for (const { size, subject } of statedSizes(sheet)) {
      if (size.reading.ok || size.reading.problem.code !== 'no-such-gauge') continue;
      const { message, fix } = size.reading.problem;
      report({
        message: 'nonexistent',
        span: size.span,
        values: { problem: message, fix: fix ?? 'look in the source again' },
        subject,
      });
    }
  },
  examples: [],
});
