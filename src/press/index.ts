export { printBooklet } from './booklet/index.ts';
export { keepBrowser } from './browser/index.ts';
export { printCards } from './card/index.ts';
export { howToFold, type Imposed, type Imposition, impose } from './imposition/index.ts';
export type { CardReading, CardReadings } from './orders/index.ts';
export { readWording } from './orders/index.ts';
export type {
  Browser,
  CardOrder,
  EditionFacts,
  Flate,
  LastEdition,
  Paper,
  PartStore,
  PictureSource,
  Printed,
  Proofs,
  Punch,
  SheetToPrint,
  Templates,
} from './orders/model.ts';
export { PressStopped } from './orders/model.ts';
export { printPaperGauges } from './paper-gauges/index.ts';
export { printSlip, type SlipOrder } from './slip/index.ts';
export { printConcordance } from './sources/index.ts';
