import type { Stage } from '../../kinds/model.ts';
import { freePairs } from '../../order/index.ts';
import type { OrderBox, OrderGraph } from './model.ts';

/** What each stage of the work is called where it is printed. */
export const stageTitles: Readonly<Record<Stage, string>> = {
  strip: 'Strip and inspect',
  bench: 'On the bench',
  'before-start': 'Before the first start',
  running: 'Running, hot',
  road: 'On the road',
  any: 'At any time',
};

/**
 * The graph of a sheet's operations as plain lines: every operation in working order under its
 * stage, with what it comes after, what it disturbs and what it does again, and at the end the
 * operations that may change places. Ends in a newline.
 */
export function listOrder(graph: OrderGraph): string {
  const byNumber = new Map(graph.boxes.map((box) => [box.number, box]));
  const named = (number: number): string => `${number} ${byNumber.get(number)?.label ?? ''}`.trim();
  const lines = [`${graph.title}: the order of work`];
  let stage: Stage | null = null;
  for (const box of graph.boxes) {
    if (box.stage !== stage) {
      stage = box.stage;
      lines.push('', stageTitles[stage]);
    }
    lines.push(`${String(box.number).padStart(4)}  ${box.label}`);
    const after = graph.before.filter(({ to }) => to === box.number);
    if (after.length > 0)
      lines.push(`      after: ${after.map(({ from }) => named(from)).join(', ')}`);
    const moved = graph.disturbs.filter(({ from }) => from === box.number);
    if (moved.length > 0)
      lines.push(
        `      disturbs: ${moved.map(({ to, settings }) => disturbed(named(to), settings, byNumber.get(to))).join(', ')}`,
      );
    if (box.again !== null) lines.push(`      again: ${named(box.again)}`);
  }
  lines.push('', ...freeLines(graph.boxes));
  return `${lines.join('\n')}\n`;
}

/** The operation that makes the settings; their names too where its own does not say them. */
function disturbed(name: string, settings: readonly string[], box: OrderBox | undefined): string {
  const said = settings.filter((setting) => setting !== box?.operation.label);
  return said.length === 0 ? name : `${name} (${said.join(', ')})`;
}

/** Each free pair once, gathered under the earlier of the two. */
function freeLines(boxes: readonly OrderBox[]): string[] {
  const first = boxes.filter(({ again }) => again === null);
  const byName = new Map(first.map((box) => [box.operation.name, box]));
  const pairs = freePairs(first.map(({ operation }) => operation));
  if (pairs.length === 0)
    return ['Free: none. Every operation has its one place within its stage.'];
  const groups = new Map<OrderBox, OrderBox[]>();
  for (const [one, two] of pairs) {
    const [a, b] = [byName.get(one), byName.get(two)];
    if (a && b) groups.set(a, [...(groups.get(a) ?? []), b]);
  }
  const numbers = (list: readonly OrderBox[]): string =>
    list.map(({ number }) => number).join(', ');
  return [
    `Free: ${pairs.length} ${pairs.length === 1 ? 'pair' : 'pairs'} within a stage may stand either way round.`,
    ...[...groups].map(
      ([box, others]) => `${String(box.number).padStart(4)}  ${box.label}: with ${numbers(others)}`,
    ),
  ];
}
