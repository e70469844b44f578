import { enlargement, scaleWords } from './enlargement.ts';
import { capital, type Feed, type Sketch } from './feed.ts';
import { box, circle, onCircle, polygon, polyline } from './pen.ts';
import { Scene } from './scene.ts';
import { turnArrow } from './turn-arrow.ts';

const AXIS = 9;
/** The bridge's faces and half its breadth, the jet's and its nut's half breadths, in mm. */
const BRIDGE = { top: 0, bottom: 12, half: 9 };
const JET = { half: 3.4, bore: 1.3 };
const NUT = { half: 6.6, height: 6 };

/**
 * A jet let down below its bridge by a nut, in section, where the thread is known with the drop to
 * scale; and the nut's six flats from below with an arrow that goes over so many of them.
 */
export function nutFlats(feed: Feed): Sketch | null {
  const set = feed.size('turns');
  if (set?.value == null) return null;
  const pitch = feed.pitchMm('thread');
  const drop = pitch === null ? null : set.value * pitch;
  const scale = drop === null ? null : enlargement(drop, { least: 4, wanted: 6.5, most: 9 });
  const drawn = drop === null || scale === null ? (set.value === 0 ? 0 : 5) : drop * scale;
  const scene = new Scene();
  for (const sign of [-1, 1]) {
    scene.shape(
      polygon(
        [AXIS + sign * BRIDGE.half, BRIDGE.top],
        [AXIS + sign * JET.half, BRIDGE.top],
        [AXIS + sign * JET.half, BRIDGE.bottom],
        [AXIS + sign * BRIDGE.half, BRIDGE.bottom],
      ),
      { hatch: 'right', part: 'bridge' },
    );
  }
  const top = BRIDGE.top + drawn;
  const nut = BRIDGE.bottom + drawn + 3.6;
  for (const sign of [-1, 1]) {
    scene.shape(
      polygon(
        [AXIS + sign * JET.half, top],
        [AXIS + sign * JET.bore, top],
        [AXIS + sign * JET.bore, nut + NUT.height + 5],
        [AXIS + sign * JET.half, nut + NUT.height + 5],
      ),
      { hatch: 'left', part: 'jet' },
    );
  }
  scene.shape(box(AXIS - NUT.half, nut, NUT.half * 2, NUT.height, 0.9), { part: 'nut' });
  for (const x of [AXIS - NUT.half / 2, AXIS + NUT.half / 2]) {
    scene.line(polyline([x, nut], [x, nut + NUT.height]));
  }
  scene.axis([AXIS, BRIDGE.top - 3], [AXIS, nut + NUT.height + 6.6]);
  const { label } = feed;
  if (set.travel !== null && scale !== null && drawn > 0) {
    const x = AXIS + BRIDGE.half + 3;
    scene.upright(
      BRIDGE.top,
      top,
      x,
      { top: AXIS + BRIDGE.half, bottom: AXIS + JET.half - 1 },
      set.travel,
    );
  }
  const hex = { x: AXIS + BRIDGE.half + 9.8, y: nut + NUT.height / 2 };
  const corners = [0, 60, 120, 180, 240, 300].map((angle): [number, number] => {
    const { x, y } = onCircle(hex.x, hex.y, 4.9, angle);
    return [x, y];
  });
  scene.shape(polygon(...corners), { part: 'hexagon' });
  scene.shape(circle(hex.x, hex.y, 2.3), {});
  const end = turnArrow(scene, hex, 6.2, set.value, set.sense === 'up');
  scene.sizeLabel(set.text, end, 'none', Math.max(end.y, nut));
  scene.name(label('bridge'), { x: AXIS + BRIDGE.half - 2.2, y: 9.6 }, 12);
  scene.name(label('jet'), { x: AXIS + (JET.half + JET.bore) / 2, y: BRIDGE.bottom - 0.8 }, 16);
  scene.name(label('nut'), { x: hex.x + 0.8, y: hex.y + 3.3 }, nut + NUT.height + 10);
  if (scale === null) scene.note('Not to scale.', 'Flats seen from below.');
  else {
    scene.note(
      `Drop drawn ${scaleWords(scale)},`,
      'the rest not to scale.',
      'Flats seen from below.',
    );
  }
  const far = set.travel === null ? '' : `, a drop of ${set.travel}`;
  return {
    scene,
    title: `${capital(label('nut'))} and ${label('jet')}`,
    words: `Section of the ${label('bridge')} with the ${label('jet')} below its face, and the six flats of the ${label('nut')} seen from below with an arrow that shows how far it is turned: ${set.text}${far}.`,
  };
}
