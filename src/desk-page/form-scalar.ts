import { type PlacedNode, readYaml } from '../text/index.ts';

/** Where a scalar stands: on a line of its own key, or between brackets. */
export type ScalarPlace = 'block' | 'flow';

/** A line of text as one writes it: no line ends, no blanks at the ends. */
export function oneLine(text: string): string {
  return text.replace(/\s+/g, ' ').trim();
}

/**
 * A text as a YAML scalar that reads back as that text: plain where nothing can be mistaken, else in quotes,
 * of the sort that stood there if one did.
 */
export function scalarFor(
  text: string,
  place: ScalarPlace,
  more: { readonly number?: boolean; readonly quote?: '"' | "'" | null } = {},
): string {
  const single = `'${text.replaceAll("'", "''")}'`;
  const double = JSON.stringify(text);
  const plain = more.quote == null ? [text] : [];
  const quoted = more.quote === '"' || text.includes("'") ? [double, single] : [single, double];
  for (const written of [...plain, ...quoted]) {
    if (readsBack(written, text, place, more.number === true || more.quote != null)) return written;
  }
  return double;
}

function readsBack(written: string, text: string, place: ScalarPlace, anyType: boolean): boolean {
  const yaml = place === 'flow' ? `k: { v: ${written}, w: 1 }\n` : `k: ${written}\nw: 1\n`;
  const { root, problems } = readYaml(yaml);
  if (problems.length > 0 || root?.kind !== 'map') return false;
  const outer = root.entries.get('k')?.value;
  const node: PlacedNode | undefined =
    place === 'flow' ? (outer?.kind === 'map' ? outer.entries.get('v')?.value : undefined) : outer;
  const after =
    place === 'flow' && outer?.kind === 'map' ? outer.entries.get('w') : root.entries.get('w');
  if (node?.kind !== 'scalar' || node.text !== text || after === undefined) return false;
  return anyType || node.quoted || typeof node.value === 'string';
}
