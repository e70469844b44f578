import { enlargement, scaleWords } from './enlargement.ts';
import { capital, type FedSize, type Feed, type Sketch } from './feed.ts';
import { box, circle, onCircle, polygon, polyline, turned } from './pen.ts';
import { Scene } from './scene.ts';

/** In mm: the cam's middle, the radius of its peaks, of their rounding, and of its base circle. */
const CAM = { x: 13, y: 19, peak: 9, nose: 0.9, base: 7.2, bore: 3 };
/** From the cam's middle: where an arm turns, where its block stands, where its contact is. */
const ARM = { pivot: -13, contact: 12.5, half: 1.1, block: 2.6 };
const CONTACT = { half: 2.1, thick: 1.6 };
/** More lobes than this run into one another on paper. */
const MOST = 12;

type Corner = readonly [number, number];

/**
 * The contacts that a cam opens, their block on the peak of a lobe, with as many lobes and arms as the
 * unit has; of two arms the other one, closed. The gap is to scale.
 */
export function gapOnLobe(feed: Feed): Sketch | null {
  const gap = feed.size('gap');
  const lobes = feed.count('lobes');
  if (gap?.value == null || lobes < 1 || lobes > MOST) return null;
  const scale = enlargement(gap.value, { least: 1.2, wanted: 2, most: 3 });
  if (scale === null) return null;
  const drawn = gap.value * scale;
  const scene = new Scene();
  const two = feed.choice('arms') === 'two';
  // The other set's block stands between two lobes, and its contacts are together.
  if (two) contacts(scene, 180 + (lobes % 2 === 0 ? 180 / lobes : 0), drawn, false);
  cam(scene, lobes);
  contacts(scene, 0, drawn, true);
  const level = -CAM.peak - ARM.block - ARM.half * 2;
  const fixedTop = CAM.y + level + ARM.half * 2 + CONTACT.thick + drawn;
  const right = CAM.x + ARM.contact + CONTACT.half;
  const x = right + 3.2;
  scene.upright(fixedTop - drawn, fixedTop, x, { top: right, bottom: right }, gap.text);
  gaugeLeaf(scene, gap, fixedTop, scale, drawn);
  const { label } = feed;
  const lobeWords = `${lobes} ${label('lobes')}`;
  const armY = CAM.y + level + ARM.half;
  scene.name(label('arm'), { x: CAM.x + 6, y: armY }, armY - 5);
  scene.name(label('fixed'), { x: CAM.x + ARM.contact + 0.6, y: fixedTop + 2.6 }, fixedTop + 5);
  const blockAt = { x: CAM.x + 0.4, y: CAM.y - CAM.peak - ARM.block / 2 };
  scene.name(label('block'), blockAt, fixedTop + 9);
  scene.name(lobeWords, { x: CAM.x + CAM.base - 2, y: CAM.y + 2 }, CAM.y + 4);
  if (two) scene.name(label('other'), { x: CAM.x + 2, y: CAM.y - level - ARM.half }, CAM.y + 13);
  scene.note(`Gap drawn ${scaleWords(scale)},`, 'the rest not to scale.');
  const gauge = gap.gauge?.text ?? null;
  const tool = gauge === null || gauge === gap.text ? '' : ` A gauge stands in it: ${gauge}.`;
  const other = two ? ` The ${label('other')} is drawn closed.` : '';
  return {
    scene,
    title: `${capital(label('block'))} on the peak of one of ${lobeWords}`,
    words: `A cam of ${lobeWords}, the ${label('block')} on the peak of one. Gap between ${label('arm')} and ${label('fixed')}: ${gap.text}.${tool}${other}`,
  };
}

/** The cam: round noses on a base circle, with straight flanks between them. */
function cam(scene: Scene, lobes: number): void {
  const points: Corner[] = [];
  const around = (x: number, y: number, radius: number) => {
    for (let angle = 0; angle < 360; angle += 6) {
      const point = onCircle(x, y, radius, angle);
      points.push([point.x, point.y]);
    }
  };
  around(CAM.x, CAM.y, CAM.base);
  for (let at = 0; at < lobes; at++) {
    const nose = onCircle(CAM.x, CAM.y, CAM.peak - CAM.nose, -90 + (at * 360) / lobes);
    around(nose.x, nose.y, CAM.nose);
  }
  scene.shape(polygon(...hull(points)), { part: 'cam' });
  scene.shape(circle(CAM.x, CAM.y, CAM.bore), { stroke: 'thin' });
  scene.axis([CAM.x - 4.6, CAM.y], [CAM.x + 4.6, CAM.y]);
  scene.axis([CAM.x, CAM.y - 4.6], [CAM.x, CAM.y + 4.6]);
}

/** One set, turned about the cam: open with its block on a peak, or closed with its block off the cam. */
function contacts(scene: Scene, turn: number, gap: number, open: boolean): void {
  const level = -CAM.peak - ARM.block - ARM.half * 2;
  const under = level + ARM.half * 2;
  const pivot: Corner = [ARM.pivot, level + ARM.half];
  // About its own pivot the arm falls by the gap at its contact.
  const fall = open ? 0 : (Math.atan2(gap, ARM.contact - ARM.pivot) * 180) / Math.PI;
  const placed = (corners: readonly Corner[], moving: boolean) => {
    const own = moving ? turned(corners, pivot[0], pivot[1], fall) : corners;
    return turned(
      own.map(([x, y]): Corner => [CAM.x + x, CAM.y + y]),
      CAM.x,
      CAM.y,
      turn,
    );
  };
  const set = open ? 'open' : 'closed';
  const look = { stroke: open ? 'thick' : 'thin' } as const;
  const block: Corner[] = [
    [-1.5, under],
    [1.5, under],
    [0.9, -CAM.peak],
    [-0.9, -CAM.peak],
  ];
  scene.shape(polygon(...placed(block, true)), { ...look, part: `block-${set}` });
  const arm: Corner[] = [
    [ARM.pivot, level],
    [ARM.contact + CONTACT.half + 0.8, level],
    [ARM.contact + CONTACT.half + 0.8, under],
    [ARM.pivot, under],
  ];
  scene.shape(polygon(...placed(arm, true)), look);
  const [hinge] = placed([pivot], false);
  if (hinge) {
    scene.shape(circle(hinge[0], hinge[1], 2), look);
    scene.shape(circle(hinge[0], hinge[1], 0.8), { stroke: 'thin' });
  }
  const moving: Corner[] = corners(ARM.contact, under, under + CONTACT.thick, CONTACT.half);
  scene.shape(polygon(...placed(moving, true)), { ...look, part: `moving-${set}` });
  const top = under + CONTACT.thick + gap;
  const fixed: Corner[] = corners(ARM.contact, top, top + CONTACT.thick, CONTACT.half);
  scene.shape(polygon(...placed(fixed, false)), { ...look, part: `fixed-${set}` });
  const foot: Corner[] = corners(ARM.contact + 0.6, top + CONTACT.thick, top + 6, 1.5);
  scene.shape(polygon(...placed(foot, false)), look);
}

function corners(middle: number, top: number, bottom: number, half: number): Corner[] {
  return [
    [middle - half, top],
    [middle + half, top],
    [middle + half, bottom],
    [middle - half, bottom],
  ];
}

/** The leaf between the contacts, at the scale of the gap. */
function gaugeLeaf(
  scene: Scene,
  gap: FedSize,
  fixedTop: number,
  scale: number,
  drawn: number,
): void {
  const { gauge } = gap;
  if (gauge === null || !gauge.flat) return;
  const thick = gauge.mm * scale;
  if (thick > drawn * 1.02 || thick < drawn * 0.5) return;
  const middle = CAM.x + ARM.contact;
  const top = fixedTop - Math.min(thick, drawn);
  scene.shape(box(middle - 6.5, top, 8, fixedTop - top), { stroke: 'thin', part: 'gauge' });
  scene.line(polyline([middle - 6.5, top], [middle - 6.5, fixedTop]));
  if (gauge.text !== null && gauge.text !== gap.text) {
    scene.name(gauge.text, { x: middle - 4.6, y: fixedTop - thick / 2 }, fixedTop + 1.5);
  }
}

/** The convex hull of points (Andrew's monotone chain), clockwise on paper. */
function hull(points: readonly Corner[]): Corner[] {
  const sorted = [...points].sort((a, b) => a[0] - b[0] || a[1] - b[1]);
  const turn = (o: Corner, a: Corner, b: Corner) =>
    (a[0] - o[0]) * (b[1] - o[1]) - (a[1] - o[1]) * (b[0] - o[0]);
  const half = (ordered: readonly Corner[]) => {
    const kept: Corner[] = [];
    for (const point of ordered) {
      for (let [a, b] = kept.slice(-2); a && b && turn(a, b, point) <= 0; [a, b] = kept.slice(-2)) {
        kept.pop();
      }
      kept.push(point);
    }
    return kept.slice(0, -1);
  };
  return [...half(sorted), ...half(sorted.reverse())];
}
