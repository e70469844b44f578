import { capital, type Feed, type Sketch } from './feed.ts';
import { box, circle, onCircle, Pen, polygon } from './pen.ts';
import { Scene } from './scene.ts';
import { threaded } from './screw-thread.ts';

/** Radii of the steps from the highest down, in mm, and the angle that each takes. */
const RADII = [14, 11.9, 9.8, 7.7] as const;
const SPAN = 27;
const PIVOT = { x: 10, y: 18 };
const steps = ['highest', 'second', 'third', 'lowest'] as const;

/** A stepped cam with the screw on the step that the sheet names. It shows where, and no size. */
export function steppedCam(feed: Feed): Sketch | null {
  const set = feed.size('set');
  const chosen = steps.indexOf(feed.choice('step') as (typeof steps)[number]);
  const radius = RADII[chosen];
  if (radius === undefined) return null;
  const scene = new Scene();
  // The middle of the chosen step lies at the screw's level.
  const start = (at: number) => (at - chosen) * SPAN - SPAN / 2;
  const hub = 5.2;
  const first = onCircle(PIVOT.x, PIVOT.y, RADII[0], start(0));
  const pen = new Pen(first.x, first.y);
  RADII.forEach((r, at) => {
    const from = onCircle(PIVOT.x, PIVOT.y, r, start(at));
    pen.line([from.x, from.y]).arc(PIVOT.x, PIVOT.y, r, start(at), start(at) + SPAN);
  });
  const back = onCircle(PIVOT.x, PIVOT.y, hub, start(4) + 22);
  pen.line([back.x, back.y]).arc(PIVOT.x, PIVOT.y, hub, start(4) + 22, start(0) + 360 - 30);
  scene.shape(pen.closed(), { part: 'cam' });
  scene.shape(circle(PIVOT.x, PIVOT.y, 2), {});
  scene.axis([PIVOT.x - 3.6, PIVOT.y], [PIVOT.x + 3.6, PIVOT.y]);
  scene.axis([PIVOT.x, PIVOT.y - 3.6], [PIVOT.x, PIVOT.y + 3.6]);
  const tip = PIVOT.x + radius;
  const outline = threaded(PIVOT.y, tip + 1.8, tip + 9.5, 1.9, 1.5);
  scene.shape(polygon(...outline.points.slice(0, -1).map(({ x, y }): [number, number] => [y, x])), {
    stroke: 'thin',
  });
  scene.shape(
    new Pen(tip + 1.9, PIVOT.y - 1.3)
      .arc(tip + 1.3, PIVOT.y, 1.3, -90, -270)
      .line([tip + 1.9, PIVOT.y + 1.3])
      .closed(),
    { part: 'tip' },
  );
  scene.shape(box(tip + 4, PIVOT.y - 4.6, 3, 2.7), { hatch: 'left' });
  scene.shape(box(tip + 4, PIVOT.y + 1.9, 3, 4.8), { hatch: 'left' });
  scene.shape(box(tip + 9.5, PIVOT.y - 3.1, 3, 6.2, 0.6), { part: 'head' });
  const { label } = feed;
  const step = label(feed.choice('step'));
  if (set !== null)
    scene.sizeLabel(set.text, { x: tip + 11, y: PIVOT.y - 1.2 }, 'dot', PIVOT.y - 6);
  scene.name(step, { x: tip - 1, y: PIVOT.y - 0.2 }, PIVOT.y - 15);
  scene.name(label('screw'), { x: tip + 2.8, y: PIVOT.y + 0.6 }, PIVOT.y + 6);
  scene.name(label('cam'), { x: PIVOT.x + 3, y: PIVOT.y + 3.2 }, PIVOT.y + 12);
  scene.note('Not to scale.');
  return {
    scene,
    title: `${capital(label('cam'))} and ${label('screw')}`,
    words: `The ${label('screw')} stands on the ${step} of the ${label('cam')}${set === null ? '' : `: ${set.text}`}.`,
  };
}
