import { defineRelation, refuse } from '../define-relation.ts';
import { divide, interval, multiply } from '../interval.ts';
import type { Interval, Known, Unworkable } from '../model.ts';

const WHOLE_PERCENT = 100;

/** Dwell as a share of the way from one lobe to the next. */
export default defineRelation({
  id: 'dwell-share',
  title: 'Dwell in percent',
  formula: 'share = dwell / (360° / n)',
  quantities: {
    dwell: { label: 'dwell', symbol: 'dwell', dimension: 'angle' },
    lobes: { label: 'number of lobes', symbol: 'n', dimension: 'ratio' },
    share: { label: 'dwell in percent', symbol: 'share', dimension: 'percent' },
  },
  source: 'definition of dwell in percent; the lobes stand 360° / n apart',
  assumptions: [
    'Dwell is in degrees of the cam, not of the crank.',
    'The lobes are evenly spaced, and each keeps the contacts shut as long.',
  ],
  range: 'dwell < 360° / n, share < 100 %',
  solutions: [
    {
      for: 'share',
      from: ['dwell', 'lobes'],
      above: ['lobes'],
      told: (known) => `{dwell} of the ${spacing(known)} between {lobes} lobes is {worked}`,
      solve: ({ dwell, lobes }) => {
        const turns = multiply(dwell, lobes);
        if (turns.hi >= 360) return alwaysClosed('dwell', lobes);
        return divide(multiply(turns, interval(WHOLE_PERCENT)), interval(360));
      },
    },
    {
      for: 'dwell',
      from: ['share', 'lobes'],
      above: ['lobes'],
      told: (known) => `{share} of the ${spacing(known)} between {lobes} lobes is {worked}`,
      solve: ({ share, lobes }) =>
        share.hi >= WHOLE_PERCENT
          ? alwaysClosed('share', lobes)
          : divide(multiply(share, interval(360)), multiply(lobes, interval(WHOLE_PERCENT))),
    },
  ],
});

/** The refusal of a dwell that leaves no gap between two lobes, be it only at its upper limit. */
function alwaysClosed(name: 'dwell' | 'share', lobes: Interval): Unworkable {
  return refuse(
    `{${name}} of dwell leaves no time for the points to open: {lobes} lobes stand ${degrees(lobes)} apart`,
    'look in the source for the dwell in degrees of the distributor, and count the lobes',
    name,
    'lobes',
  );
}

function spacing(known: Known): string {
  const lobes = known.get('lobes');
  return lobes ? degrees(lobes) : 'way';
}

/** 360° over a number of lobes, to two places at most. */
function degrees({ hi }: Interval): string {
  return `${Number((360 / hi).toFixed(2))}°`;
}
