import { defineCheck } from './define.ts';
import { disagreement } from './disagreement.ts';
import { doubtfulPairs } from './statement-pairs.ts';

/** One setting stated twice, as two different sizes. */
export default defineCheck({
  id: 'sizes-disagree',
  severity: 'error',
  group: 'sizes',
  depth: 1,
  summary: 'One setting is stated twice, and the two are different sizes.',
  explain:
    'One of the two is a misprint, and nobody can tell from the card which. Where a single slip ' +
    'explains it (swapped digits, a slipped point, a neighboring drill, inches taken for ' +
    'millimeters), the finding says what the figure should probably have been. With three statements ' +
    'the one that stands alone is named. A difference that is still inside the limits is a warning: ' +
    'accept it where the source itself prints both.',
  messages: {
    converted: {
      message: '{first} is {firstIn}, but `{key}` says {second} ({difference}{inside})',
      fix: '{fix}',
    },
    plain: {
      message: '`{otherKey}` says {first}, but `{key}` says {second} ({difference}{inside})',
      fix: '{fix}',
    },
    limits: {
      message: 'the {side} limit of {first} is {firstIn}, but of `{key}` {second} it is {secondIn}',
      fix: '{fix}',
    },
    sense: {
      message: '`{otherKey}` says {first}, but `{key}` says {second}: {difference}',
      fix: 'look in the source which way it goes',
    },
    condition: {
      message: '`{otherKey}` says {first}, but `{key}` says {second}',
      fix: 'keep the one that the source states',
    },
  },
  run(sheet, context, report) {
    for (const setting of sheet.figures) {
      for (const pair of doubtfulPairs(setting)) {
        const { agreement } = pair;
        if (agreement.verdict !== 'disagrees' && agreement.verdict !== 'within-tolerance') continue;
        report(disagreement(setting, pair, agreement, sheet, context));
      }
    }
  },
  examples: [
    {
      name: 'a gauge and the fraction that is its near twin',
      sheet: { settings: 'unloader: { value: 9/32 in, also: [drill K], from: m48 p. 33 }' },
      expect: [
        {
          at: 'drill K',
          message: '9/32 in is 0.2813 in, but `also` says drill K, 0.2810 in (0.0003 in less)',
          fix: 'look in the source which is right: `also`, or the value, 9/32 in',
          severity: 'warning',
        },
      ],
    },
    {
      name: 'two digits swapped',
      sheet: { settings: 'unloader: { value: No. 29 drill, also: [0.163 in], from: m48 p. 33 }' },
      expect: [
        {
          at: '0.163 in',
          message: 'No. 29 drill is 0.1360 in, but `also` says 0.163 in (0.027 in more)',
          fix: '0.136 in, if two digits were swapped; otherwise correct the value, No. 29 drill',
        },
      ],
    },
    {
      name: 'a slipped point',
      sheet: { settings: 'float-drop: { value: 3/4 in, also: [1.905 mm], from: m48 p. 31 }' },
      expect: [
        {
          at: '1.905 mm',
          message: '3/4 in is 19.050 mm, but `also` says 1.905 mm (17.15 mm less)',
          fix: '19.05 mm, if the point slipped; otherwise correct the value, 3/4 in',
        },
      ],
    },
    {
      name: 'one wrong digit',
      sheet: { settings: 'float-drop: { value: 3/4 in, also: [19.06 mm], from: m48 p. 31 }' },
      expect: [
        {
          at: '19.06 mm',
          message: '3/4 in is 19.050 mm, but `also` says 19.06 mm (0.01 mm more)',
          fix: '19.05 mm, if one digit is wrong; otherwise correct the value, 3/4 in',
        },
      ],
    },
    {
      name: 'a digit left out',
      sheet: { settings: 'unloader: { value: 0.1360 in, also: [.16 in], from: m48 p. 33 }' },
      expect: [
        {
          at: '.16 in',
          message: '`value` says 0.1360 in, but `also` says .16 in (0.024 in more)',
          fix: '0.1630 in for the value, if two digits were swapped; or .136 in for `also`, if a digit was left out',
        },
      ],
    },
    {
      name: 'a digit too many',
      sheet: { settings: 'idle-speed: { value: 475 rpm, also: [4175 rpm], from: m48 p. 40 }' },
      expect: [
        {
          at: '4175 rpm',
          message: '`value` says 475 rpm, but `also` says 4175 rpm (3700 rpm more)',
          fix: '475 rpm, if a digit is too many; otherwise correct the value, 475 rpm',
        },
      ],
    },
    {
      name: 'the next drill in the index',
      sheet: { settings: 'unloader: { value: 0.1360 in, also: [No. 28 drill], from: m48 p. 33 }' },
      expect: [
        {
          at: 'No. 28 drill',
          message:
            '`value` says 0.1360 in, but `also` says No. 28 drill, 0.1405 in (0.005 in more)',
          fix: 'No. 29 drill, if the next number was taken; otherwise correct the value, 0.1360 in',
        },
      ],
    },
    {
      name: 'inches for millimeters',
      sheet: { settings: 'fast-idle-cam: { value: 0.020 in, also: [0.020 mm], from: m48 p. 33 }' },
      expect: [
        {
          at: '0.020 mm',
          message: '0.020 in is 0.508 mm, but `also` says 0.020 mm (0.49 mm less)',
          fix: '0.020 in, if the unit was mistaken; otherwise correct the value, 0.020 in',
        },
      ],
    },
    {
      name: 'a wrong numerator',
      sheet: { settings: 'float-drop: { value: 0.7188 in, also: [21/32 in], from: m48 p. 31 }' },
      expect: [
        {
          at: '21/32 in',
          message: '`value` says 0.7188 in, but `also` says 21/32 in (0.063 in less)',
          fix: '23/32 in, if the numerator is wrong; otherwise correct the value, 0.7188 in',
        },
      ],
    },
    {
      name: 'a wrong denominator',
      sheet: { settings: 'float-drop: { value: 0.4375 in, also: [7/8 in], from: m48 p. 31 }' },
      expect: [
        {
          at: '7/8 in',
          message: '`value` says 0.4375 in, but `also` says 7/8 in (0.438 in more)',
          fix: '7/16 in, if the denominator is wrong; otherwise correct the value, 0.4375 in',
        },
      ],
    },
    {
      name: 'another gauge system',
      sheet: {
        settings: 'fast-idle-gap: { value: 0.0320 in, also: [20 SWG imperial], from: m48 p. 34 }',
      },
      expect: [
        {
          at: '20 SWG imperial',
          message:
            '`value` says 0.0320 in, but `also` says 20 SWG imperial, 0.0360 in (0.004 in more)',
          fix: '21 SWG imperial for `also`, if the next number was taken; or 0.0360 in for the value, if one digit is wrong',
        },
      ],
    },
    {
      name: 'inches against millimeters, with no one slip to explain it',
      sheet: { settings: 'float-drop: { value: 19.05 mm, also: [0.253 in], from: m48 p. 31 }' },
      expect: [
        {
          at: '0.253 in',
          message: '19.05 mm is 0.7500 in, but `also` says 0.253 in (0.497 in less)',
          fix: 'look in the source which is right: write 0.750 in for `also`, or 6.43 mm for the value',
        },
      ],
    },
    {
      name: 'the value stands alone against the other two',
      sheet: {
        settings:
          'unloader: { value: No. 28 drill, also: [0.1360 in], gauge: No. 29 drill, from: m48 p. 33 }',
      },
      expect: [
        {
          at: 'No. 28 drill',
          message:
            '`gauge` says No. 29 drill, but `value` says No. 28 drill, 0.1405 in (0.005 in more)',
          fix: 'No. 29 drill, if the next number was taken; the other 2 statements agree with one another',
        },
      ],
    },
    {
      name: 'one of three stands alone',
      sheet: {
        settings: 'unloader: { value: No. 29 drill, also: [0.163 in, 3.454 mm], from: m48 p. 33 }',
      },
      expect: [
        {
          at: '0.163 in',
          message: 'No. 29 drill is 0.1360 in, but `also` says 0.163 in (0.027 in more)',
          fix: '0.136 in, if two digits were swapped; the other 2 statements agree with one another',
        },
      ],
    },
    {
      name: 'a gauge beside a value that has no limits',
      sheet: {
        settings:
          'float-level:\n  value: 13/64 in\n  at: free end of the float\n  cover: inverted\n  gasket: removed\n  from: m48 p. 31\n  gauge: 15/64 drill',
      },
      expect: [
        {
          at: '15/64 drill',
          message: '13/64 in is 0.2031 in, but `gauge` says 15/64 drill, 0.2344 in (0.031 in more)',
          fix: '13/64 drill for `gauge`, if the numerator is wrong; or 15/64 in for the value, if the numerator is wrong',
        },
      ],
    },
    {
      name: 'apart, but still inside the limits',
      sheet: {
        settings: 'float-drop: { value: 0.750 ± 0.010 in, also: [0.756 in], from: m48 p. 31 }',
      },
      expect: [
        {
          at: '0.756 in',
          message:
            '`value` says 0.750 ± 0.010 in, but `also` says 0.756 in (0.006 in more, still inside the limits)',
          fix: '0.750 in for `also`, if one digit is wrong; or 0.756 ± 0.010 in for the value, if one digit is wrong',
          severity: 'warning',
        },
      ],
    },
    {
      name: 'exactly on the limit',
      sheet: {
        settings: 'float-drop: { value: 0.750 ± 0.010 in, also: [0.760 in], from: m48 p. 31 }',
      },
      expect: [
        {
          at: '0.760 in',
          message:
            '`value` says 0.750 ± 0.010 in, but `also` says 0.760 in (0.010 in more, still inside the limits)',
          fix: '0.750 in for `also`, if one digit is wrong; or 0.760 ± 0.010 in for the value, if one digit is wrong',
          severity: 'warning',
        },
      ],
    },
    {
      name: 'past the limit',
      sheet: {
        settings: 'float-drop: { value: 0.750 ± 0.010 in, also: [0.761 in], from: m48 p. 31 }',
      },
      expect: [
        {
          at: '0.761 in',
          message: '`value` says 0.750 ± 0.010 in, but `also` says 0.761 in (0.011 in more)',
          fix: 'look in the source which is right: `also`, or the value, 0.750 ± 0.010 in',
        },
      ],
    },
    {
      name: 'the other way',
      sheet: {
        settings:
          'choke-cover-index: { value: 1 notch rich, also: [1 notch lean], from: m48 p. 33 }',
      },
      expect: [
        {
          at: '1 notch lean',
          message: '`value` says 1 notch rich, but `also` says 1 notch lean: the other way',
          fix: 'look in the source which way it goes',
        },
      ],
    },
    {
      name: 'counted from another place',
      sheet: {
        settings:
          'idle-stop: { value: 1/2 turn in after contact, also: [1/2 turn in from flush], from: m48 p. 40 }',
      },
      expect: [
        {
          at: '1/2 turn in from flush',
          message:
            '`value` says 1/2 turn in after contact, but `also` says 1/2 turn in from flush (counted from flush, not from contact)',
          fix: 'look in the source which is right: `also`, or the value, 1/2 turn in after contact',
        },
      ],
    },
    {
      name: 'another condition',
      sheet: { settings: 'metering-rods: { value: bottomed, also: [flush], from: m48 p. 32 }' },
      expect: [
        {
          at: 'flush',
          message: '`value` says bottomed, but `also` says flush',
          fix: 'keep the one that the source states',
        },
      ],
    },
    {
      name: 'the same middle and other limits',
      sheet: {
        settings:
          'float-drop: { value: 0.750 ± 0.010 in, also: [0.750 ± 0.020 in], from: m48 p. 31 }',
      },
      expect: [
        {
          at: '0.750 ± 0.020 in',
          message:
            'the lower limit of 0.750 ± 0.010 in is 0.7400 in, but of `also` 0.750 ± 0.020 in it is 0.7300 in',
          fix: '0.750 ± 0.010 in for `also`, if one digit is wrong; or 0.750 ± 0.020 in for the value, if one digit is wrong',
        },
      ],
    },
    {
      name: 'limits in another unit that are another pair',
      sheet: {
        settings:
          'float-drop: { value: 0.750 ± 0.010 in, also: [18.80–19.50 mm], from: m48 p. 31 }',
      },
      expect: [
        {
          at: '18.80–19.50 mm',
          message:
            'the upper limit of 0.750 ± 0.010 in is 19.304 mm, but of `also` 18.80–19.50 mm it is 19.500 mm',
          fix: '18.80–19.30 mm, if one digit is wrong; otherwise correct the value, 0.750 ± 0.010 in',
        },
      ],
    },
    {
      name: 'a limit on one side',
      sheet: {
        settings: 'idle-vacuum: { value: 18.5 inHg min, also: [65.62 kPa min], from: m48 p. 40 }',
      },
      expect: [
        {
          at: '65.62 kPa min',
          message: '18.5 inHg min is 62.65 kPa, but `also` says 65.62 kPa min (2.97 kPa more)',
          fix: '62.65 kPa min, if two digits changed places; otherwise correct the value, 18.5 inHg min',
        },
      ],
    },
    {
      name: 'one size in six ways, each rounded to its own places',
      sheet: {
        settings:
          'float-level:\n  value: 13/64 in\n  also: [.203 in, 0.2031 in, 5.16 mm, "5,2 mm"]\n  gauge: 13/64 drill\n  at: free end of the float\n  gasket: removed\n  from: m48 p. 31',
      },
      expect: [],
    },
    {
      name: 'limits rounded inward, and a gauge that the limits give room',
      sheet: {
        settings:
          'float-drop: { value: 0.750 ± 0.010 in, also: [18.80–19.30 mm], gauge: 19 mm drill, from: m48 p. 31 }\nfuel-pressure: { value: 1-1/2 to 2-1/2 psi, also: [10.35–17.23 kPa], from: m48 p. 21 }',
      },
      expect: [],
    },
  ],
});
