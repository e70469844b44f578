import { enlargement, scaleWords } from './enlargement.ts';
import { capital, type Feed, type Sketch } from './feed.ts';
import { box, circle, Pen, polygon, polyline, turned } from './pen.ts';
import { Scene } from './scene.ts';
import { threaded } from './screw-thread.ts';
import { headNote, slottedHead, turnArrow } from './turn-arrow.ts';

/** In mm: the screw's height, where its tip first touches, and the lever's shaft. */
const LEVEL = 12;
const CONTACT = 15;
const SHAFT = { x: 19.6, y: 31 };
const LUG = { left: 2.6, right: 8.6 };

/**
 * A stop screw turned in after its first contact: the lever where it was touched, dashed, and where
 * the screw holds it now, and the screw's head from its end with an arrow of so many turns.
 */
export function screwOnLever(feed: Feed): Sketch | null {
  const set = feed.size('turns');
  if (set?.value == null) return null;
  const pitch = feed.pitchMm('thread');
  const travel = pitch === null ? null : set.value * pitch;
  const scale =
    travel === null ? null : enlargement(travel, { least: 2.4, wanted: 3.6, most: 6.5 });
  const drawn = travel === null || scale === null ? (set.value === 0 ? 0 : 3.4) : travel * scale;
  const scene = new Scene();
  scene.shape(
    polygon([LUG.left, 3.4], [LUG.right, 3.4], [LUG.right, LEVEL - 2.4], [LUG.left, LEVEL - 2.4]),
    { hatch: 'right' },
  );
  scene.shape(
    polygon([LUG.left, LEVEL + 2.4], [LUG.right, LEVEL + 2.4], [LUG.right, 23], [LUG.left, 23]),
    { hatch: 'right' },
  );
  lever(scene, 0, true);
  lever(scene, drawn, false);
  screw(
    scene,
    drawn,
    pitch === null || scale === null ? 1.8 : Math.min(Math.max(pitch * scale, 1.3), 3),
  );
  const dial = { x: 3.5, y: -8.6 };
  slottedHead(scene, dial, 3.2);
  const end = turnArrow(scene, dial, 4.6, set.value, set.sense !== 'out');
  scene.sizeLabel(set.text, end, 'none', -10);
  if (set.travel !== null && scale !== null) {
    scene.across(CONTACT, CONTACT + drawn, -1.4, { left: LEVEL - 8.6, right: LEVEL - 8.6 }, null);
    scene.sizeLabel(set.travel, { x: CONTACT + drawn + 5.2, y: -1.4 }, 'none');
  }
  const { label } = feed;
  scene.name(label('screw'), { x: CONTACT + drawn - 1.5, y: LEVEL + 0.8 }, 9);
  scene.name(label('lever'), { x: SHAFT.x + drawn * 0.45 + 0.3, y: 20 }, 19);
  // On the dashed edge itself, at the top, where no other line runs.
  scene.name(label('contact'), { x: CONTACT + 1.4, y: LEVEL - 6 }, 3.4);
  if (scale === null) scene.note('Not to scale.', headNote);
  else scene.note(`Travel drawn ${scaleWords(scale)},`, 'the rest not to scale.', headNote);
  const far = set.travel === null ? '' : `, a travel of ${set.travel}`;
  return {
    scene,
    title: `${capital(label('screw'))} and ${label('lever')}`,
    words: `The ${label('screw')} has pushed the ${label('lever')} on from where it stood, dashed, ${label('contact')}. An arrow around the screw's head, seen from the head, shows the turns: ${set.text}${far}.`,
  };
}

/** The lever with its face on the tip: turned about the shaft from first contact by `travel` mm. */
function lever(scene: Scene, travel: number, ghost: boolean): void {
  const height = SHAFT.y - LEVEL;
  const face = CONTACT - SHAFT.x;
  // The face is a straight line past the shaft's middle, `face` mm to the left of it at contact.
  const angle = solved(height, face, travel);
  const corners = turned(
    [
      [SHAFT.x + face, SHAFT.y - height - 6],
      [SHAFT.x + face + 3.6, SHAFT.y - height - 6],
      [SHAFT.x + 3.4, SHAFT.y - 4],
      [SHAFT.x + 3.4, SHAFT.y + 0.4],
      [SHAFT.x - 3.4, SHAFT.y + 0.4],
      [SHAFT.x + face, SHAFT.y - 4],
    ],
    SHAFT.x,
    SHAFT.y,
    angle,
  );
  if (ghost) {
    scene.line(polyline(...corners, corners[0] ?? [0, 0]), { dashed: true });
    return;
  }
  scene.shape(polygon(...corners), { part: 'lever' });
  scene.shape(circle(SHAFT.x, SHAFT.y, 4.2), {});
  scene.shape(circle(SHAFT.x, SHAFT.y, 2), {});
}

/** The angle in degrees at which the face crosses the screw's level `travel` mm farther right. */
function solved(height: number, face: number, travel: number): number {
  let [low, high] = [0, 45];
  for (let round = 0; round < 60; round++) {
    const angle = (low + high) / 2;
    const turn = (angle * Math.PI) / 180;
    // A point of the face: (face cos + s sin, face sin - s cos), at the level -height.
    const along = (height + face * Math.sin(turn)) / Math.cos(turn);
    if (face * Math.cos(turn) + along * Math.sin(turn) < face + travel) low = angle;
    else high = angle;
  }
  return (low + high) / 2;
}

/** The screw on its side: drawn upright and turned, its tip `travel` mm beyond first contact. */
function screw(scene: Scene, travel: number, pitch: number): void {
  const tip = CONTACT + travel;
  const outline = threaded(LEVEL, -tip + 2.2, -tip + 17.5, 2.4, pitch);
  const lying = outline.points.slice(0, -1).map(({ x, y }): [number, number] => [-y, x]);
  scene.shape(polygon(...lying), { stroke: 'thin' });
  scene.shape(
    new Pen(tip - 2.2, LEVEL - 1.7)
      .line(
        [tip - 0.8, LEVEL - 1.7],
        [tip, LEVEL - 0.7],
        [tip, LEVEL + 0.7],
        [tip - 0.8, LEVEL + 1.7],
        [tip - 2.2, LEVEL + 1.7],
      )
      .closed(),
    { part: 'tip' },
  );
  scene.shape(box(tip - 21.4, LEVEL - 4, 4, 8, 0.8), { part: 'head' });
  scene.axis([tip - 23.6, LEVEL], [tip + 1.5, LEVEL]);
}
