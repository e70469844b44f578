import type { Run } from '../browser/index.ts';
import type { CardModel } from './model.ts';
import { page } from './page-script.ts';

/** What is measured of a card that is laid out. */
export interface CardMeasures {
  /** Where the table of settings begins, in percent of the front's height. */
  readonly tableStartPercent: number;
  readonly tableOnFront: boolean;
  /** Values that run into what is to be written beside them. */
  readonly overCells: number;
  readonly stripMm: number;
  /** The smallest cell to write in. */
  readonly writeInMm: { readonly width: number; readonly height: number };
  /** Tasks that do not stand in one column. */
  readonly broken: number;
  /** Steps that do not begin a line of their own. */
  readonly runIn: number;
  readonly steps: number;
  readonly drawings: number;
}

interface Asked extends Omit<CardMeasures, 'tableStartPercent' | 'stripMm' | 'writeInMm'> {
  readonly tableStart: number;
  readonly stripPx: number;
  readonly writeInPx: { readonly width: number; readonly height: number } | null;
}

/** Measures the page, which still is as it is printed. */
export async function measured(run: Run, { paper, margins }: CardModel): Promise<CardMeasures> {
  const px = (mm: number) => (mm * 96) / 25.4;
  const sizes = {
    sidePx: px(paper.heightMm - margins.topMm - margins.bottomMm),
    topPx: px(margins.topMm),
    pagePx: px(paper.heightMm),
  };
  const asked = (await run.ask(`(${page}).measures(${JSON.stringify(sizes)})`)) as Asked;
  const { tableStart, stripPx, writeInPx, ...rest } = asked;
  return {
    ...rest,
    tableStartPercent: tenth(tableStart * 100),
    stripMm: tenth((stripPx * 25.4) / 96),
    writeInMm: {
      width: tenth(((writeInPx?.width ?? 0) * 25.4) / 96),
      height: tenth(((writeInPx?.height ?? 0) * 25.4) / 96),
    },
  };
}

function tenth(number: number): number {
  return Math.round(number * 10) / 10;
}
