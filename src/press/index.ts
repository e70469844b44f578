export type { CardReading, CardReadings } from './card-readings.ts';
export type {
  BookletOrder,
  Browser,
  CardOrder,
  EditionFacts,
  Paper,
  PictureSource,
  Printed,
  SheetToPrint,
  Templates,
} from './orders.ts';
export { PressStopped } from './orders.ts';
export { printBooklet } from './print-booklet.ts';
export { printCard } from './print-card.ts';
