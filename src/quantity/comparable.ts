import type { PressureReference, Statement } from './model.ts';
import { sameFamily } from './units.ts';

/** Why two statements cannot be held against one another; null when they can. */
export function incomparable(first: Statement, second: Statement): string | null {
  if ((first.condition === null) !== (second.condition === null)) {
    return `${first.text} and ${second.text}: one is a condition, the other a figure`;
  }
  if (!sameFamily(first.dimension, second.dimension)) {
    return `${first.text} is ${noun(first)}, ${second.text} is ${noun(second)}`;
  }
  if (first.dimension === 'notches' && fromAnEnd(first) !== fromAnEnd(second)) {
    return `${first.text} and ${second.text}: one is counted from an end, the other from the index`;
  }
  const [a, b] = [zeroOf(first), zeroOf(second)];
  if (!mayShareZero(a, b))
    return `${first.text} is counted as ${PRESSURES[a]}, ${second.text} as ${PRESSURES[b]}`;
  return null;
}

/** Whether a notch is counted along the slide needle or the cam, from its top or bottom. */
function fromAnEnd({ datum }: Statement): boolean {
  return datum === 'top' || datum === 'bottom';
}

type Zero = PressureReference | 'unstated vacuum';

const PRESSURES: Readonly<Record<Zero, string>> = {
  gauge: 'gauge pressure',
  absolute: 'absolute pressure',
  depression: 'a vacuum',
  'unstated vacuum': 'a vacuum',
  unstated: 'a pressure of unstated zero',
};

function zeroOf({ reference, dimension }: Statement): Zero {
  if (reference === 'unstated' && dimension === 'vacuum') return 'unstated vacuum';
  return reference ?? 'unstated';
}

/**
 * Whether two pressures can be counted from one zero. A column of mercury with nothing said is a
 * vacuum; other units may be anything but absolute, which is always said.
 */
function mayShareZero(a: Zero, b: Zero): boolean {
  if (a === b) return true;
  const both = new Set<Zero>([a, b]);
  if (both.has('absolute')) return false;
  if (both.has('unstated')) return true;
  return both.has('depression') && both.has('unstated vacuum');
}

function noun(statement: Statement): string {
  const { dimension } = statement;
  if (dimension === 'turns' || dimension === 'notches') return `a number of ${dimension}`;
  return /^[aeiou]/.test(dimension) ? `an ${dimension}` : `a ${dimension}`;
}
