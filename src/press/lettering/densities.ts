import { capHeightMm, labelAngles, textAngles } from './legibility.ts';

/** How closely a card may be set, the roomiest first. */
export const densityNames = ['roomy', 'ample', 'regular', 'close', 'tight'] as const;
export type DensityName = (typeof densityNames)[number];

/**
 * Type sizes of one density, in millimeters of font size; `card.css` lays everything out by them.
 * No running text is smaller than `text`, and no other word or figure smaller than `label`.
 */
export interface Density {
  readonly name: DensityName;
  readonly textMm: number;
  readonly labelMm: number;
  /** The least size of the faces that hold a fraction's figures. */
  readonly fractionMm: number;
}

/** Steps from the preferred height of capitals (0) to the least (1). */
const way: Readonly<Record<DensityName, number>> = {
  roomy: 0,
  ample: 0.3,
  regular: 0.55,
  close: 0.78,
  tight: 1,
};

/**
 * Families of the built-in style that set text, and those that set the figures of fractions. A club's
 * own style may do with others; what it prints is measured on the page all the same.
 */
const textFamilies = ['Gaugeleaf Sans', 'Gaugeleaf Condensed'];
const fractionFamilies = ['Gaugeleaf Upper', 'Gaugeleaf Lower'];

/** Heights of capitals of faces that don't say theirs: of no face is it less. */
const lowestFace = 0.5;

/**
 * The densities for a reading distance in millimeters: the roomiest has capitals of the height that
 * is preferred, the tightest of the least that can be read. `capHeights`: of the fonts, by family.
 */
export function densitiesFor(
  distanceMm: number,
  capHeights: ReadonlyMap<string, number>,
): readonly Density[] {
  const face = lowestOf(textFamilies, capHeights);
  const figures = lowestOf(fractionFamilies, capHeights);
  return densityNames.map((name) => {
    const label = minutes(labelAngles, way[name]);
    return {
      name,
      textMm: sizeMm(distanceMm, minutes(textAngles, way[name]), face),
      labelMm: sizeMm(distanceMm, label, face),
      fractionMm: sizeMm(distanceMm, label, figures),
    };
  });
}

function minutes({ least, preferred }: { least: number; preferred: number }, step: number): number {
  return preferred - (preferred - least) * step;
}

/** Rounded up, so that what is least stays so. */
function sizeMm(distanceMm: number, angle: number, capEm: number): number {
  return Math.ceil((capHeightMm(distanceMm, angle) / capEm) * 1000) / 1000;
}

function lowestOf(families: readonly string[], capHeights: ReadonlyMap<string, number>): number {
  return Math.min(...families.map((family) => capHeights.get(family) ?? lowestFace));
}
