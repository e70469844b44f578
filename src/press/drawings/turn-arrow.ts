import { circle, type Point, polyline } from './pen.ts';
import type { Scene } from './scene.ts';

/** From where an arrow of turns is seen: on it hangs which way is in. */
export const headNote = 'Turns seen from the head.';

/** More turns than this run into one another on paper. */
const MOST = 6;

/**
 * An arrow around a center that goes as many turns as a setting counts, in a spiral outward from the
 * top: clockwise, or the other way. Gives its point farthest to the right, where a leader may end.
 */
export function turnArrow(
  scene: Scene,
  center: Point,
  inner: number,
  turns: number,
  clockwise: boolean,
): Point {
  // Not turned at all: the leader ends on the head.
  if (turns <= 0) return { x: center.x + inner - 1.5, y: center.y };
  const shown = Math.min(Math.max(turns, 0.04), MOST);
  const spread = Math.min(1.7, 4.2 / shown);
  const way = clockwise ? 1 : -1;
  const at = (part: number): [number, number] => {
    const angle = ((-90 + way * part * 360) * Math.PI) / 180;
    const radius = inner + spread * part;
    return [center.x + radius * Math.cos(angle), center.y + radius * Math.sin(angle)];
  };
  const steps = Math.max(4, Math.ceil(shown * 48));
  const path = Array.from({ length: steps + 1 }, (_, step) => at((shown * step) / steps));
  // The line ends within its head, so that no blunt end shows beside the point.
  const radius = inner + spread * shown;
  const head = 2.2 / (2 * Math.PI * radius);
  const kept = path.filter((_, step) => (shown * step) / steps <= Math.max(0, shown - head * 0.6));
  if (kept.length > 1) scene.line(polyline(...kept));
  const [x, y] = at(shown);
  const [backX, backY] = at(Math.max(0, shown - head));
  scene.head({ x, y }, (Math.atan2(y - backY, x - backX) * 180) / Math.PI);
  const [farX, farY] = kept.reduce((far, point) => (point[0] > far[0] ? point : far), [x, y]);
  return { x: farX, y: farY };
}

/** The head of a screw from above, its slot where the count begins. */
export function slottedHead(scene: Scene, center: Point, radius: number): void {
  scene.shape(circle(center.x, center.y, radius), {});
  const half = 0.55;
  const reach = Math.sqrt(radius * radius - half * half);
  for (const x of [center.x - half, center.x + half]) {
    scene.line(polyline([x, center.y - reach], [x, center.y + reach]));
  }
}
