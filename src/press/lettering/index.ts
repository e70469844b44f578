export { type Density, type DensityName, densitiesFor, densityNames } from './densities.ts';
export { typesetFormula } from './formula.ts';
export type { Face } from './glyph-widths.ts';
export { capHeightMm, labelAngles, textAngles, usualDistanceMm } from './legibility.ts';
export { escapeXml, textWidth, wrapText } from './line-widths.ts';
export { type Line, lineHeight, nameLines, sizeLines, typeSize } from './size-lines.ts';
export { escapeHtml, typesetSize, typesetWords } from './typeset.ts';
