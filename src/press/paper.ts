import type { Paper } from './orders.ts';

/** A paper size, upright, with the margins that each kind of print keeps; all in millimeters. */
export interface PaperSize {
  readonly name: Paper;
  readonly label: string;
  readonly widthMm: number;
  readonly heightMm: number;
  /** What CSS calls it: width and height with exact units. */
  readonly css: string;
  /** Whether it is of the small pair: type and margins follow. */
  readonly small: boolean;
}

/** ISO 216 for A4 and A5; ANSI/ASME Y14.1 A-size for letter; half letter is its half. */
export const papers: Readonly<Record<Paper, PaperSize>> = {
  letter: {
    name: 'letter',
    label: 'Letter',
    widthMm: 215.9,
    heightMm: 279.4,
    css: '8.5in 11in',
    small: false,
  },
  a4: { name: 'a4', label: 'A4', widthMm: 210, heightMm: 297, css: '210mm 297mm', small: false },
  'half-letter': {
    name: 'half-letter',
    label: 'half letter',
    widthMm: 139.7,
    heightMm: 215.9,
    css: '5.5in 8.5in',
    small: true,
  },
  a5: { name: 'a5', label: 'A5', widthMm: 148, heightMm: 210, css: '148mm 210mm', small: true },
};
