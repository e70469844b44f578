import { gaugeBook } from '../gauges/index.ts';
import type { Imposed, Imposition, Paper } from '../press/index.ts';
import { Refusal, writeWhole } from '../project/index.ts';
import { readStatement } from '../quantity/index.ts';
import { type Io, say } from './io.ts';
import type { Outlet } from './outlet.ts';

/** What can be asked of a booklet that is printed to be folded. */
export interface ImposeOptions {
  readonly imposed?: boolean;
  readonly paperThickness?: string;
  readonly marks?: boolean;
  readonly signatures?: string;
}

/** Thinner than tissue or thicker than card stock, in millimeters: the point slipped, or inches. */
const likely = { low: 0.02, high: 0.5 };

/**
 * How the booklet is to be laid on sheets; null where that was not asked for. Fails with `Refusal`
 * for a thickness or a number that can't be meant, and for one that is given without `--imposed`.
 */
export function impositionOf(options: ImposeOptions): Omit<Imposition, 'title' | 'paper'> | null {
  const { imposed, paperThickness, marks, signatures } = options;
  if (imposed !== true) {
    const idle =
      (paperThickness !== undefined && '--paper-thickness') ||
      (signatures !== undefined && '--signatures') ||
      (marks === true && '--marks');
    if (idle) throw new Refusal(`${idle} is about sheets to fold`, `add --imposed to print them`);
    return null;
  }
  return {
    thicknessMm: paperThickness === undefined ? null : thicknessOf(paperThickness),
    sheetsInSignature: signatures === undefined ? null : sheetsOf(signatures),
    marks: marks === true,
  };
}

/** A bare number is in millimeters, as the option's help says; any length with its unit will do. */
function thicknessOf(text: string): number {
  const written = /^\d*\.?\d+$/.test(text.trim()) ? `${text.trim()} mm` : text;
  const reading = readStatement(written, { gauges: gaugeBook() });
  const nominal = reading.ok && reading.statement.form === 'exact' ? reading.statement : null;
  const mm = nominal?.dimension === 'length' ? nominal.nominal?.base.valueOf() : undefined;
  if (mm === undefined) {
    throw new Refusal(
      `--paper-thickness ${text} is no thickness`,
      'give that of one sheet in millimeters, such as 0.1 for ordinary paper, or with its unit: 0.004 in',
    );
  }
  if (mm < likely.low || mm > likely.high) {
    throw new Refusal(
      `--paper-thickness ${text} is ${mm < likely.low ? 'thinner than tissue' : 'thicker than card'}`,
      `one sheet of paper is ${likely.low} to ${likely.high} mm thick; measure ten sheets and divide`,
    );
  }
  return mm;
}

function sheetsOf(text: string): number {
  const sheets = /^[1-9]\d{0,2}$/.test(text.trim()) ? Number(text) : null;
  if (sheets === null) {
    throw new Refusal(
      `--signatures ${text} is no number of sheets`,
      'give the most sheets to fold together, such as 8',
    );
  }
  return sheets;
}

/** Lays a booklet's untagged pages on sheets. Fails with `PressStopped` where paper is too thick. */
export async function imposeBooklet(
  pages: Uint8Array,
  how: Omit<Imposition, 'title' | 'paper'>,
  booklet: { readonly title: string; readonly paper: Paper },
): Promise<Imposed> {
  const { impose } = await import('../press/index.ts');
  return impose(pages, { ...how, ...booklet });
}

/** Where the sheets go: beside the booklet that is read, `booklet-imposed.pdf`. */
export function imposedPath(path: string): string {
  return `${path.replace(/\.pdf$/i, '')}-imposed.pdf`;
}

/** Writes the sheets, where they have a place, and says how to print and fold them. */
export async function deliverImposed(
  imposed: Imposed,
  how: Omit<Imposition, 'title' | 'paper'>,
  { path, within }: Outlet,
  show: (path: string) => string,
  io: Io,
): Promise<void> {
  if (path !== null) {
    writeWhole(path, imposed.pdf, { within });
    io.stdout.write(`${show(path)}\n`);
  }
  const { howToFold } = await import('../press/index.ts');
  for (const line of howToFold(imposed, how)) say(io, line);
}
