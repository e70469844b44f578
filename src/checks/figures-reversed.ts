import { likelySlips, wireGaugeNamed } from '../quantity/index.ts';
import type { Statement } from '../quantity/model.ts';
import {
  figureOf,
  type PairOutOfOrder,
  pairsOutOfOrder,
  type StatedPlace,
  type WorkedNumbers,
  workedNumbers,
} from '../relations/index.ts';
import type { Sheet } from '../sheet/model.ts';
import { type CheckContext, defineCheck } from './define.ts';
import { goesWith, isUnitOfSheet } from './likely-misprint.ts';
import { restatedBeside } from './relation-roots.ts';
import { sideOutside } from './usual-range.ts';

/** Two figures of which physics says which is the greater, and that stand the other way round. */
export default defineCheck({
  id: 'figures-reversed',
  severity: 'error',
  group: 'sizes',
  depth: 3,
  summary: 'Of two figures the one is the greater that has to be the lesser.',
  explain:
    'A fast idle is faster than the idle, a venturi narrower than its bore, an advance part way no more ' +
    'than the most. The kind of unit says which pairs stand so, and why. Where the two are reversed they ' +
    'changed places, or one of them is a misprint. Where their limits still have room for both, or where ' +
    'the kind says that it is so on most units only, it is a warning: accept it with the reason.',
  messages: {
    two: {
      message: '{less} is {lessText} and {more} is {moreText}: {because}',
      fix: 'look in the source whether the two changed places; otherwise correct one of them',
    },
    slip: {
      message: '{less} is {lessText} and {more} is {moreText}: {because}',
      fix: '{slip}; otherwise look in the source whether the two changed places',
    },
    bound: {
      message: '{stated} is {text}: {because}',
      fix: 'look in the source for a figure of another unit, or for a misprint',
    },
  },
  run(sheet, context, report) {
    const numbers = workedNumbers(sheet, context);
    const pairs = pairsOutOfOrder(sheet, context, numbers);
    const told = new Set<number>();
    for (const pair of pairs) {
      const { order, less, more, overlaps } = pair;
      const stated = [less, more].filter(({ span }) => span !== null);
      // One figure that is out is out against all that stand beside it.
      if (stated.some(({ span }) => span && told.has(span.start))) continue;
      const at = stated.find(({ bound }) => bound.is === 'setting') ?? stated[0];
      if (!at?.span) continue;
      for (const { span } of stated) if (span) told.add(span.start);
      const isTwo = less.text !== null && more.text !== null && stated.length === 2;
      const slip = isTwo ? slipOf(pair, numbers, sheet, context) : null;
      report({
        message: !isTwo ? 'bound' : slip ? 'slip' : 'two',
        span: at.span,
        severity: overlaps || order.usually ? 'warning' : 'error',
        values: {
          less: nameOf(less),
          more: nameOf(more),
          lessText: less.text ?? '',
          moreText: more.text ?? '',
          stated: nameOf(at),
          text: at.text ?? '',
          because: order.because,
          slip: slip ?? '',
        },
        ...(isTwo ? { compared: [less.text ?? '', more.text ?? ''] as const } : {}),
        suggest: () => {
          const [one, two] = stated;
          return isTwo && one?.span && two?.span ? [{ at: one.span, exchange: two.span }] : [];
        },
        related: stated.flatMap((other) =>
          other !== at && other.span ? [{ span: other.span, label: nameOf(other) }] : [],
        ),
        suspects: stated.flatMap(({ span }) => span ?? []),
        subject: at.setting?.id ?? at.key,
      });
    }
  },
  examples: [
    {
      name: 'an idle above the fast idle',
      sheet: {
        settings:
          'idle-speed: { value: 1000 rpm, from: m48 p. 40 }\nfast-idle-speed: { value: 900 rpm, from: m48 p. 40 }',
      },
      expect: [
        {
          at: '1000 rpm',
          message:
            '`idle-speed` is 1000 rpm and `fast-idle-speed` is 900 rpm: the cam holds the throttle farther open than its stop',
          fix: 'look in the source whether the two changed places; otherwise correct one of them',
        },
      ],
    },
    {
      name: 'an idle that is just the fast idle',
      sheet: {
        settings:
          'idle-speed: { value: 900 rpm, from: m48 p. 40 }\nfast-idle-speed: { value: 900 rpm, from: m48 p. 40 }',
      },
      expect: [
        {
          at: '900 rpm',
          message:
            '`idle-speed` is 900 rpm and `fast-idle-speed` is 900 rpm: the cam holds the throttle farther open than its stop',
          fix: 'look in the source whether the two changed places; otherwise correct one of them',
        },
      ],
    },
    {
      name: 'two digits that were swapped',
      sheet: distributor(
        'advance-part: { value: 31°, of: distributor, speed: 700 rpm, from: m48 }\n  advance-maximum: { value: 15°, of: distributor, speed: 1600 rpm, from: m48 }',
      ),
      expect: [
        {
          at: '31°',
          message:
            '`advance-part` is 31° and `advance-maximum` is 15°: the weights give no more once they meet their stops',
          fix: '13° for `advance-part`, if two digits were swapped; or 51° for `advance-maximum`, if two digits were swapped; otherwise look in the source whether the two changed places',
        },
      ],
    },
    {
      name: 'a dwell that leaves six lobes too little to open in',
      sheet: distributor('dwell: { value: 54°, from: m48 }'),
      expect: [
        {
          at: '54°',
          severity: 'warning',
          message:
            '`dwell` is 54°: one set of points is seldom shut for more than 78 % of the way between two lobes',
          fix: 'look in the source for a figure of another unit, or for a misprint',
        },
      ],
    },
    {
      name: 'figures in their order, the advance part way as much as the most',
      sheet: distributor(
        'dwell: { value: 38°, from: m48 }\n  advance-part: { value: 30°, of: crank, speed: 1400 rpm, from: m48 }\n  advance-maximum: { value: 15°, of: distributor, speed: 1600 rpm, from: m48 }',
      ),
      expect: [],
    },
    {
      name: 'an idle just below the fast idle',
      sheet: {
        settings:
          'idle-speed: { value: 1599 rpm, from: m48 p. 40 }\nfast-idle-speed: { value: 1600 rpm, from: m48 p. 40 }',
      },
      expect: [],
    },
  ],
});

/** `` `idle-speed` ``; of a key beside a setting `` `speed` of `advance-maximum` ``. */
function nameOf({ key, setting }: StatedPlace): string {
  const name = setting?.name.value;
  return name === undefined || name === key ? `\`${key}\`` : `\`${key}\` of \`${name}\``;
}

/** Slips that are made so often that they explain a reversed pair, where nearly any figure would. */
const OFTEN: ReadonlySet<string> = new Set(['swapped-digits', 'slipped-point', 'wrong-unit']);

/** The one slip that brings a pair, and whatever else is out by the same figure, into its order. */
function slipOf(
  pair: PairOutOfOrder,
  numbers: WorkedNumbers,
  sheet: Sheet,
  context: CheckContext,
): string | null {
  const found = [pair.less, pair.more].flatMap((place) => {
    const { statement, text, setting, bound } = place;
    if (!statement || text === null || bound.is !== 'setting') return [];
    const usual = bound.key === null ? (setting?.known?.usual ?? []) : [];
    const swg = sheet.wireGauge?.value ?? context.wireGauge;
    const options = {
      gauges: context.gauges,
      expect: [statement.dimension],
      swg: wireGaugeNamed(swg),
    } as const;
    const restated = restatedBeside(place);
    const slip = likelySlips(text, statement, null, options, (candidate) => {
      if (!restated.every((other) => goesWith(other, candidate))) return 'wrong';
      if (isOutOfOrder(place, candidate, numbers, sheet, context)) return 'wrong';
      if (!isUnitOfSheet(candidate, statement, sheet)) return 'unlikely';
      const range = usual.find(({ dimension }) => dimension === candidate.dimension);
      return range && sideOutside(candidate, range) ? 'unlikely' : 'right';
    }).find(({ kind, isUnlikely }) => OFTEN.has(kind) && !isUnlikely);
    return slip ? [{ slip, place }] : [];
  });
  const [first, second] = found.sort((one, two) => one.slip.rank - two.slip.rank);
  const told = ({ slip, place }: NonNullable<typeof first>): string =>
    `${slip.suggestion} for ${nameOf(place)}, if ${slip.because}`;
  return first ? [first, second].flatMap((each) => (each ? told(each) : [])).join('; or ') : null;
}

/** Whether a figure that says something else stands the wrong way round to another, by what is usual too. */
function isOutOfOrder(
  { id }: StatedPlace,
  instead: Statement,
  numbers: WorkedNumbers,
  sheet: Sheet,
  context: CheckContext,
): boolean {
  const figure = figureOf(instead);
  if (figure === null) return true;
  return pairsOutOfOrder(sheet, context, numbers, { id, figure }).some(
    ({ less, more }) => less.id === id || more.id === id,
  );
}

/** An example's whole front matter: six lobes, one set of points and weights. */
function distributor(settings: string): { readonly front: string } {
  return {
    front: `unit: { kind: ignition-distributor, maker: Orlo, model: K14, features: [six-lobe, single-points, centrifugal-advance] }\nsettings:\n  ${settings}`,
  };
}
