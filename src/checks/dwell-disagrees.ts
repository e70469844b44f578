import { exactText, rational, writeIn } from '../quantity/index.ts';
import type { Rational, Statement } from '../quantity/model.ts';
import type { PlacedSize, Setting, Sheet } from '../sheet/model.ts';
import { type CheckContext, defineCheck } from './define.ts';
import { lobeSpacing, lobesOf, percentPerDegree } from './lobes.ts';
import { readOf, sizesOfSetting } from './stated-sizes.ts';
import { kindOf } from './vocabulary.ts';
import { type Disparity, disparity, workedFrom } from './worked-size.ts';

/** Dwell, dwell in percent and the number of lobes that do not go together. */
export default defineCheck({
  id: 'dwell-disagrees',
  severity: 'error',
  group: 'sizes',
  summary: 'Dwell, dwell in percent and the number of lobes do not go together.',
  explain:
    'Lobes stand 360° over their number apart, and dwell in percent is the dwell over that spacing. ' +
    'A sheet that states both proves itself; where they part, one is a misprint, or the dwell is in ' +
    'degrees of the crank, or the number of lobes is wrong. A dwell as long as the spacing never lets ' +
    'the points open. Figures that only rounding can bring together are a warning: accept it where ' +
    'the source prints both.',
  messages: {
    apart: {
      message:
        '{dwell} of the {spacing} between {lobes} lobes is {worked}, but `{key}` says {percent} ({difference})',
      fix: '{fix}',
    },
    limits: {
      message:
        'the {side} limit of {dwell} comes to {worked} of the {spacing} between {lobes} lobes, but of `{key}` {percent} it is {difference}',
      fix: 'correct the limits of one of the two',
    },
    'always closed': {
      message:
        '{dwell} of dwell leaves no time for the points to open: {lobes} lobes stand {spacing} apart',
      fix: 'look in the source for the dwell in degrees of the distributor, and count the lobes',
    },
    spacing: {
      message: '{lobes} lobes stand {spacing} apart, but `{key}` says {stated} ({difference})',
      fix: '{fix}',
    },
  },
  run(sheet, context, report) {
    const kind = kindOf(sheet, context);
    const lobed = kind && lobesOf(sheet, kind);
    if (!kind || !lobed) return;
    const { count, feature } = lobed;
    const spacing = lobeSpacing(count);
    const said = { lobes: String(count), spacing: writeAngle(spacing) };
    const lobes = { span: feature.span, label: 'the number of lobes' };

    for (const { angle, percent } of kind.relations.dwell) {
      const dwell = stated(sheet, angle);
      const share = percent === null ? null : stated(sheet, percent);
      for (const [one, all] of [
        [dwell, spacing],
        [share, rational(100)],
      ] as const) {
        if (!one || !isAlwaysClosed(one.statement, all)) continue;
        report({
          message: 'always closed',
          span: one.size.span,
          values: { ...said, dwell: one.size.text },
          related: [lobes],
          subject: one.subject,
        });
      }
      if (!dwell || !share) continue;
      const worked = workedFrom(dwell.statement, percentPerDegree(count), 'percent', 'percent');
      const found = disparity(worked, share.statement, context.gauges);
      if (!found) continue;
      report({
        message: found.kind === 'limits' ? 'limits' : 'apart',
        span: share.size.span,
        severity: severityOf(found),
        values: {
          ...said,
          dwell: dwell.size.text,
          worked: found.worked,
          key: share.setting.name.value,
          percent: found.stated,
          difference: found.difference,
          side: found.side,
          fix: remedy(found, 'correct the dwell or the number of lobes'),
        },
        compared: [found.worked, found.stated],
        related: [{ span: dwell.size.span, label: 'the dwell' }, lobes],
        subject: share.subject,
      });
    }

    const interval = kind.relations.spacing === null ? null : stated(sheet, kind.relations.spacing);
    const found = interval && spacingDisparity(spacing, interval.statement, context);
    if (!interval || !found) return;
    report({
      message: 'spacing',
      span: interval.size.span,
      severity: severityOf(found),
      values: {
        ...said,
        key: interval.setting.name.value,
        stated: found.stated,
        difference: found.difference,
        fix: remedy(found, 'count the lobes'),
      },
      compared: [said.spacing, found.stated],
      related: [lobes],
      subject: interval.subject,
    });
  },
  examples: [
    {
      name: 'two digits swapped',
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
          fix: 'write 43.3%, or correct the dwell or the number of lobes',
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
            'the lower limit of 54 ± 3° comes to 57% of the 90° between 4 lobes, but of `dwell-percent` 55–65 % it is 55%',
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
      name: 'a dwell in degrees of the crank',
      sheet: fourLobes('dwell: { value: 108°, from: m48 }'),
      expect: [
        {
          at: '108°',
          message: '108° of dwell leaves no time for the points to open: 4 lobes stand 90° apart',
          fix: 'look in the source for the dwell in degrees of the distributor, and count the lobes',
        },
      ],
    },
    {
      name: 'a dwell exactly as long as the way from lobe to lobe',
      sheet: fourLobes('dwell: { value: 90°, from: m48 }'),
      expect: [
        {
          at: '90°',
          message: '90° of dwell leaves no time for the points to open: 4 lobes stand 90° apart',
          fix: 'look in the source for the dwell in degrees of the distributor, and count the lobes',
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
          fix: '90°, if one digit is wrong; otherwise count the lobes',
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
  ],
});

/** Settings of a four-lobe unit, as an example's whole front matter has them. */
function fourLobes(settings: string): { readonly front: string } {
  return {
    front: `unit: { kind: ignition-distributor, maker: Orlo, model: K1, features: [four-lobe, single-points] }\nsettings:\n  ${settings}`,
  };
}

interface Stated {
  readonly setting: Setting;
  readonly size: PlacedSize;
  readonly statement: Statement;
  readonly subject: string;
}

/** The first size of a setting that is read; null where the sheet states none. */
function stated(sheet: Sheet, name: string): Stated | null {
  for (const setting of sheet.settings.values()) {
    if (setting.canonical !== name) continue;
    for (const { size, role, subject } of sizesOfSetting(setting)) {
      const statement = readOf(size);
      const isOwn = role === 'value' || role === 'also' || role === 'place';
      if (isOwn && statement && statement.condition === null)
        return { setting, size, statement, subject };
    }
  }
  return null;
}

/** Whether the points of such a dwell would be closed all the way from one lobe to the next. */
function isAlwaysClosed({ nominal, high, low }: Statement, whole: Rational): boolean {
  const most = high?.base ?? nominal?.base ?? low?.base;
  return most !== undefined && most.compare(whole) >= 0;
}

function spacingDisparity(
  spacing: Rational,
  statement: Statement,
  context: CheckContext,
): Disparity | null {
  const { nominal, low, high } = statement;
  const model = nominal ?? low?.amount ?? high?.amount;
  if (!model) return null;
  const exact = {
    ...model,
    base: spacing,
    could: { low: spacing, high: spacing },
    number: spacing,
    places: null,
    style: 'fraction',
    gauge: null,
  } as const;
  const worked: Statement = { ...statement, form: 'exact', nominal: exact, low: null, high: null };
  return disparity(worked, statement, context.gauges);
}

function severityOf({ kind }: Disparity): 'error' | 'warning' {
  return kind === 'loose' ? 'warning' : 'error';
}

function remedy({ slip, worked }: Disparity, otherwise: string): string {
  return slip ? `${slip}; otherwise ${otherwise}` : `write ${worked}, or ${otherwise}`;
}

function writeAngle(degrees: Rational): string {
  return degrees.d === 1n ? `${exactText(degrees)}°` : writeIn(degrees, 'angle', 'deg', 2);
}
