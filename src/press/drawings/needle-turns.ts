import { enlargement, scaleWords } from './enlargement.ts';
import { capital, type Feed, type Sketch } from './feed.ts';
import { box, polygon, polyline } from './pen.ts';
import { Scene } from './scene.ts';
import { threaded } from './screw-thread.ts';
import { headNote, slottedHead, turnArrow } from './turn-arrow.ts';

/** The section, in mm: the screw's axis, the casting's face, its seat, the casting's foot. */
const AXIS = 8.5;
const FACE = 14.5;
const SEAT = 29;
const FOOT = 35;
const ORIFICE = 1.7;
const SHANK = 3.2;

/**
 * A needle screw backed off its conical seat by a count of turns: in section, where its thread is
 * known with the lift to scale, and its head from above with an arrow that goes so many turns.
 */
export function needleTurns(feed: Feed): Sketch | null {
  const set = feed.size('turns');
  if (set?.value == null) return null;
  const pitch = feed.pitchMm('thread');
  const lift = pitch === null ? null : set.value * pitch;
  const scale = lift === null ? null : enlargement(lift, { least: 2.4, wanted: 3.4, most: 5.2 });
  const drawn = lift === null || scale === null ? (set.value === 0 ? 0 : 3.6) : lift * scale;
  const scene = new Scene();
  casting(scene);
  needle(
    scene,
    drawn,
    pitch === null || scale === null ? 1.9 : Math.min(Math.max(pitch * scale, 1.3), 3.2),
  );
  const dial = { x: 25, y: -6.4 };
  slottedHead(scene, dial, 3.2);
  const out = set.sense !== 'in';
  const end = turnArrow(scene, dial, 4.7, set.value, !out);
  scene.sizeLabel(set.text, end, 'none', Math.min(end.y, -5));
  scene.name(feed.label('needle'), { x: AXIS + SHANK - 1.4, y: SEAT - drawn - 5.4 }, 20);
  scene.name(feed.label('seat'), { x: AXIS + ORIFICE + 0.9, y: SEAT + 0.9 }, 31);
  if (scale === null) scene.note('Not to scale.', headNote);
  else scene.note(`Lift drawn ${scaleWords(scale)},`, 'the rest not to scale.', headNote);
  if (set.travel !== null && scale !== null) {
    const top = 6 - drawn;
    scene.upright(top, top + drawn, AXIS + 8.4, { top: AXIS + 5, bottom: AXIS + 5 }, set.travel);
    scene.line(box(AXIS - 5, top + drawn, 10, 4.2), { dashed: true });
  }
  const travel = set.travel === null ? '' : `, a lift of ${set.travel}`;
  const { label } = feed;
  return {
    scene,
    title: `${capital(label('needle'))} and ${label('seat')}`,
    words: `Section of the ${label('needle')} off its ${label('seat')}, and its head, seen from above, with an arrow that shows the turns: ${set.text}${travel}.`,
  };
}

/** The casting around the needle: a tapped hole, a clear one, and the orifice with its edge. */
function casting(scene: Scene): void {
  const clear = SHANK + 0.3;
  const half = (sign: 1 | -1) =>
    polygon(
      [AXIS + sign * 8.5, FACE],
      [AXIS + sign * SHANK, FACE],
      [AXIS + sign * SHANK, 20.5],
      [AXIS + sign * clear, 20.5],
      [AXIS + sign * clear, 26.2],
      [AXIS + sign * ORIFICE, SEAT],
      [AXIS + sign * ORIFICE, FOOT],
      [AXIS + sign * 8.5, FOOT],
    );
  for (const sign of [-1, 1] as const) scene.shape(half(sign), { hatch: 'right', part: 'seat' });
}

function needle(scene: Scene, lift: number, pitch: number): void {
  const up = -lift;
  // Seated, the cone meets the orifice's edge; its point is a little below.
  const cone = polygon(
    [AXIS - SHANK + 0.9, 21 + up],
    [AXIS + SHANK - 0.9, 21 + up],
    [AXIS + SHANK - 0.9, SEAT - 2.2 + up],
    [AXIS + ORIFICE, SEAT + up],
    [AXIS + 0.3, SEAT + 4.4 + up],
    [AXIS - 0.3, SEAT + 4.4 + up],
    [AXIS - ORIFICE, SEAT + up],
    [AXIS - SHANK + 0.9, SEAT - 2.2 + up],
  );
  scene.shape(cone, { part: 'needle' });
  scene.shape(threaded(AXIS, 12.6 + up, 21.6 + up, SHANK, pitch), { stroke: 'thin' });
  scene.shape(box(AXIS - 2.2, 10.2 + up, 4.4, 3), {});
  scene.shape(box(AXIS - 5, 6 + up, 10, 4.2, 0.8), { part: 'head' });
  scene.line(
    polyline(
      [AXIS - 0.55, 6 + up],
      [AXIS - 0.55, 7.8 + up],
      [AXIS + 0.55, 7.8 + up],
      [AXIS + 0.55, 6 + up],
    ),
  );
  scene.axis([AXIS, 3.4 + up], [AXIS, FOOT + 1.6]);
}
