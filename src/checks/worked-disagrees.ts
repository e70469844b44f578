import {
  explainedByUnstated,
  inWordsOf,
  joined,
  type OtherWay,
  otherWay,
  suspectsOf,
  toldInputs,
  type Verdict,
  workedNumbers,
} from '../relations/index.ts';
import { isBlank } from './blank.ts';
import { defineCheck } from './define.ts';
import { likelyNames } from './likely-names.ts';
import { type Root, relationRoots } from './relation-roots.ts';
import { dimensionNoun } from './stated-sizes.ts';

/** A stated figure that the others on the sheet do not come to. */
export default defineCheck({
  id: 'worked-disagrees',
  severity: 'error',
  group: 'sizes',
  depth: 2,
  summary: 'A figure is not what the other figures of the sheet come to.',
  explain:
    'Turns and travel, gap and angle, dwell in degrees and in percent: a sheet that states both states ' +
    'one too many, and so proves itself. Where they part, one of the figures is a misprint. Every figure ' +
    'counts as all that it may be a rounding of; where those stretches have nothing in common, no ' +
    'rounding explains it. Figures that only rounding can bring together are a warning: accept it where ' +
    'the source prints both. `gaugeleaf work` shows each formula with its assumptions; the whole table is ' +
    'in docs/relations.md. Where a size of the unit that nobody stated would explain it, such as the ' +
    'thickness of a throttle plate, it is a note that says so.',
  messages: {
    apart: {
      message: '{told}, but `{key}` says {stated} ({difference})',
      fix: '{fix}',
    },
    limits: {
      message:
        'the limits of {first} bring the {side} limit to {worked}, but of `{key}` {stated} it is {difference}',
      fix: '{fix}',
    },
    beyond: {
      message: '{told} at {bound}, and `{key}` says {stated} ({difference})',
      fix: '{fix}',
    },
    unstated: {
      message:
        '{told}, but `{key}` says {stated} ({difference}), which `{unstated}` of {least} to {most} explains',
      fix: 'state `{unstated}` under `unit:`, if the source gives it or you can measure it: the sheet then proves both figures',
      suggest: [{ under: ['unit', '{unstated}'], as: null }],
    },
    unread: {
      message: '`{key}` says {stated}, which is not read as {noun}',
      fix: 'write it as a size, with its unit',
    },
  },
  run(sheet, context, report) {
    const numbers = workedNumbers(sheet, context);
    const { unread } = numbers;
    for (const { place, dimension, of } of unread) {
      if (!place.span || place.text === null || isBlank(place.text)) continue;
      const values = { key: place.key, stated: place.text, noun: dimensionNoun(dimension) };
      report({ message: 'unread', span: place.span, values, subject: of });
    }
    for (const { verdict, further, slips } of relationRoots(numbers, sheet, context)) {
      const { disparity, place, proof, told } = verdict;
      if (!disparity || !place.span) continue;
      const { worked, stated, difference, side } = disparity;
      const inputs = toldInputs(proof);
      const unstated = explainedByUnstated(
        numbers,
        [verdict, ...further],
        sheet.kind?.usualOfUnit ?? new Map(),
        context.gauges,
      );
      if (unstated) {
        const { key, range } = unstated;
        const shown = { told, key: place.key, worked, stated, difference, unstated: key };
        report({
          message: 'unstated',
          span: place.span,
          severity: 'note',
          values: { ...shown, least: range.low.text, most: range.high.text },
          compared: [worked, stated],
          subject: subjectOf(verdict),
        });
        continue;
      }
      const kinds = { loose: 'apart', apart: 'apart', limits: 'limits', beyond: 'beyond' } as const;
      report({
        message: kinds[disparity.kind],
        span: place.span,
        severity: disparity.kind === 'loose' ? 'warning' : 'error',
        values: {
          told,
          key: place.key,
          worked,
          stated,
          difference,
          side,
          first: inputs.limited,
          inputs: joined(inputs.labels, 'or'),
          bound: proof.solution.hold === 'at-most' ? 'most' : 'least',
          fix: remedy(
            verdict,
            slips,
            otherWay(numbers, verdict, context.gauges),
            likelyNames([verdict, ...further], numbers, sheet, context),
          ),
        },
        compared: [worked, stated],
        suggest: () =>
          disparity.kind === 'limits' || disparity.kind === 'beyond' ? [] : [{ write: worked }],
        related: [
          ...inputs.places,
          ...further.flatMap(({ place: { span, key }, told: words }) =>
            span ? [{ span, label: `and so: ${words}, and not what \`${key}\` says` }] : [],
          ),
        ],
        suspects: suspectsOf(verdict).flatMap(({ place: { span } }) => span ?? []),
        subject: subjectOf(verdict),
      });
    }
  },
  examples: [
    {
      name: 'two digits swapped in the travel of a needle',
      sheet: {
        front:
          'unit:\n  kind: carburetor\n  maker: Orlo\n  model: F27\n  features: [single-barrel, downdraft, pump]\n  idle-needle-thread: 10-32 UNF',
        settings: 'idle-mixture: { value: 1-1/4 turns out, travel: 0.093 in, from: m48 p. 40 }',
      },
      expect: [
        {
          at: '0.093 in',
          message:
            '1-1/4 turns of 10-32 UNF is 0.0391 in, but `travel` says 0.093 in (0.054 in more)',
          fix: '0.039 in, if two digits were swapped; otherwise correct the turns or the thread',
        },
      ],
    },
    {
      name: 'turns and travel that no one slip explains',
      sheet: {
        front:
          'unit:\n  kind: carburetor\n  maker: Orlo\n  model: F27\n  features: [single-barrel, downdraft, pump]\n  stop-screw-thread: 2 BA',
        settings:
          'idle-stop: { value: 1-1/2 turns in after contact, travel: 2 mm, from: m48 p. 40 }',
      },
      expect: [
        {
          at: '2 mm',
          message: '1-1/2 turns of 2 BA is 1.215 mm, but `travel` says 2 mm (0.79 mm more)',
          fix: '2-1/2 turns in after contact for the turns, if one digit is wrong; or 0 BA for the thread, if the wrong one was taken',
        },
      ],
    },
    {
      name: 'a gap that the thickness of an ordinary plate explains',
      sheet: {
        front:
          'unit:\n  kind: carburetor\n  maker: Orlo\n  model: F27\n  features: [single-barrel, downdraft]\n  throttle-bore: 36 mm\n  throttle-closed-angle: 10°',
        settings:
          'idle-stop: { value: 1 turn in after contact, gap: 0.67 mm, angle: 20°, from: m48 p. 40 }',
      },
      expect: [
        {
          at: '0.67 mm',
          severity: 'note',
          message:
            'throttle angle 20°, closed angle 10° and throttle bore 36 mm (a thin plate) come to 0.733 mm to 0.918 mm, but `gap` says 0.67 mm (0.06 mm less), which `throttle-plate-thickness` of 0.8 mm to 2.5 mm explains',
          fix: 'state `throttle-plate-thickness` under `unit:`, if the source gives it or you can measure it: the sheet then proves both figures',
        },
      ],
    },
    {
      name: 'a plate whose thickness is stated',
      sheet: {
        front:
          'unit:\n  kind: carburetor\n  maker: Orlo\n  model: F27\n  features: [single-barrel, downdraft]\n  throttle-bore: 36 mm\n  throttle-closed-angle: 10°\n  throttle-plate-thickness: 1.5 mm',
        settings:
          'idle-stop: { value: 1 turn in after contact, gap: 0.692 mm, angle: 20°, from: m48 p. 40 }',
      },
      expect: [],
    },
    {
      name: 'flats of a jet nut',
      sheet: {
        front:
          'unit:\n  kind: carburetor\n  maker: Orlo\n  model: F27\n  features: [single-barrel, side-draft, constant-depression, adjustable-jet]\n  jet-nut-thread: 1/4 BSF',
        settings: 'jet-height: { value: 9 flats down, travel: 1.628 mm, from: m48 p. 40 }',
      },
      expect: [
        {
          at: '1.628 mm',
          message: '9 flats of 1/4 BSF is 1.465 mm, but `travel` says 1.628 mm (0.16 mm more)',
          fix: 'write 1.465 mm, or correct the turns or the thread',
        },
      ],
    },
    {
      name: 'a screw that names its own thread',
      sheet: {
        settings:
          'dashpot: { value: 3 turns in, thread: 8-32 UNC, travel: 0.0983 in, from: m48 p. 41 }',
      },
      expect: [
        {
          at: '0.0983 in',
          message: '3 turns of 8-32 UNC is 0.0938 in, but `travel` says 0.0983 in (0.005 in more)',
          fix: '0.0938 in, if two digits were swapped; otherwise correct the turns or the thread',
        },
      ],
    },
    {
      name: 'travel to the places it is stated in',
      sheet: {
        front:
          'unit:\n  kind: carburetor\n  maker: Orlo\n  model: F27\n  features: [single-barrel, downdraft, pump]\n  idle-needle-thread: 10-32 UNF',
        settings: 'idle-mixture: { value: 1-1/4 turns out, travel: 0.039 in, from: m48 p. 40 }',
      },
      expect: [],
    },
    {
      name: 'no thread is named, so nothing can be proved',
      sheet: {
        settings: 'idle-mixture: { value: 1-1/4 turns out, travel: 0.093 in, from: m48 p. 40 }',
      },
      expect: [],
    },
    {
      name: 'two digits swapped in a dwell in percent',
      sheet: fourLobes(
        'dwell: { value: 54 ± 3°, from: m48 }\n  dwell-percent: { value: 06 %, from: m48 }',
      ),
      expect: [
        {
          at: '06 %',
          message:
            '54 ± 3° of the 90° between 4 lobes is 60%, but `dwell-percent` says 06 % (54% less)',
          fix: '60 %, if two digits were swapped; otherwise correct the dwell or the number of lobes',
        },
      ],
    },
    {
      name: 'a dwell of six lobes on a sheet that says four',
      sheet: fourLobes(
        'dwell: { value: 39°, from: m48 }\n  dwell-percent: { value: 65 %, from: m48 }',
      ),
      expect: [
        {
          at: '65 %',
          message:
            '39° of the 90° between 4 lobes is 43.3%, but `dwell-percent` says 65 % (22% more)',
          fix: '`six-lobe` among the features, if the wrong one was taken; otherwise write 43.3% for `dwell-percent`',
        },
      ],
    },
    {
      name: 'limits that do not follow from the limits of the dwell',
      sheet: fourLobes(
        'dwell: { value: 54 ± 3°, from: m48 }\n  dwell-percent: { value: 55–65 %, from: m48 }',
      ),
      expect: [
        {
          at: '55–65 %',
          message:
            'the limits of 54 ± 3° bring the lower limit to 57%, but of `dwell-percent` 55–65 % it is 55%',
          fix: 'correct the limits of one of the two',
        },
      ],
    },
    {
      name: 'figures that only rounding can bring together',
      sheet: fourLobes(
        'dwell: { value: 55°, from: m48 }\n  dwell-percent: { value: 61.6 %, from: m48 }',
      ),
      expect: [
        {
          at: '61.6 %',
          severity: 'warning',
          message:
            '55° of the 90° between 4 lobes is 61.1%, but `dwell-percent` says 61.6 % (0.5% more)',
          fix: '61.1 %, if one digit is wrong; otherwise correct the dwell or the number of lobes',
        },
      ],
    },
    {
      name: 'lobes too far apart for their number',
      sheet: fourLobes('lobe-spacing: { value: 60 ± 1°, from: m48 }'),
      expect: [
        {
          at: '60 ± 1°',
          message: '4 lobes stand 90° apart, but `lobe-spacing` says 60 ± 1° (30° less)',
          fix: '90 ± 1° for `lobe-spacing`, if it was read upside down; or `six-lobe` among the features, if the wrong one was taken',
        },
      ],
    },
    {
      name: 'a dwell, its share, its limits rounded inward, and the spacing of four lobes',
      sheet: fourLobes(
        'dwell: { value: 54 ± 3°, from: m48 }\n  dwell-percent: { value: 56.7–63.3 %, from: m48 }\n  lobe-spacing: { value: 90 ± 1°, from: m48 }',
      ),
      expect: [],
    },
    {
      name: 'a share rounded to the place it is stated in',
      sheet: fourLobes(
        'dwell: { value: 60°, from: m48 }\n  dwell-percent: { value: 66.7 %, from: m48 }',
      ),
      expect: [],
    },
    {
      name: 'one wrong digit at the crank',
      sheet: withAdvance('value: 14° distributor, crank: 38°, speed: 1600 rpm'),
      expect: [
        {
          at: '38°',
          message: '14° distributor is 28° at the crank, but `crank` says 38° (10° more)',
          fix: '28° for `crank`, if one digit is wrong; or 19° distributor for the figure at the shaft, if one digit is wrong',
        },
      ],
    },
    {
      name: 'limits that were not doubled',
      sheet: withAdvance('value: 14 ± 1° distributor, crank: 28 ± 1°, speed: 1600 rpm'),
      expect: [
        {
          at: '28 ± 1°',
          message:
            'the limits of 14 ± 1° distributor bring the lower limit to 26°, but of `crank` 28 ± 1° it is 27°',
          fix: 'correct the limits of one of the two',
        },
      ],
    },
    {
      name: 'a crank figure that only rounding can bring together',
      sheet: withAdvance('value: 14° distributor, crank: 27.5°, speed: 1600 rpm'),
      expect: [
        {
          at: '27.5°',
          severity: 'warning',
          message: '14° distributor is 28.0° at the crank, but `crank` says 27.5° (0.5° less)',
          fix: 'write 28.0°, or correct the figure at the shaft',
        },
      ],
    },
    {
      name: 'a speed of the crank that is no double',
      sheet: withAdvance(
        'value: 14° distributor, crank: 28°, speed: 1600 rpm, crank-speed: 2300 rpm',
      ),
      expect: [
        {
          at: '2300 rpm',
          message:
            '1600 rpm is 3200 rpm at the crank, but `crank-speed` says 2300 rpm (900 rpm less)',
          fix: '3200 rpm, if two digits were swapped; otherwise correct the figure at the shaft',
        },
      ],
    },
    {
      name: 'more delivered than the pump displaces',
      sheet: {
        front:
          'unit:\n  kind: carburetor\n  maker: Orlo\n  model: F27\n  features: [single-barrel, downdraft, pump]\n  pump-bore: 1/2 in',
        settings:
          'pump-stroke: { value: 3/8 in, link: middle hole, from: m48 p. 34 }\npump-delivery: { value: 14 ± 2 cm3 per 10 strokes, from: m48 p. 34 }',
      },
      expect: [
        {
          at: '14 ± 2 cm3 per 10 strokes',
          message:
            'the plunger displaces 12.1 cm3 per 10 strokes at most, and `pump-delivery` says 14 ± 2 cm3 per 10 strokes (4 cm3 per 10 strokes more)',
          fix: 'correct the bore of the pump or the stroke of the plunger or `pump-delivery`',
        },
      ],
    },
    {
      name: 'a delivery that the pump can just displace',
      sheet: {
        front:
          'unit:\n  kind: carburetor\n  maker: Orlo\n  model: F27\n  features: [single-barrel, downdraft, pump]\n  pump-bore: 1/2 in',
        settings:
          'pump-stroke: { value: 3/8 in, link: middle hole, from: m48 p. 34 }\npump-delivery: { value: 10 ± 2 cm3 per 10 strokes, from: m48 p. 34 }',
      },
      expect: [],
    },
    {
      name: 'a figure without its unit',
      sheet: withAdvance('value: 14° distributor, crank: 28, speed: 1600 rpm'),
      expect: [
        {
          at: '28',
          message: '`crank` says 28, which is not read as an angle',
          fix: 'write it as a size, with its unit',
        },
      ],
    },
    {
      name: 'twice as many, limits and speed too',
      sheet: withAdvance(
        'value: 14 ± 1° distributor, crank: 28 ± 2°, speed: 1600 rpm, crank-speed: 3200 rpm',
      ),
      expect: [],
    },
    {
      name: 'a vacuum taken at sea level, in words',
      sheet: {
        settings: 'idle-vacuum: { value: 18 inHg, altitude: Sea level, from: m48 p. 40 }',
      },
      expect: [],
    },
    {
      name: 'only the crank is spoken of',
      sheet: withAdvance('value: 28 ± 2° crank, speed: 3200 rpm'),
      expect: [],
    },
  ],
});

/** What would mend it: the one or two likeliest slips, or the figure that the others come to. */
function remedy(
  { disparity, place, proof }: Verdict,
  slips: Root['slips'],
  back: OtherWay | null,
  names: readonly string[],
): string {
  const labels = joined(toldInputs(proof).labels, 'or');
  const [first, second] = slips;
  const own = `\`${place.key}\``;
  const ifSo = ({ slip, of }: NonNullable<typeof first>, isPlain: boolean): string =>
    `${slip.suggestion}${isPlain ? '' : ` for ${of.label}`}, if ${slip.because}`;
  const [name] = names;
  if (!first && name && disparity)
    return `${name}, if the wrong one was taken; otherwise write ${disparity.worked} for ${own}`;
  if (first && name) return `${ifSo(first, false)}; or ${name}, if the wrong one was taken`;
  if (!first) {
    if (disparity?.kind === 'limits') return 'correct the limits of one of the two';
    if (disparity?.kind === 'beyond') return `correct ${labels} or ${own}`;
    if (back && disparity?.kind === 'apart' && place.statement)
      return `write ${inWordsOf(place.statement, disparity.worked)} for ${own}, or ${back.text} for ${back.of.label}`;
    return `write ${disparity?.worked}${labels && `, or correct ${labels}`}`;
  }
  if (second) return `${ifSo(first, false)}; or ${ifSo(second, false)}`;
  const isOwn = first.of.place === place;
  const rest =
    isOwn || disparity?.kind !== 'apart'
      ? `correct ${isOwn ? labels || own : own}`
      : `write ${back && place.statement ? inWordsOf(place.statement, disparity.worked) : disparity.worked} for ${own}`;
  return `${ifSo(first, isOwn)}; otherwise ${rest}`;
}

function subjectOf({ place, proof }: Verdict): string {
  return place.setting?.id ?? proof.instance.binding.of;
}

/** Settings of a four-lobe unit, as an example's whole front matter has them. */
function fourLobes(settings: string): { readonly front: string } {
  return {
    front: `unit: { kind: ignition-distributor, maker: Orlo, model: K14, features: [four-lobe, single-points] }\nsettings:\n  ${settings}`,
  };
}

/** A unit with an advance, as an example's whole front matter has it. */
function withAdvance(said: string): { readonly front: string } {
  return {
    front: `unit: { kind: ignition-distributor, maker: Orlo, model: K14, features: [four-lobe, single-points, centrifugal-advance] }\nsettings:\n  advance-maximum: { ${said}, from: m48 }`,
  };
}
