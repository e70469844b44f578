import { joined, toldInputs, type WorkedFigure, workedNumbers } from '../relations/index.ts';
import { defineCheck } from './define.ts';

/** A figure that follows from what the sheet states, and would prove it. */
export default defineCheck({
  id: 'worked-missing',
  severity: 'note',
  group: 'sizes',
  summary: 'A figure follows from those on the sheet, and is not stated.',
  explain:
    'All but one of the figures of a formula are on the sheet, so the last can be worked. Where a ' +
    'source has it too, the two prove one another, and a misprint in any of them is found. Nothing is ' +
    'wrong without it. A worked figure is no source: card and booklet print it as worked. Only figures ' +
    'that follow from what this sheet itself states are offered. Accept it where no source has the ' +
    'figure.',
  messages: {
    key: {
      message: '{told}, and `{key}` is not stated',
      fix: 'look whether the source gives `{key}`: with it the sheet proves {inputs}',
    },
  },
  run(sheet, context, report) {
    const told = new Set<string>();
    for (const figure of workedNumbers(sheet, context).figures) {
      const { place, derived, of } = figure;
      if (!place || !isAsked(figure) || told.has(place.id)) continue;
      const { places, labels } = toldInputs(derived);
      const [first, ...others] = places;
      if (!first) continue;
      told.add(place.id);
      report({
        message: 'key',
        span: first.span,
        values: {
          told: figure.told,
          key: place.key,
          inputs: joined(labels, 'and'),
        },
        suggest: () => [{ say: place.key, as: null }],
        related: others,
        subject: of,
      });
    }
  },
  examples: [
    {
      name: 'turns on a known thread, and no travel',
      sheet: {
        front:
          'unit:\n  kind: carburetor\n  maker: Orlo\n  model: F27\n  features: [single-barrel, downdraft, pump]\n  idle-needle-thread: 10-32 UNF',
        settings: 'idle-mixture: { value: 1-1/4 ± 1/4 turns out, from: m48 p. 40 }',
      },
      expect: [
        {
          at: '1-1/4 ± 1/4 turns out',
          message:
            '1-1/4 turns of 10-32 UNF is 0.0391 in (0.0313–0.0468 in), and `travel` is not stated',
          fix: 'look whether the source gives `travel`: with it the sheet proves the turns and the thread',
        },
      ],
    },
    {
      name: 'a travel that is stated',
      sheet: {
        front:
          'unit:\n  kind: carburetor\n  maker: Orlo\n  model: F27\n  features: [single-barrel, downdraft, pump]\n  idle-needle-thread: 10-32 UNF',
        settings: 'idle-mixture: { value: 1-1/4 turns out, travel: 0.039 in, from: m48 p. 40 }',
      },
      expect: [],
    },
    {
      name: 'a thread that nobody names',
      sheet: { settings: 'idle-mixture: { value: 1-1/4 turns out, from: m48 p. 40 }' },
      expect: [],
    },
    {
      name: 'a spacing that the number of lobes says by itself',
      sheet: {
        front:
          'unit: { kind: ignition-distributor, maker: Orlo, model: K14, features: [four-lobe, single-points] }\nsettings:\n  points-gap: { value: 0.015 in, from: m48 }',
      },
      expect: [],
    },
  ],
});

/**
 * Whether a note asks for a figure: one of the sheet's own settings or sizes gives it, everything it
 * comes of stands on the sheet, the kind does not keep silent about it, and there is a setting or a
 * size of the unit to say it at.
 */
function isAsked({ place, derived }: WorkedFigure): boolean {
  const { instance, inputs, solution } = derived;
  // A key beside a setting cannot say a figure for each barrel.
  if (!place || instance.at !== null) return false;
  if (instance.binding.silent.includes(solution.for)) return false;
  const { bound } = place;
  const isPlace = bound.is === 'unit' || (bound.is === 'setting' && !(bound.key && !place.setting));
  const isOnSheet = inputs.every(({ from, place: stated }) => from === 'stated' && stated?.span);
  return isPlace && isOnSheet && inputs.some(({ place: stated }) => stated?.bound.is === 'setting');
}
