import { enlargement, scaleWords } from './enlargement.ts';
import { capital, type FedSize, type Feed, type Sketch } from './feed.ts';
import { circle, Pen, polygon, turned } from './pen.ts';
import { Scene } from './scene.ts';

/** The bore as it is drawn, in mm: its walls, its height, the plate's thickness. */
const WALL = 4.4;
const BORE = 25;
const HEIGHT = 30;
const THICK = 2.1;

/** Where the plate's shaft sits and which way its right end lies. */
interface Lie {
  readonly shaft: number;
  /** 1: the right end is the lower one; -1: the upper. */
  readonly slope: 1 | -1;
  /** The angle at which it closes, in degrees from square across, where nothing is said. */
  readonly closed: number;
}

/** A plate on a shaft in the middle of its bore, part open: the gap at its lower edge. */
export function plateGap(feed: Feed): Sketch | null {
  const sketch = drawn(feed, { shaft: WALL + BORE / 2, slope: 1, closed: 10 });
  if (sketch === null) return null;
  const { scene, gap } = sketch;
  return { scene, ...told(feed, gap, 'edge') };
}

/** A plate on a shaft off the middle, nearly shut: the gap at its upper or its lower edge. */
export function offsetPlateGap(feed: Feed): Sketch | null {
  const upper = feed.choice('edge') === 'upper';
  const sketch = drawn(feed, {
    shaft: WALL + BORE * (upper ? 0.58 : 0.42),
    slope: upper ? -1 : 1,
    closed: 16,
  });
  if (sketch === null) return null;
  const { scene, gap } = sketch;
  return { scene, ...told(feed, gap, upper ? 'upper edge' : 'lower edge') };
}

function told(feed: Feed, gap: FedSize, edge: string) {
  const { label } = feed;
  const between = `the ${edge} of the ${label('plate')} and the ${label('wall')}`;
  const text = gap.gauge?.text ?? null;
  const tool = text === null || text === gap.text ? '' : ` The gauge in it: ${text}.`;
  return {
    title: `Gap at the ${edge} of the ${label('plate')}`,
    words: `Section of the ${label('wall')} with the ${label('plate')} part open. ${capital(`between ${between}`)}: ${gap.text}.${tool}`,
  };
}

function drawn(feed: Feed, lie: Lie): { scene: Scene; gap: FedSize } | null {
  const gap = feed.size('gap');
  if (gap?.value == null) return null;
  const scale = enlargement(gap.value, { least: 2.2, wanted: 2.9, most: 8 });
  if (scale === null) return null;
  const wide = gap.value * scale;
  const wall = WALL + BORE;
  const said = feed.size('closed-angle')?.value ?? null;
  const closed = said !== null && said >= 0 && said <= 45 ? said : lie.closed;
  const middle = HEIGHT * (lie.slope === 1 ? 0.5 : 0.62);
  const scene = new Scene();
  for (const [from, to] of [[0, WALL] as const, [wall, wall + WALL] as const]) {
    scene.shape(broken(from, to), { hatch: 'right', part: 'wall' });
  }
  scene.axis([lie.shaft, middle - 5.4], [lie.shaft, middle + 5.4]);
  scene.axis([lie.shaft - 5.4, middle], [lie.shaft + 5.4, middle]);
  const corners = plate(lie, closed, middle, wide);
  const tip = corners.reduce((far, corner) => (corner[0] > far[0] ? corner : far));
  scene.shape(polygon(...corners), { part: 'plate' });
  scene.shape(circle(lie.shaft, middle, 2.5), {});
  scene.shape(circle(lie.shaft, middle, 0.45), { fill: 'black', stroke: 'thin' });
  // The gauge hangs in from above, its end a little below the plate's.
  const top = -2.6;
  const foot = tip[1] + 2.2;
  const left = wall - wide;
  scene.shape(
    new Pen(left, top)
      .line([left, foot - wide / 2])
      .arc(wall - wide / 2, foot - wide / 2, wide / 2, 180, 0)
      .line([wall, top])
      .closed(),
    { stroke: 'thin', part: 'gauge' },
  );
  scene.across(left, wall, top - 3.4, { left: top, right: top }, gap.text);
  const text = gap.gauge?.text ?? null;
  if (text !== null && text !== gap.text) scene.name(text, { x: wall - wide / 2, y: 3.4 }, 3.4);
  scene.name(feed.label('wall'), { x: wall + WALL / 2, y: HEIGHT * 0.42 });
  // On the plate's middle line: toward the gap where that end is low, else toward the other.
  const [, above = tip, below = tip] = corners;
  const along = lie.slope === 1 ? 0.55 : -0.62;
  const dot = {
    x: lie.shaft + along * ((above[0] + below[0]) / 2 - lie.shaft),
    y: middle + along * ((above[1] + below[1]) / 2 - middle),
  };
  scene.name(feed.label('plate'), dot, HEIGHT * 0.8);
  scene.note(`Gap drawn ${scaleWords(scale)},`, 'the rest not to scale.');
  return { scene, gap };
}

/** A wall broken off above and below. */
function broken(left: number, right: number) {
  const third = (right - left) / 3;
  return polygon(
    [left, 0],
    [left + third, 0.7],
    [right - third, -0.5],
    [right, 0],
    [right, HEIGHT],
    [right - third, HEIGHT + 0.5],
    [left + third, HEIGHT - 0.7],
    [left, HEIGHT],
  );
}

/**
 * The plate's corners. Its ends lie flat against the walls when it is shut, at the closed angle from
 * square across (the geometry of a throttle plate as J. B. Heywood, Internal Combustion Engine
 * Fundamentals, chapter 7, has it); it is turned from there until its right end is `gap` mm off the wall.
 */
function plate(
  lie: Lie,
  closed: number,
  middle: number,
  gap: number,
): readonly (readonly [number, number])[] {
  const wall = WALL + BORE;
  const tilt = Math.tan((closed * Math.PI) / 180) * lie.slope;
  const half = THICK / 2 / Math.cos((closed * Math.PI) / 180);
  const level = (x: number) => middle + (x - lie.shaft) * tilt;
  const shut: readonly (readonly [number, number])[] = [
    [WALL, level(WALL) - half],
    [wall, level(wall) - half],
    [wall, level(wall) + half],
    [WALL, level(WALL) + half],
  ];
  const at = (degrees: number) => turned(shut, lie.shaft, middle, degrees * lie.slope);
  let [low, high] = [0, 89 - closed];
  for (let round = 0; round < 60; round++) {
    const between = (low + high) / 2;
    if (wall - Math.max(...at(between).map(([x]) => x)) < gap) low = between;
    else high = between;
  }
  return at((low + high) / 2);
}
