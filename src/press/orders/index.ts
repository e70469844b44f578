export type { CardReading, CardReadings } from './card-readings.ts';
export { markLeaf, type Punch } from './leaf-marks.ts';
export {
  barsMm,
  bookletMargins,
  cardMargins,
  contentWidthMm,
  type Margins,
  type PaperSize,
  papers,
} from './paper.ts';
export { fillIn, placeholders, readWording, type Wording } from './wording.ts';
