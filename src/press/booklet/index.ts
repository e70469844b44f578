export type { AltitudeTable } from './altitude-page.ts';
export type { ChangesPage } from './changes-page.ts';
export type { Chapter, ChapterOperation, ChapterSetting } from './chapter.ts';
export type { Fault } from './fault-finding.ts';
export type { FigureColumn } from './figure-column.ts';
export type { FormulaLine } from './formula-page.ts';
export type { GaugeTable } from './gauge-tables.ts';
export { printBooklet } from './print.ts';
export type { IndexLetter } from './subject-index.ts';
