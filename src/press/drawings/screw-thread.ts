import { polygon, type Trace } from './pen.ts';

/**
 * The outline of a threaded shank on an upright axis, crests at `radius`: teeth of `pitch` mm from
 * `top` down to `bottom`, both sides half a pitch apart as on a real thread.
 */
export function threaded(
  axis: number,
  top: number,
  bottom: number,
  radius: number,
  pitch: number,
): Trace {
  const depth = Math.min(0.6, pitch * 0.5);
  const side = (sign: 1 | -1, shift: number): [number, number][] => {
    const points: [number, number][] = [];
    let crest = true;
    for (let y = top + shift; y <= bottom + 1e-9; y += pitch / 2) {
      points.push([axis + sign * (crest ? radius : radius - depth), y]);
      crest = !crest;
    }
    return points;
  };
  const right = side(1, 0);
  const left = side(-1, pitch / 2);
  return polygon(
    [axis - radius + depth, top],
    ...right,
    [axis + radius - depth, bottom],
    [axis - radius + depth, bottom],
    ...left.reverse(),
  );
}
