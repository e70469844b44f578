import { enlargement, scaleWords } from './enlargement.ts';
import { capital, type Feed, type Sketch } from './feed.ts';
import { box, Pen, polygon, polyline } from './pen.ts';
import { Scene } from './scene.ts';
import { threaded } from './screw-thread.ts';
import { headNote, slottedHead, turnArrow } from './turn-arrow.ts';

/** In mm: the screw's height, the slide's sides and top, and where the cone's point is at first contact. */
const LEVEL = 24;
const SLIDE = { left: 15, right: 30, top: 3 };
const CONTACT = SLIDE.left + 0.9;
/** How much the cone rises for each mm along it, and the half thickness of the shank it ends in. */
const RISE = 0.42;
const SHANK = 2.6;

/**
 * A screw that lifts a slide by its cone, turned in after first contact: the slide and the screw's head
 * dashed where they were then, and the head from its end with an arrow of so many turns.
 */
export function screwUnderSlide(feed: Feed): Sketch | null {
  const set = feed.size('turns');
  if (set?.value == null) return null;
  const pitch = feed.pitchMm('thread');
  const travel = pitch === null ? null : set.value * pitch;
  const scale = travel === null ? null : enlargement(travel, { least: 2.4, wanted: 4, most: 5.2 });
  const drawn = travel === null || scale === null ? (set.value === 0 ? 0 : 4) : travel * scale;
  const scene = new Scene();
  const edge = LEVEL - RISE * (CONTACT - SLIDE.left);
  slide(scene, edge - RISE * drawn);
  if (drawn > 0) {
    // Below the slide's foot, that where it stood: its sides only as far as they show.
    scene.line(
      polyline(
        [SLIDE.left, edge - RISE * drawn],
        [SLIDE.left, edge],
        [SLIDE.right, edge],
        [SLIDE.right, edge - RISE * drawn],
      ),
      { dashed: true, part: 'slide-contact' },
    );
  }
  walls(scene);
  screw(
    scene,
    drawn,
    pitch === null || scale === null ? 1.8 : Math.min(Math.max(pitch * scale, 1.3), 3),
  );
  const dial = { x: 3.5, y: -8.6 };
  slottedHead(scene, dial, 3.2);
  const end = turnArrow(scene, dial, 4.6, set.value, set.sense !== 'out');
  scene.sizeLabel(set.text, end, 'none', -10);
  const { label } = feed;
  if (set.travel !== null && scale !== null && drawn > 0) {
    const y = LEVEL + 11;
    scene.across(CONTACT, CONTACT + drawn, y, { left: LEVEL + 1, right: LEVEL + 1 }, set.travel);
  }
  const middle = { x: (SLIDE.left + SLIDE.right) / 2, y: 11 };
  scene.nameInside(label('slide'), middle, SLIDE.right - SLIDE.left - 3);
  scene.name(label('contact'), { x: SLIDE.right - 3, y: drawn > 0 ? edge : edge - 0.2 }, edge - 1);
  scene.name(label('screw'), { x: CONTACT + drawn - 4.4, y: LEVEL + 0.7 }, LEVEL + 5);
  if (scale === null) scene.note('Not to scale.', headNote);
  else scene.note(`Travel drawn ${scaleWords(scale)},`, 'the rest not to scale.', headNote);
  const far = set.travel === null ? '' : `, a travel of ${set.travel}`;
  return {
    scene,
    title: `${capital(label('screw'))} and ${label('slide')}`,
    words: `The cone of the ${label('screw')} has lifted the ${label('slide')} from where it stood, dashed, ${label('contact')}. An arrow around the screw's head, seen from the head, shows the turns: ${set.text}${far}.`,
  };
}

/** The slide, broken off above. */
function slide(scene: Scene, foot: number): void {
  const { left, right, top } = SLIDE;
  scene.shape(
    polygon(
      [left, foot],
      [left, top],
      [left + 5, top + 1],
      [right - 5, top - 1],
      [right, top],
      [right, foot],
    ),
    { part: 'slide' },
  );
}

/** The body that the slide runs in: with the hole of the screw, and above the passage beside it. */
function walls(scene: Scene): void {
  const gap = 0.6;
  const inner = SLIDE.left - gap;
  for (const [top, bottom] of [[4, LEVEL - SHANK] as const, [LEVEL + SHANK, LEVEL + 8] as const]) {
    scene.shape(box(inner - 6, top, 6, bottom - top), { hatch: 'right', part: 'wall' });
  }
  scene.shape(box(SLIDE.right + gap, 4, 5, 12), { hatch: 'right', part: 'wall' });
}

/** The screw on its side, its point `travel` mm beyond first contact, and its head where it was then. */
function screw(scene: Scene, travel: number, pitch: number): void {
  const point = CONTACT + travel;
  const cone = point - SHANK / RISE;
  const outline = threaded(LEVEL, -cone, -cone + 14, SHANK, pitch);
  scene.shape(
    polygon(...outline.points.slice(0, -1).map(({ x, y }): [number, number] => [-y, x])),
    { stroke: 'thin' },
  );
  scene.shape(new Pen(cone, LEVEL - SHANK).line([point, LEVEL], [cone, LEVEL + SHANK]).closed(), {
    part: 'tip',
  });
  const head = (tip: number) => box(tip - 24.2, LEVEL - 4.2, 4, 8.4, 0.8);
  scene.shape(head(point), { part: 'head' });
  scene.axis([point - 26.2, LEVEL], [point + 2, LEVEL]);
}
