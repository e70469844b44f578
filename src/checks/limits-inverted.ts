import { defineCheck } from './define.ts';
import { meant, probably } from './likely-misprint.ts';
import { unreadSizes } from './stated-sizes.ts';

/** A lower limit above the upper one. */
export default defineCheck({
  id: 'limits-inverted',
  severity: 'error',
  group: 'sizes',
  depth: 0,
  summary: 'A lower limit is above the upper one.',
  explain:
    'No part can pass. Either the two were written in the wrong order or one of the figures is wrong; ' +
    'the source decides, so nothing is turned round silently.',
  messages: {
    pair: {
      message: 'the go gauge, {go}, is not smaller than the no-go gauge, {noGo}',
      fix: 'give the smaller as `go` and the larger as `no-go`',
    },
    inverted: { message: '{problem}', fix: '{fix}' },
  },
  run(sheet, context, report) {
    for (const { size, setting, subject, problem } of unreadSizes(
      sheet,
      (code) => code === 'limits-inverted',
    )) {
      const { message, fix } = problem;
      report({
        message: 'inverted',
        span: size.span,
        suggest: () => meant(size, setting, sheet, context, problem),
        values: {
          problem: message,
          fix: probably(size, setting, sheet, context) + (fix ?? 'put the smaller first'),
        },
        subject,
      });
    }
    for (const setting of sheet.figures) {
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
        suggest: () => (one.text === two.text ? [] : [{ exchange: go.span }]),
        subject: setting.id,
      });
    }
  },
  examples: [
    {
      name: 'the larger written first',
      sheet: { settings: 'fast-idle-gap: { value: 0.022–0.018 in, from: m48 p. 34 }' },
      expect: [
        {
          at: '0.022–0.018 in',
          message:
            '0.022–0.018 in has its limits the wrong way round: the lower, 0.022, is above the upper, 0.018 in',
          fix: 'write 0.018–0.022 in, after a look in the source',
        },
      ],
    },
    {
      name: 'a go gauge larger than the no-go',
      sheet: {
        settings:
          'fast-idle-gap: { value: 0.018–0.022 in, gauge: { go: 0.022 in wire, no-go: 0.018 in wire }, from: m48 p. 34 }',
      },
      expect: [
        {
          at: '0.018 in wire',
          message:
            'the go gauge, 0.022 in wire, is not smaller than the no-go gauge, 0.018 in wire',
          fix: 'give the smaller as `go` and the larger as `no-go`',
        },
      ],
    },
    {
      name: 'a go and a no-go of one size',
      sheet: {
        settings:
          'fast-idle-gap: { value: 0.018–0.022 in, gauge: { go: 0.020 in wire, no-go: 0.020 in wire }, from: m48 p. 34 }',
      },
      expect: [
        {
          at: '0.020 in wire',
          message:
            'the go gauge, 0.020 in wire, is not smaller than the no-go gauge, 0.020 in wire',
          fix: 'give the smaller as `go` and the larger as `no-go`',
        },
      ],
    },
    {
      name: 'both ends the same is a size, not an inversion',
      sheet: { settings: 'fast-idle-gap: { value: 0.020–0.020 in, from: m48 p. 34 }' },
      expect: [],
    },
    {
      name: 'the smaller first',
      sheet: {
        settings:
          'fast-idle-gap: { value: 0.018–0.022 in, gauge: { go: 0.018 in wire, no-go: 0.022 in wire }, from: m48 p. 34 }',
      },
      expect: [],
    },
  ],
});
