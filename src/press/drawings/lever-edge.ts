import { enlargement, scaleWords } from './enlargement.ts';
import { capital, type FedSize, type Feed, type Sketch } from './feed.ts';
import { box, circle, Pen, polygon, polyline, turned } from './pen.ts';
import { Scene } from './scene.ts';

/** In mm: the lever's pivot, its eye, and the casting's face below. */
const PIVOT = { x: 4, y: 9 };
const EYE = 27;
const FACE = 22;

/** A lever held against a straight-edge, or the travel of the rod that hangs on it. */
export function leverEdge(feed: Feed): Sketch | null {
  const set = feed.size('set');
  if (set === null) return null;
  return feed.choice('what') === 'travel' ? travelled(feed, set) : aligned(feed, set);
}

function aligned(feed: Feed, set: FedSize): Sketch | null {
  if (set.dimension !== 'condition') return null;
  const scene = new Scene();
  casting(scene);
  const edge = FACE - 4;
  scene.shape(box(8, edge, 25, 4), { part: 'edge' });
  for (let x = 10; x < 33; x += 2.3) scene.line(polyline([x, FACE], [x, FACE - 1.5]));
  rod(scene, PIVOT.y);
  arm(scene, 0, false);
  const under = PIVOT.y + 1.7;
  for (const x of [12, 21]) {
    scene.line(polyline([x, under], [x, edge]));
    scene.head({ x, y: under }, -90);
    scene.head({ x, y: edge }, 90);
  }
  const { label } = feed;
  scene.sizeLabel(set.text, { x: 21, y: (under + edge) / 2 }, 'none', 12);
  scene.name(label('lever'), { x: 18, y: PIVOT.y }, 5);
  scene.name(label('edge'), { x: 30.4, y: edge + 1.4 }, 20);
  scene.note('Not to scale.');
  return {
    scene,
    title: `${capital(label('lever'))} against a ${label('edge')}`,
    words: `The ${label('lever')} beside a ${label('edge')} that lies on the casting: ${set.text}.`,
  };
}

function travelled(feed: Feed, set: FedSize): Sketch | null {
  if (set.value === null || set.dimension !== 'length') return null;
  const scale = enlargement(set.value, { least: 3, wanted: 8, most: 12 });
  if (scale === null) return null;
  const drawn = set.value * scale;
  const scene = new Scene();
  casting(scene);
  const angle = (Math.asin(drawn / (EYE - PIVOT.x)) * 180) / Math.PI;
  const half = angle / 2;
  // The eye goes from as much above the pivot's level as it ends below it.
  const reach = drawn / 2 / Math.sin((half * Math.PI) / 180);
  const high = PIVOT.y - drawn / 2;
  const low = PIVOT.y + drawn / 2;
  rod(scene, high, reach * Math.cos((half * Math.PI) / 180));
  arm(scene, half, true, reach);
  arm(scene, -half, false, reach);
  const x = PIVOT.x + reach * Math.cos((half * Math.PI) / 180) + 7;
  const from = x - 7 + 2.6;
  scene.upright(high, low, x, { top: from, bottom: from }, set.text);
  const { label } = feed;
  scene.name(label('lever'), { x: 15, y: PIVOT.y - (drawn / 2) * 0.48 }, -2);
  scene.name(label('rod'), { x: x - 7, y: FACE + 9 }, FACE + 8);
  scene.note(`Travel drawn ${scaleWords(scale)},`, 'the rest not to scale.');
  return {
    scene,
    title: `Travel of the ${label('rod')}`,
    words: `The ${label('lever')} with its ${label('rod')}, ${label('start')}, and dashed where it stands ${label('end')}. Travel: ${set.text}.`,
  };
}

/** The casting in section, with the post that the lever turns on and the hole of the rod. */
function casting(scene: Scene): void {
  scene.shape(
    new Pen(PIVOT.x - 2.6, FACE)
      .line([PIVOT.x - 2.6, PIVOT.y])
      .arc(PIVOT.x, PIVOT.y, 2.6, 180, 360)
      .line([PIVOT.x + 2.6, FACE])
      .closed(),
  );
  for (const [left, right] of [[-1, EYE - 1.5] as const, [EYE + 1.5, 34] as const]) {
    scene.shape(box(left, FACE, right - left, 5), { hatch: 'right' });
  }
}

function arm(scene: Scene, degrees: number, ghost: boolean, reach = EYE - PIVOT.x): void {
  const end = PIVOT.x + reach;
  const around = new Pen(PIVOT.x, PIVOT.y - 1.7)
    .line([end, PIVOT.y - 1.7])
    .arc(end, PIVOT.y, 1.7, -90, 90)
    .line([PIVOT.x, PIVOT.y + 1.7])
    .arc(PIVOT.x, PIVOT.y, 1.7, 90, 270)
    .open();
  const corners = turned(
    around.points.map(({ x, y }) => [x, y]),
    PIVOT.x,
    PIVOT.y,
    degrees,
  );
  const [eye] = turned([[end, PIVOT.y]], PIVOT.x, PIVOT.y, degrees);
  if (ghost) scene.line(polyline(...corners), { dashed: true });
  else scene.shape(polygon(...corners), { part: 'lever' });
  if (eye) {
    const pin = circle(eye[0], eye[1], 0.8);
    if (ghost) scene.line(pin, { part: 'pin-end' });
    else scene.shape(pin, { stroke: 'thin', part: 'pin-start' });
  }
  if (!ghost) scene.shape(circle(PIVOT.x, PIVOT.y, 0.8), { stroke: 'thin' });
}

function rod(scene: Scene, top: number, reach = EYE - PIVOT.x): void {
  const x = PIVOT.x + reach;
  scene.shape(box(x - 1, top, 2, FACE + 11 - top), { part: 'rod' });
}
