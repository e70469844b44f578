import { defineCheck } from './define.ts';
import { statedSizes } from './stated-sizes.ts';

/** A lower limit above the upper one. */
export default defineCheck({
  id: 'limits-inverted',
  severity: 'error',
  group: 'sizes',
  summary: 'A lower limit is above the upper one.',
  explain:
    'No part can pass. Either the two were written in the wrong order or one of the figures is wrong; ' +
    'the source decides, so nothing is turned round silently.',
  messages: {
    inverted: { message: '{problem}', fix: '{fix}' },
    pair: {
      message: 'the go gauge, {go}, is not smaller than the no-go gauge, {noGo}',
      fix: 'give the smaller as `go` and the larger as `no-go`',
    },
  },
  run(sheet, _context, report) {
    for (const { size, subject } of statedSizes(sheet)) {
      if (size.reading.ok || size.reading.problem.code !== 'limits-inverted') continue;
      const { message, fix } = size.reading.problem;
      report({
        message: 'inverted',
        span: size.span,
        values: { problem: message, fix: fix ?? 'put the smaller first' },
        subject,
      });
    }
    for (const setting of sheet.settings.values()) {
      const { go, noGo } = setting;
      if (!go?.reading.ok || !noGo?.reading.ok) continue;
      const one = go.reading.statement;
      const two = noGo.reading.statement;
      if (!one.nominal || !two.nominal || one.dimension !== two.dimension) continue;
      if (one.nominal.base.compare(two.nominal.base) < 0) continue;
      report({
        message: 'pair',
        span: noGo.span,
        values: { go: one.text, noGo: two.text },
        compared: [one.text, two.text],
        related: [{ span: go.span, label: 'the go gauge' }],
        subject: setting.canonical ?? setting.name.value,
      });
    }
  },
  examples: [],
});
