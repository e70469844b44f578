import { chordError, type Kit, LEAF_WIDTH_MM, lengthWords, ordinaryKit } from '../gauges/index.ts';
import { exactText, inUnit, isFlat } from '../quantity/index.ts';
import type { Gauge, Rational, Statement } from '../quantity/model.ts';
import { gapsOf, type SettingGap } from '../sheet/index.ts';
import type { PlacedSize, Setting } from '../sheet/model.ts';
import { defineCheck } from './define.ts';
import { readOf } from './stated-sizes.ts';

/** A flat leaf for a gap in a bore, where it reads too little. */
export default defineCheck({
  id: 'leaf-in-bore',
  severity: 'warning',
  group: 'sizes',
  summary: 'A flat leaf is named for a gap in a bore that it cannot follow.',
  explain:
    'A leaf touches the hollow wall of a bore with its two borders, so it passes only where the gap ' +
    'is larger than the leaf, by R - √(R² - w²/4) for a bore of radius R and a leaf w wide. The ' +
    'throttle then stands further open than the paper says. A wire or a drill held along the bore ' +
    'reads the gap itself. Leaves count as half an inch wide unless the club’s `kit:` says how wide ' +
    'they are. Accept it where the leaf that was used is narrow or bends to the bore.',
  messages: {
    less: {
      message:
        '{leaf}, {width} wide, reads {error} less than the gap in a bore of {bore}, and {value} leaves {room}',
      fix: 'use a wire or a drill of that size, held along the bore',
    },
    wider: {
      message: '{leaf}, {width} wide, does not go into a bore of {bore}',
      fix: 'use a wire or a drill of that size, held along the bore',
    },
  },
  run(sheet, context, report) {
    for (const setting of sheet.settings.values()) {
      for (const gap of gapsOf(setting, sheet)) {
        const { boreMm } = gap.place;
        if (boreMm === null || gap.bore === null) continue;
        for (const { size, leaf } of leavesOf(setting, gap)) {
          const widthMm = widthOf(leaf, context.kit ?? ordinaryKit());
          const error = chordError(boreMm, widthMm);
          const roomMm = roomOf(gap.statement);
          if (error !== null && error.low.compare(roomMm) <= 0) continue;
          const { unit } = leaf;
          report({
            message: error === null ? 'wider' : 'less',
            span: size.span,
            values: {
              leaf: leaf.label,
              width: widthWords(widthMm),
              bore: gap.bore.text,
              value: gap.statement.text,
              error: error === null ? '' : lengthWords(error.low, unit),
              room: roomMm.n === 0n ? 'no room' : `${lengthWords(roomMm, unit)} of room`,
            },
            related: [{ span: gap.bore.span, label: 'the bore' }],
            suggest: () => [{ write: leaf.label.replace(/leaf$/, 'wire') }],
            subject: setting.id,
          });
        }
      }
    }
  },
  examples: [
    {
      name: 'a leaf of half an inch, and two thousandths of room',
      // R = .71875 in: R - √(R² - .0625) = .0449 in.
      sheet: {
        front:
          'unit: { kind: carburetor, maker: Orlo, model: F27, features: [single-barrel, downdraft, pump], throttle-bore: 1-7/16 in }',
        settings:
          'fast-idle-gap: { value: 0.020 ± 0.001 in, gauge: 0.020 in leaf, from: m48 p. 34 }',
      },
      expect: [
        {
          at: '0.020 in leaf',
          message:
            '0.020 in leaf, 1/2 in wide, reads 0.0449 in less than the gap in a bore of 1-7/16 in, and 0.020 ± 0.001 in leaves 0.0020 in of room',
          fix: 'use a wire or a drill of that size, held along the bore',
        },
      ],
    },
    {
      name: 'a size that is itself a leaf, in a bore narrower than it',
      sheet: {
        front:
          'unit: { kind: carburetor, maker: Orlo, model: F27, features: [single-barrel, downdraft, pump], throttle-bore: 12 mm }',
        settings: 'fast-idle-gap: { value: 0.50 mm leaf, from: m48 p. 34 }',
      },
      expect: [
        {
          at: '0.50 mm leaf',
          message: '0.50 mm leaf, 1/2 in wide, does not go into a bore of 12 mm',
          fix: 'use a wire or a drill of that size, held along the bore',
        },
      ],
    },
    {
      name: 'as much room as the leaf needs, exactly',
      // R = 5/16 in: 5/16 - √(25/256 - 16/256) = 5/16 - 3/16 = 1/8 in.
      sheet: {
        front:
          'unit: { kind: carburetor, maker: Orlo, model: F27, features: [single-barrel, downdraft, pump], throttle-bore: 5/8 in }',
        settings:
          'fast-idle-gap: { value: 1/16 +1/8/-0 in, gauge: 0.0625 in leaf, from: m48 p. 34 }',
      },
      expect: [],
    },
    {
      name: 'a wire in the bore, and a leaf between faces',
      sheet: {
        front:
          'unit: { kind: carburetor, maker: Orlo, model: F27, features: [single-barrel, downdraft, pump], throttle-bore: 1-7/16 in }',
        settings:
          'fast-idle-gap: { value: 0.020 ± 0.001 in, gauge: 0.020 in wire, from: m48 p. 34 }\nbowl-vent: { value: 0.020 in, gauge: 0.020 in leaf, from: m48 p. 36 }',
      },
      expect: [],
    },
  ],
});

/** The leaves that a gap is to be measured with, each where it is named. */
function leavesOf(setting: Setting, gap: SettingGap): { size: PlacedSize; leaf: Gauge }[] {
  const named = [setting.gauge, setting.go, setting.noGo].filter((size) => size !== null);
  const places = named.length > 0 ? named : [gap.size];
  return places.flatMap((size) => {
    const leaf = readOf(size)?.nominal?.gauge ?? null;
    return leaf && isFlat(leaf.system) ? [{ size, leaf }] : [];
  });
}

/** As wide as the kit says, by its name; else as an ordinary leaf. */
function widthOf(leaf: Gauge, kit: Kit): Rational {
  const own = kit.gauges.find(({ gauge }) => isFlat(gauge.system) && gauge.mm.equals(leaf.mm));
  return own?.widthMm ?? LEAF_WIDTH_MM;
}

/** How far apart the limits are; without limits, how much the figure's own rounding leaves open. */
function roomOf({ low, high, nominal }: Statement): Rational {
  if (low && high) return high.base.sub(low.base);
  const could = nominal?.could;
  return could ? could.high.sub(could.low) : LEAF_WIDTH_MM.sub(LEAF_WIDTH_MM);
}

function widthWords(mm: Rational): string {
  const inches = inUnit(mm, 'length', 'in');
  return inches.d <= 64n ? `${inches.toFraction(true)} in` : `${exactText(mm)} mm`;
}
