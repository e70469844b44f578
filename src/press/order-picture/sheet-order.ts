import type { Kind } from '../../kinds/model.ts';
import type { Operation, Sheet } from '../../sheet/model.ts';
import type { Choice } from '../../text/index.ts';
import { type OrderGraph, orderGraph } from './model.ts';

/** The order of a sheet's work, and the headings that have no place in it. */
export interface SheetOrder {
  readonly graph: OrderGraph;
  readonly kind: Kind;
  readonly unknown: readonly Operation[];
}

/** The order of a sheet's work, or why none can be told; `kinds` are the names that a sheet may give. */
export function sheetOrder(sheet: Sheet, kinds: Iterable<string>): Choice<SheetOrder> {
  const { kind, file } = sheet;
  if (kind === null) {
    const said = sheet.unit.kind?.value ?? null;
    return {
      ok: false,
      message:
        said === null
          ? `${file} does not say what kind of unit it is about, and the order of work comes from the kind`
          : `${file} is about a kind of unit that is not known, ${said}`,
      fix: `say \`kind:\` under \`unit:\`: ${[...kinds].join(', ')}`,
    };
  }
  const graph = orderGraph(sheet, kind);
  if (graph.boxes.length === 0) {
    return {
      ok: false,
      message: `${file} has no operation that the kind ${kind.name} knows`,
      fix: `give each piece of work a \`##\` heading; gaugeleaf check ${file} names those it does not know`,
    };
  }
  const unknown = sheet.operations.filter(({ known }) => known === null);
  return { ok: true, value: { graph, kind, unknown } };
}
