export { printBooklet } from './booklet/index.ts';
export { printCard, printCards } from './card/index.ts';
export { howToFold, type Imposed, type Imposition, impose } from './imposition/index.ts';
export type { CardReading, CardReadings, LeafMarks, Punch } from './orders/index.ts';
export { readWording } from './orders/index.ts';
export type {
  BookletOrder,
  Browser,
  CardOrder,
  EditionFacts,
  Flate,
  LastEdition,
  Paper,
  PartStore,
  PictureSource,
  Printed,
  PrintedBooklet,
  SheetToPrint,
  Templates,
} from './orders/model.ts';
export { PressStopped } from './orders/model.ts';
export { type PrintedGauges, printPaperGauges } from './paper-gauges/index.ts';
export { printSlip, type SlipOrder } from './slip/index.ts';
export { type ConcordanceOrder, printConcordance } from './sources/index.ts';
