import { enlargement, scaleWords } from './enlargement.ts';
import { capital, type FedSize, type Feed, type Sketch } from './feed.ts';
import { box, circle, polygon, turned } from './pen.ts';
import { Scene } from './scene.ts';

/** The pin's place from the left, the float's ends, and the cover's thickness, in mm. */
const PIN = 3.6;
const FLOAT = { left: 12.5, right: 32, depth: 9, radius: 2.6 };
const COVER = { left: -1, right: 33.5, thick: 4.6 };
const GASKET = 1;

/**
 * A float beside its cover, which lies inverted below it or is held upright above it, and the
 * distance between the two. Nothing but that distance is to scale.
 */
export function floatHeight(feed: Feed): Sketch | null {
  const gap = feed.size('gap');
  if (gap?.value == null) return null;
  const far = feed.choice('to') === 'far';
  const upright = feed.choice('cover') === 'upright';
  const range = far
    ? { least: 12, wanted: 18, most: 24 }
    : upright
      ? { least: 7.5, wanted: 11, most: 15 }
      : { least: 2.2, wanted: 6, most: 10 };
  const scale = enlargement(gap.value, range);
  if (scale === null) return null;
  const drawn = gap.value * scale;
  const scene = new Scene();
  // Heights over the face from which it is measured: upward over an inverted cover, else downward.
  const y = (height: number) => (upright ? height : -height);
  cover(scene, feed, y);
  const end = upright ? hanging(scene, drawn, far, feed) : lying(scene, drawn, far, feed);
  const gauge = upright || far ? null : gap.gauge;
  if (gauge !== null) between(scene, gauge, gap, drawn, scale);
  const face = { at: COVER.right, y: 0 };
  const x = COVER.right + 3.4;
  if (upright) scene.upright(0, drawn, x, { top: face.at, bottom: end }, gap.text);
  else scene.upright(-drawn, 0, x, { top: end, bottom: face.at }, gap.text);
  if (upright)
    scene.name(
      feed.label('float'),
      { x: 25, y: far ? drawn - 4.5 : drawn + 3 },
      drawn + (far ? 3 : 7),
    );
  scene.note(`Gap drawn ${scaleWords(scale)},`, 'the rest not to scale.');
  return { scene, ...told(feed, gap, gauge?.text ?? null, far, upright) };
}

function told(feed: Feed, gap: FedSize, gauge: string | null, far: boolean, upright: boolean) {
  const { label } = feed;
  const gasket = feed.choice('gasket') === 'fitted';
  const from = gasket ? label('gasket') : label('cover');
  const side = far ? `the far side of the ${label('float')}` : `the ${label('float')}`;
  const state = `${label('cover')} ${upright ? 'upright' : 'inverted'}, ${label('gasket')} ${gasket ? 'fitted' : 'removed'}`;
  const tool = gauge === null ? '' : ` A gauge stands between the two: ${gauge}.`;
  return {
    title: `${capital(label('float'))} and ${state}`,
    words: `${capital(state)}. From the ${from} to ${side}: ${gap.text}.${tool}`,
  };
}

/** The cover in section, with the gasket on its face and the post that holds the pin. */
function cover(scene: Scene, feed: Feed, y: (height: number) => number): void {
  const fitted = feed.choice('gasket') === 'fitted';
  const face = fitted ? -GASKET : 0;
  const metal = [y(face), y(face - COVER.thick)] as const;
  const broken: [number, number][] = [
    [COVER.right, metal[0]],
    [COVER.right - 0.9, (metal[0] * 2 + metal[1]) / 3],
    [COVER.right + 0.5, (metal[0] + metal[1] * 2) / 3],
    [COVER.right - 0.3, metal[1]],
  ];
  scene.shape(polygon([COVER.left, metal[0]], ...broken, [COVER.left, metal[1]]), {
    hatch: 'right',
    part: 'cover',
  });
  if (fitted) {
    const top = Math.min(y(0), y(-GASKET));
    scene.shape(box(7.6, top, COVER.right - 7.6 - 0.4, GASKET), {
      fill: 'black',
      stroke: 'thin',
      part: 'gasket',
    });
    scene.name(feed.label('gasket'), { x: COVER.right - 6, y: y(-GASKET / 2) }, y(-6));
  }
  scene.name(feed.label('cover'), { x: COVER.right - 4, y: (metal[0] + metal[1]) / 2 }, y(-10));
}

/** Over an inverted cover: level, its arm on the needle. Gives where its gauged side ends. */
function lying(scene: Scene, drawn: number, far: boolean, feed: Feed): number {
  const near = far ? drawn - Math.min(FLOAT.depth, drawn * 0.5) : drawn;
  const depth = far ? drawn - near : FLOAT.depth;
  const foot = feed.choice('gasket') === 'fitted' ? GASKET : 0;
  const arm = near + depth / 2;
  const bottom = foot;
  // Post, seat and needle before the arm that rests on them.
  scene.shape(
    polygon([PIN - 2, bottom], [PIN - 2, -arm - 2.2], [PIN + 2, -arm - 2.2], [PIN + 2, bottom]),
    {},
  );
  const seat = Math.max(1.6, arm - 5.2);
  for (const [outer, inner] of [[6.4, 8.7] as const, [12, 9.7] as const]) {
    const edge = inner < 9.2 ? inner - 0.9 : inner + 0.9;
    scene.shape(
      polygon([outer, bottom], [outer, -seat], [edge, -seat], [inner, -seat + 1], [inner, bottom]),
      { hatch: 'left', stroke: 'thin' },
    );
  }
  scene.shape(
    polygon(
      [7.9, -arm + 0.6],
      [10.5, -arm + 0.6],
      [10.5, -seat - 0.4],
      [9.5, -seat + 0.9],
      [8.9, -seat + 0.9],
      [7.9, -seat - 0.4],
    ),
    { part: 'needle' },
  );
  scene.shape(box(PIN, -arm - 0.6, FLOAT.left - PIN + 0.5, 1.2), { stroke: 'thin' });
  scene.shape(circle(PIN, -arm, 1.3), {});
  scene.shape(box(FLOAT.left, -near - depth, FLOAT.right - FLOAT.left, depth, FLOAT.radius), {
    part: 'float',
  });
  const middle = { x: (FLOAT.left + FLOAT.right) / 2, y: -arm };
  scene.nameInside(feed.label('float'), middle, FLOAT.right - FLOAT.left - 3);
  return FLOAT.right - Math.min(FLOAT.radius, depth / 2);
}

/** Below an upright cover: hanging from its pin, the free end lowest. Gives where it is measured. */
function hanging(scene: Scene, drawn: number, far: boolean, feed: Feed): number {
  const foot = feed.choice('gasket') === 'fitted' ? -GASKET : 0;
  const pin = 5;
  const half = FLOAT.depth / 2;
  // The end of the straight side that is measured, while the arm is level.
  const reach = FLOAT.right - FLOAT.radius - PIN;
  const start = Math.atan2(far ? half : -half, reach);
  const angle = Math.asin(Math.min(0.9, (drawn - pin) / Math.hypot(reach, half))) - start;
  const degrees = (angle * 180) / Math.PI;
  const level = (corners: readonly (readonly [number, number])[]) =>
    polygon(...turned(corners, PIN, pin, degrees));
  const outline = box(FLOAT.left, pin - half, FLOAT.right - FLOAT.left, FLOAT.depth, FLOAT.radius);
  scene.shape(
    polygon([PIN - 2, foot], [PIN - 2, pin + 2.2], [PIN + 2, pin + 2.2], [PIN + 2, foot]),
    {},
  );
  scene.shape(
    level([
      [PIN, pin - 0.6],
      [FLOAT.left + 0.5, pin - 0.6],
      [FLOAT.left + 0.5, pin + 0.6],
      [PIN, pin + 0.6],
    ]),
    { stroke: 'thin' },
  );
  scene.shape(circle(PIN, pin, 1.3), {});
  scene.shape(level(outline.points.slice(0, -1).map(({ x, y }) => [x, y])), { part: 'float' });
  return PIN + Math.hypot(reach, half) * Math.cos(angle + start);
}

/** The gauge on end, on the face and under the free end, at the scale of the gap. */
function between(
  scene: Scene,
  gauge: NonNullable<FedSize['gauge']>,
  gap: FedSize,
  drawn: number,
  scale: number,
): void {
  const height = gauge.mm * scale;
  // A gauge that is larger than the gap is drawn would stand in the float.
  if (height > drawn * 1.02 || height < drawn * 0.6) return;
  const middle = FLOAT.right - 5.4;
  const top = Math.min(height, drawn);
  if (gauge.flat) scene.shape(box(middle - 4, -top, 8, top), { stroke: 'thin', part: 'gauge' });
  else {
    scene.shape(circle(middle, -top / 2, top / 2), { part: 'gauge' });
  }
  if (gauge.text !== null && gauge.text !== gap.text) {
    scene.name(gauge.text, { x: middle, y: -top / 2 }, 2);
  }
}
