import { curveDisputes } from '../relations/index.ts';
import { bandText, readingText } from '../sheet/index.ts';
import { defineCheck } from './define.ts';

/** A sum that its parts and tables do not come to. */
export default defineCheck({
  id: 'total-disagrees',
  severity: 'error',
  group: 'sizes',
  depth: 3,
  summary: 'A whole is not what its parts come to at the stated station.',
  explain:
    'The whole advance at a speed is the timing at rest, with what the weights and the diaphragm add there, ' +
    'twice over for the crank. Where the stated whole lies wholly outside of that, one of the figures is a ' +
    'misprint, or something that adds to it is not stated. Where a table ends before the stated station ' +
    'nothing can be said, and the station is doubtful.',
  messages: {
    apart: {
      message: '`{setting}` is {value}{at}, but its parts come to {comes}: {working}',
      fix: 'look in the source which figure is wrong, or whether a part is left out',
    },
    beyond: {
      message: '`{setting}` is {value}{at}, where nothing is known: {working}',
      fix: 'look in the source at which station it is told',
    },
  },
  run(sheet, context, report) {
    for (const { setting, size, station, is, band, curves } of curveDisputes(
      sheet,
      context.gauges,
    )) {
      if (!setting.known?.sum) continue;
      report({
        message: is === 'beyond' ? 'beyond' : 'apart',
        span: is === 'beyond' && station ? station.span : size.span,
        severity: is === 'beyond' ? 'warning' : 'error',
        values: {
          setting: setting.name.value,
          value: size.text,
          at: station ? ` at ${station.text}` : '',
          comes: band ? bandText(band, size, setting) : '',
          working: curves
            .map(({ curve, reading }) => `of \`${curve.name.value}\` ${readingText(reading)}`)
            .join(', '),
        },
        related: curves.map(({ curve }) => ({ span: curve.name.span, label: curve.name.value })),
        subject: setting.id,
      });
    }
  },
  examples: [
    {
      name: 'a whole of digits that changed places',
      sheet: whole('42 ± 2° BTDC', '2400 rpm'),
      expect: [
        {
          at: '42 ± 2° BTDC',
          message:
            '`total-advance` is 42 ± 2° BTDC at 2400 rpm, but its parts come to 22° to 26°: of `advance-curve` the row at 1200 rpm says 8 to 10°',
          fix: 'look in the source which figure is wrong, or whether a part is left out',
        },
      ],
    },
    {
      name: 'a whole that just meets its parts',
      sheet: whole('28 ± 2° BTDC', '2400 rpm'),
      expect: [],
    },
    {
      name: 'a speed past the end of the table',
      sheet: whole('24 ± 2° BTDC', '4200 rpm'),
      expect: [
        {
          at: '4200 rpm',
          severity: 'warning',
          message:
            '`total-advance` is 24 ± 2° BTDC at 4200 rpm, where nothing is known: of `advance-curve` the table ends at 2000 rpm',
          fix: 'look in the source at which station it is told',
        },
      ],
    },
  ],
});

/** A distributor of which a whole is stated. */
function whole(value: string, speed: string): { readonly front: string } {
  return {
    front: `unit: { kind: ignition-distributor, maker: Orlo, model: K14, features: [six-lobe, single-points, centrifugal-advance] }
settings:
  static-timing: { value: 6° BTDC, at: pulley mark, from: m48 }
  advance-curve:
    table:
      - { at: 400 rpm, value: 0 to 1° }
      - { at: 1200 rpm, value: 8 to 10° }
      - { at: 2000 rpm, value: 12 to 14° }
    from: m48
  total-advance: { value: ${value}, speed: ${speed}, from: m48 }`,
  };
}
