import { basename } from 'node:path';
import { drawOrder, listOrder } from '../../press/order-picture/index.ts';
import { orderGraph } from '../../press/order-picture/model.ts';
import { Projects, Refusal, sheetNamed, writeWhole } from '../../project/index.ts';
import { hand, type Io, say } from '../io.ts';
import { candidate, outPath } from '../printing.ts';
import type { ExitStatus } from '../run.ts';

export interface OrderOptions {
  /** Where the picture goes; `-` is standard output. */
  readonly out?: string;
  /** A list on standard output, or in `out`, in place of the picture. */
  readonly text?: boolean;
}

/**
 * `gaugeleaf order`: what must precede what on a sheet and what disturbs what, as a picture or as a
 * list. A sheet with findings is drawn like any other: the picture helps to mend it.
 */
export async function order(name: string, options: OrderOptions, io: Io): Promise<ExitStatus> {
  const { project, path } = sheetNamed(name, new Projects(io.cwd), io.cwd);
  const found = candidate(project, path, io);
  if (found === null) return 2;
  const { sheet } = found;
  const { kind } = sheet;
  if (kind === null) {
    const said = sheet.unit.kind?.value ?? null;
    throw new Refusal(
      said === null
        ? `${sheet.file} does not say what kind of unit it is about, and the order of work comes from the kind`
        : `${sheet.file} is about a kind of unit that is not known, ${said}`,
      `say \`kind:\` under \`unit:\`: ${[...project.kinds.keys()].join(', ')}`,
    );
  }
  const graph = orderGraph(sheet, kind);
  if (graph.boxes.length === 0) {
    throw new Refusal(
      `${sheet.file} has no operation that the kind ${kind.name} knows`,
      `give each piece of work a \`##\` heading; gaugeleaf check ${sheet.file} names those it does not know`,
    );
  }
  const list = options.text === true;
  const id = basename(path).replace(/\.md$/i, '');
  const out =
    list && options.out === undefined
      ? null
      : outPath(options.out, `${id}-order.${list ? 'txt' : 'svg'}`, project, io);
  const drawn = list ? null : await drawOrder(graph, { prefix: 'order', alone: true });
  const text = drawn?.svg ?? listOrder(graph);
  const unknown = sheet.operations.filter(({ known }) => known === null);
  if (unknown.length > 0) {
    const headings = unknown.map(({ heading }) => `"${heading.value}"`).join(', ');
    say(io, `note: left out, for the kind ${kind.name} does not know it: ${headings}`);
  }
  if (out === null) {
    hand(io, text);
    return 0;
  }
  writeWhole(out, text);
  io.stdout.write(`${project.show(out)}\n`);
  const many = graph.boxes.length === 1 ? '1 operation' : `${graph.boxes.length} operations`;
  say(
    io,
    `${many}: solid arrows for what must be done first, dashed for what disturbs; --text lists the same.`,
  );
  return 0;
}
