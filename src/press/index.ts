export type { CardReading, CardReadings } from './card-readings.ts';
export type { LastEdition } from './changes-page.ts';
export { type Imposed, type Imposition, impose } from './impose.ts';
export type { LeafMarks, Punch } from './leaf-marks.ts';
export type {
  BookletOrder,
  Browser,
  CardOrder,
  EditionFacts,
  Flate,
  Paper,
  PartStore,
  PictureSource,
  Printed,
  PrintedBooklet,
  SheetToPrint,
  Templates,
} from './orders.ts';
export { PressStopped } from './orders.ts';
export { type PrintedGauges, printPaperGauges } from './paper-gauges.ts';
export { printBooklet } from './print-booklet.ts';
export { printCard, printCards } from './print-card.ts';
export { type ConcordanceOrder, printConcordance } from './print-concordance.ts';
export { printSlip, type SlipOrder } from './print-slip.ts';
export { readWording } from './wording.ts';
