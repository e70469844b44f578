import { describe, expect, test } from 'vitest';
import { workingOperations } from '../../../src/order/index.ts';
import { listOrder } from '../../../src/press/order-picture/list.ts';
import { orderGraph } from '../../../src/press/order-picture/model.ts';
import { tasksOf } from '../../../src/sheet/index.ts';
import { demoSheets, sample, sheetAndKind } from './stand.ts';

const head = `---
gaugeleaf: 1
sheet: tarn-t64
title: Tarn T64
unit: { kind: carburetor, maker: Tarn, model: T64, features: [two-barrel, downdraft] }
settings:
  idle-speed: { value: 500 rpm }
---
`;

function graphOf(headings: readonly string[], rules = '') {
  const work = headings.map((heading) => `## ${heading}\n\n1. Do it.\n`).join('\n');
  const front = head.replace(/---\n$/, `${rules}---\n`);
  const { sheet, kind } = sheetAndKind(`${front}\n# Tarn T64\n\n${work}`, 'tarn-t64.md');
  return orderGraph(sheet, kind);
}

const written = (pairs: readonly { from: number; to: number }[]) =>
  pairs.map(({ from, to }) => `${from}>${to}`);

describe('the graph of a demo sheet', () => {
  test.each(demoSheets)('%s has every operation, and says all that the kind asks', (file, text) => {
    const { sheet, kind } = sheetAndKind(text, file);
    const graph = orderGraph(sheet, kind);
    const { numberOf } = tasksOf(sheet);
    expect(graph.boxes.map(({ number }) => number)).toEqual(
      workingOperations(sheet, kind).map(({ index }) => numberOf(index)),
    );
    // Every pair of the kind's `after`, worked out here anew, is joined by a way of arrows.
    const ways = waysOf(graph.before);
    const first = new Map<string, number>();
    for (const { again, operation, number } of graph.boxes)
      if (again === null) first.set(operation.name, number);
    for (const { number, operation, again } of graph.boxes) {
      if (again !== null) expect(ways, file).toContain(`${again}>${number}`);
      else
        for (const [earlier, { strength }] of operation.before) {
          // What is merely usual has no arrow: it may stand either way round.
          if (strength === 'usual') continue;
          const from = first.get(earlier);
          if (from !== undefined) expect(ways, file).toContain(`${from}>${number}`);
        }
    }
    // And every setting that an operation disturbs and the sheet makes has its arrow.
    for (const { number, operation } of graph.boxes) {
      for (const { name } of operation.disturbs) {
        const label = kind.settings.get(name)?.label;
        const makers = graph.boxes.filter((each) => each.operation.settings.includes(name));
        if (makers.length === 0 || operation.settings.includes(name)) continue;
        const own = graph.disturbs.filter(({ from }) => from === number);
        expect(own.flatMap(({ settings }) => settings)).toContain(label);
      }
    }
  });
});

/** Floyd and Warshall's closure: `from>to` for every pair joined by a way. */
function waysOf(pairs: readonly { from: number; to: number }[]): string[] {
  const ways = new Set(written(pairs));
  const nodes = [...new Set(pairs.flatMap(({ from, to }) => [from, to]))];
  for (const over of nodes)
    for (const from of nodes)
      for (const to of nodes)
        if (ways.has(`${from}>${over}`) && ways.has(`${over}>${to}`)) ways.add(`${from}>${to}`);
  return [...ways];
}

describe('the graph of a sheet', () => {
  test('numbers boxes as the booklet numbers tasks, and leaves out what is no work', () => {
    const graph = graphOf(['Identification', 'Strip', 'Polishing the badge', 'Float level']);
    expect(graph.boxes.map(({ number, label }) => `${number} ${label}`)).toEqual([
      '2 Strip',
      '4 Float level',
    ]);
    expect(written(graph.before)).toEqual(['2>4']);
  });

  test('joins a repeat to what it repeats and to what disturbed that', () => {
    const graph = graphOf([
      'First start',
      'Idle speed',
      'Idle mixture',
      'Idle speed, again {#idle-speed}',
    ]);
    expect(graph.boxes.map(({ again }) => again)).toEqual([null, null, null, 2]);
    expect(graph.disturbs).toEqual([{ from: 3, to: 2, settings: ['Idle speed'], harmless: false }]);
    expect(new Set(written(graph.before))).toEqual(new Set(['1>2', '1>3', '2>4', '3>4']));
  });

  test('keeps an arrow that the sheet goes against: it is the picture of a fault', () => {
    const graph = graphOf(['Metering rods', 'Pump stroke']);
    expect(written(graph.before)).toEqual(['2>1']);
  });

  test('goes by the rules that the sheet adds, and without those it overrules', () => {
    const work = ['Pump stroke', 'Metering rods'];
    const rule = (without: string) =>
      `work:\n  metering-rods: { without: { ${without} }, because: The rods hang on a lever of their own. }\n`;
    expect(written(graphOf(work, rule('after: [pump-stroke]')).before)).toEqual([]);
    expect(
      written(graphOf(work, 'work:\n  metering-rods: { disturbs: [pump-stroke] }\n').disturbs),
    ).toEqual(['1>2', '2>1']);
  });

  test('points a disturbance at what is spoiled, or else at what must come later', () => {
    expect(written(graphOf(['Pump stroke', 'Metering rods']).disturbs)).toEqual(['1>2']);
    expect(written(graphOf(['Metering rods', 'Pump stroke']).disturbs)).toEqual(['2>1']);
  });
});

describe('the list', () => {
  test('says of every operation what it comes after, disturbs and repeats', () => {
    expect(listOrder(sample)).toBe(`Tarn T64, Holme Seven: the order of work

Strip and inspect
   2  Take it down

On the bench
   3  Straighten the float before anything else
      after: 2 Take it down
   4  Level
      after: 3 Straighten the float before anything else
   5  Pump
      after: 2 Take it down
      disturbs: 6 Rods, 9 Mixture
   6  Rods
      after: 5 Pump
      disturbs: 4 Level (Fuel height)

Running, hot
   8  Speed
      after: 4 Level, 6 Rods
   9  Mixture
      after: 4 Level
      disturbs: 8 Speed
  10  Speed, again
      after: 8 Speed, 9 Mixture
      again: 8 Speed

On the road
  11  Try it
      after: 8 Speed

Free: 7 pairs within a stage may stand either way round.
   3  Straighten the float before anything else: with 4, 5, 6
   4  Level: with 5, 6
   5  Pump: with 6
   8  Speed: with 9
`);
  });

  test('counts a pair as free only where neither waits for the other', () => {
    expect(listOrder(graphOf(['Pump stroke', 'Metering rods', 'Float level']))).toContain(
      'Free: 2 pairs within a stage may stand either way round.\n   1  Pump stroke: with 3\n   2  Metering rods: with 3\n',
    );
    expect(listOrder(graphOf(['Pump stroke', 'Metering rods']))).toContain('Free: none.');
  });
});
