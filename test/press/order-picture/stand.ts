import { readdirSync, readFileSync } from 'node:fs';
import { gaugeBook } from '../../../src/gauges/index.ts';
import { builtInKinds } from '../../../src/kinds/index.ts';
import type { Kind, KindOperation, Stage } from '../../../src/kinds/model.ts';
import type { OrderBox, OrderGraph } from '../../../src/press/order-picture/model.ts';
import { readSheet } from '../../../src/sheet/index.ts';
import type { Sheet } from '../../../src/sheet/model.ts';

const kinds = builtInKinds();
const folder = new URL('../../../sheets/', import.meta.url);

/** A sheet from text, with its kind. Fails where it names none that is known. */
export function sheetAndKind(text: string, file: string): { sheet: Sheet; kind: Kind } {
  const sheet = readSheet(text, file, { kinds, gauges: gaugeBook(), wireGauge: null });
  const kind = kinds.get(sheet.unit.kind?.value ?? '');
  if (!kind) throw new Error(`${file} names no kind that is known`);
  return { sheet, kind };
}

/** The demo's sheets, by file name. */
export const demoSheets: readonly (readonly [string, string])[] = readdirSync(folder)
  .filter((name) => name.endsWith('.md'))
  .sort()
  .map((name) => [name, readFileSync(new URL(name, folder), 'utf8')]);

/** A box that stands for an operation nobody's kind has. */
export function box(
  number: number,
  stage: Stage,
  label: string,
  again: number | null = null,
): OrderBox {
  const operation: KindOperation = {
    name: `operation-${again ?? number}`,
    label,
    aliases: [],
    explain: '',
    stage,
    settings: [],
    alsoMeasures: [],
    optional: false,
    hazards: [],
    after: [],
    before: new Map(),
    needs: [],
    needsSaid: new Map(),
    disturbsSaid: new Map(),
    leaves: [],
    disturbs: [],
    without: new Set(),
    steps: [],
    drawings: [],
  };
  return { number, label, stage, again, operation };
}

/** A graph with one of everything: a way around, a repeat, a named setting, two lines, a stage skipped. */
export const sample: OrderGraph = {
  title: 'Tarn T64, Holme Seven',
  boxes: [
    box(2, 'strip', 'Take it down'),
    box(3, 'bench', 'Straighten the float before anything else'),
    box(4, 'bench', 'Level'),
    box(5, 'bench', 'Pump'),
    box(6, 'bench', 'Rods'),
    box(8, 'running', 'Speed'),
    box(9, 'running', 'Mixture'),
    box(10, 'running', 'Speed, again', 8),
    box(11, 'road', 'Try it'),
  ],
  before: [
    { from: 2, to: 3 },
    { from: 3, to: 4 },
    { from: 2, to: 5 },
    { from: 5, to: 6 },
    { from: 4, to: 8 },
    { from: 6, to: 8 },
    { from: 4, to: 9 },
    { from: 8, to: 10 },
    { from: 9, to: 10 },
    { from: 8, to: 11 },
  ],
  disturbs: [
    { from: 5, to: 6, settings: ['Rods'], harmless: false },
    { from: 6, to: 4, settings: ['Fuel height'], harmless: false },
    { from: 5, to: 9, settings: ['Mixture'], harmless: true },
    { from: 9, to: 8, settings: ['Speed'], harmless: false },
  ],
};
