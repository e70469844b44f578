export type { CardReading, CardReadings } from './card-readings.ts';
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
