import type { Run } from '../browser/index.ts';
import { type DensityName, densityNames } from '../lettering/index.ts';
import type { CardModel } from './model.ts';
import { type Block, packed, type Side } from './pack.ts';
import { page } from './page-script.ts';

/** How much a table of settings has on the front: what it leaves stands behind the work. */
const tableForms = ['full', 'spare', 'bare'] as const;
type TableForm = (typeof tableForms)[number];

/** How the front of a card is set. */
export interface Front {
  readonly density: DensityName;
  readonly table: TableForm;
  /** Of the strip of hazards. */
  readonly strip: DensityName;
  /** The drawings that stand under the table, by their indexes. */
  readonly drawings: readonly number[];
  /** The sides that it takes: more than one only where no form of the table has room on one. */
  readonly sides: number;
}

/** How a card was laid out. */
export interface Fitted {
  readonly front: Front;
  /** Of the sides behind the front. */
  readonly density: DensityName;
  /** All sides. */
  readonly sides: number;
  /** Blocks that are higher than a column. */
  readonly broken: number;
}

/** A strip of hazards is no higher; the issue's own demand, no source. */
const stripMm = 25;
/** So many drawings at most, and so far apart. */
const mostDrawings = 3;
const apartMm = 4;
/** A drawing's line of words. */
const captionMm = 6;

const px = (mm: number) => (mm * 96) / 25.4;
const mm = (pixels: number) => (pixels * 25.4) / 96;

/**
 * Lays a loaded card out on its sides: the front with hazards, settings and drawings, and behind it the work
 * in columns, no task broken. What does not fit goes to a further side, and type gives way last.
 */
export async function layOut(run: Run, model: CardModel): Promise<Fitted> {
  const { paper, margins } = model;
  const sidePx = px(paper.heightMm - margins.topMm - margins.bottomMm);
  const fitted = await fitFront(run, model, sidePx);
  const front = fitted ?? (await splitFront(run, model, sidePx));
  if (front.sides === 1) await run.ask(`(${page}).setFront(${JSON.stringify(front)})`);
  const { density, sides, broken, freePx } = await fitWork(run, model, front, sidePx);
  const left = model.drawings.flatMap((_, index) =>
    front.drawings.includes(index) ? [] : [index],
  );
  const below = rowsOf(model, left, mm(freePx) - 2 * apartMm);
  // A leaf whose back would be empty has what drawings are left there.
  const others = left.filter((index) => !below.includes(index));
  const taken = front.sides + sides.length;
  const alone = taken % 2 === 1 ? rowsOf(model, others, mm(sidePx) - headMm(model)) : [];
  const onFront = front.sides > 1 ? front.drawings : [];
  const plan = { density, sides, onFront, below, alone, sidePx };
  await run.ask(`(${page}).arrange(${JSON.stringify(plan)})`);
  return { front, density, sides: taken + (alone.length > 0 ? 1 : 0), broken };
}

function headMm({ hanging }: CardModel): number {
  return hanging.depthMm + apartMm;
}

/** Densities that drawings are not given up for. */
const liked = densityNames.slice(0, 3);

/** The front on one side, in the fullest form of the table that has room there; null where none has. */
async function fitFront(run: Run, model: CardModel, sidePx: number): Promise<Front | null> {
  const strip = await fitStrip(run);
  const widthMm = model.paper.widthMm - model.margins.innerMm - model.margins.outerMm;
  for (const table of tableForms) {
    const fronts: Front[] = [];
    for (const density of densityNames) {
      const plan = { density, table, strip };
      const freeMm = mm(sidePx - (await frontPx(run, plan)));
      if (freeMm < 0) continue;
      const drawings = await drawn(run, plan, drawingsFor(model, widthMm, freeMm), sidePx);
      fronts.push({ ...plan, drawings, sides: 1 });
    }
    const large = fronts.filter(({ density }) => liked.includes(density));
    const best =
      large.find(({ drawings }) => drawings.length >= 2) ??
      large.find(({ drawings }) => drawings.length === 1) ??
      fronts[0];
    if (best !== undefined) return best;
  }
  return null;
}

/** A table that is too long for one side goes on overleaf, and then with all that it says. */
async function splitFront(run: Run, model: CardModel, sidePx: number): Promise<Front> {
  const plan = { density: 'close', table: 'full', strip: await fitStrip(run) } as const;
  await run.ask(`(${page}).setFront(${JSON.stringify({ ...plan, drawings: [] })})`);
  const split = (await run.ask(`(${page}).splitFront(${JSON.stringify({ sidePx })})`)) as {
    sides: number;
    freePx: number;
  };
  const all = model.drawings.map((_, index) => index);
  const drawings = rowsOf(model, all, mm(split.freePx) - 2 * apartMm);
  return { ...plan, drawings, sides: split.sides };
}

async function fitStrip(run: Run): Promise<DensityName> {
  for (const density of densityNames) {
    const height = Number(await run.ask(`(${page}).stripPx('${density}')`));
    if (mm(height) <= stripMm) return density;
  }
  return 'tight';
}

async function frontPx(
  run: Run,
  front: Pick<Front, 'density' | 'table' | 'strip'>,
): Promise<number> {
  return Number(await run.ask(`(${page}).frontPx(${JSON.stringify(front)})`));
}

/** As many of some drawings as the front really has room for: the last are given up first. */
async function drawn(
  run: Run,
  front: Pick<Front, 'density' | 'table' | 'strip'>,
  drawings: readonly number[],
  sidePx: number,
): Promise<readonly number[]> {
  for (let count = drawings.length; count > 0; count--) {
    const some = drawings.slice(0, count);
    const asked = JSON.stringify({ ...front, drawings: some });
    if (Number(await run.ask(`(${page}).setFront(${asked})`)) <= sidePx) return some;
  }
  return [];
}

/** The drawings, those first that are ranked first, that have room side by side in a band of some height. */
function drawingsFor(model: CardModel, widthMm: number, freeMm: number): number[] {
  const taken: number[] = [];
  let left = widthMm;
  for (const [index, drawing] of model.drawings.entries()) {
    const breadth = drawing.widthMm + (taken.length === 0 ? 0 : apartMm);
    if (drawing.heightMm + captionMm > freeMm || breadth > left) continue;
    taken.push(index);
    left -= breadth;
    if (taken.length === mostDrawings) break;
  }
  return taken;
}

/** Of some drawings those that have room in rows of some height together, in their order. */
function rowsOf(
  { drawings, paper, margins }: CardModel,
  indexes: readonly number[],
  heightMm: number,
): number[] {
  const widthMm = paper.widthMm - margins.innerMm - margins.outerMm;
  const taken: number[] = [];
  let [left, rowMm, usedMm] = [widthMm, 0, 0];
  for (const index of indexes) {
    const drawing = drawings[index];
    if (drawing === undefined) continue;
    const ofOwn = drawing.heightMm + captionMm;
    const opens = drawing.widthMm > left;
    const above = opens ? usedMm + rowMm + apartMm : usedMm;
    const row = opens ? ofOwn : Math.max(rowMm, ofOwn);
    if (above + row > heightMm) continue;
    taken.push(index);
    [usedMm, rowMm] = [above, row];
    left = (opens ? widthMm : left) - drawing.widthMm - apartMm;
  }
  return taken;
}

interface Work {
  /** What is left free on the last side. */
  readonly freePx: number;
  readonly density: DensityName;
  readonly sides: readonly Side[];
  readonly broken: number;
}

/**
 * The work on the back in one of the three roomiest densities; else on three sides behind the front, in
 * the roomiest that has room there, for two drawings too where the front has none; else on as many as the
 * middle one needs.
 */
async function fitWork(run: Run, model: CardModel, front: Front, sidePx: number): Promise<Work> {
  const columns = model.paper.small ? 1 : 2;
  const works = new Map<DensityName, Work>();
  for (const density of densityNames) {
    const ask = JSON.stringify({ density, columns, table: front.table, sidePx });
    const measured = (await run.ask(`(${page}).measureWork(${ask})`)) as {
      blocks: readonly Block[];
      headPx: number;
      footPx: number;
    };
    const { blocks, headPx, footPx } = measured;
    const heightPx = () => sidePx - headPx - 2;
    const sides = packed(blocks, { columns, heightPx, footPx });
    const broken = blocks.filter((block) => block.px > heightPx()).length;
    const used = (sides.at(-1) ?? []).map((column) =>
      column.reduce((sum, at) => sum + (blocks[at]?.px ?? 0), 0),
    );
    const freePx = heightPx() - Math.max(0, ...used) - footPx;
    works.set(density, { density, sides, broken, freePx });
  }
  const left = model.drawings.flatMap((_, at) => (front.drawings.includes(at) ? [] : [at]));
  const wanted = Math.min(2, model.drawings.length) - front.drawings.length;
  const shows = ({ sides, freePx }: Work) =>
    sides.length % 2 === 0 || rowsOf(model, left, mm(freePx) - 2 * apartMm).length >= wanted;
  const atMost = (count: number, names: readonly DensityName[]) =>
    names.flatMap((name) => works.get(name) ?? []).filter(({ sides }) => sides.length <= count);
  return (
    atMost(1, liked)[0] ??
    atMost(3, densityNames).find(shows) ??
    atMost(3, densityNames)[0] ??
    works.get('regular') ?? { density: 'regular', sides: [[[]]], broken: 0, freePx: 0 }
  );
}
