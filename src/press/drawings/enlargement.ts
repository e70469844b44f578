/** How much larger or smaller than life something may be drawn. */
const steps: readonly number[] = [
  1 / 20,
  1 / 10,
  1 / 5,
  1 / 4,
  1 / 3,
  1 / 2,
  1,
  2,
  3,
  4,
  5,
  6,
  8,
  10,
  12,
  15,
  20,
  25,
  30,
  40,
  50,
  60,
  80,
  100,
  120,
  150,
  200,
  250,
  300,
  400,
  500,
  600,
  800,
  1000,
];

/**
 * The scale at which `mm` comes nearest to `wanted` mm on paper without going beyond `most`; true
 * size goes before any that is no nearer than half. Null where even the smallest is too large, or
 * where the largest leaves it under `least`.
 */
export function enlargement(
  mm: number,
  {
    least,
    wanted,
    most,
  }: { readonly least: number; readonly wanted: number; readonly most: number },
): number | null {
  if (!(mm > 0)) return null;
  const fitting = steps.filter((scale) => mm * scale >= least && mm * scale <= most);
  if (fitting.includes(1)) return 1;
  let best: number | null = null;
  for (const scale of fitting) {
    const off = Math.abs(mm * scale - wanted);
    if (best === null || off < Math.abs(mm * best - wanted)) best = scale;
  }
  return best;
}

const words: ReadonlyMap<number, string> = new Map([
  [1, 'true size'],
  [1 / 2, 'half size'],
  [1 / 3, 'a third of its size'],
  [1 / 4, 'a quarter of its size'],
  [1 / 5, 'a fifth of its size'],
  [1 / 10, 'a tenth of its size'],
  [1 / 20, 'a twentieth of its size'],
  [2, 'twice its size'],
]);

/** `4 times its size`, `half size`, `true size`. */
export function scaleWords(scale: number): string {
  return words.get(scale) ?? `${scale} times its size`;
}
