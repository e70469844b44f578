import { withFonts } from '../../press/html/index.ts';
import { drawOrder, listOrder, sheetOrder } from '../../press/order-picture/index.ts';
import { fileId, Projects, readTemplates, sheetNamed, writeWhole } from '../../project/index.ts';
import { visibleLines } from '../../text/index.ts';
import { chosen } from '../chosen.ts';
import { hand, type Io, say } from '../io.ts';
import { outlet } from '../outlet.ts';
import { candidate } from '../printing.ts';
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
  const { graph, kind, unknown } = chosen(sheetOrder(sheet, project.kinds.keys()));
  const list = options.text === true;
  const id = fileId(path);
  const { path: out, within } =
    list && options.out === undefined
      ? { path: null, within: project.root }
      : outlet(options.out, `${id}-order.${list ? 'txt' : 'svg'}`, project, io);
  const drawn = list ? null : await drawOrder(graph, { prefix: 'order', alone: true });
  const text =
    drawn === null
      ? visibleLines(listOrder(graph))
      : withFonts(drawn.svg, readTemplates(project.root));
  if (unknown.length > 0) {
    const headings = unknown.map(({ heading }) => `"${heading.value}"`).join(', ');
    say(io, `note: left out, for the kind ${kind.name} does not know it: ${headings}`);
  }
  if (out === null) {
    hand(io, text);
    return 0;
  }
  writeWhole(out, text, { within });
  io.stdout.write(`${project.show(out)}\n`);
  const many = graph.boxes.length === 1 ? '1 operation' : `${graph.boxes.length} operations`;
  say(
    io,
    `${many}: solid arrows for what must be done first, dashed for what disturbs; --text lists the same.`,
  );
  return 0;
}
