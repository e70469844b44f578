import { entriesOf, under } from '../sheet/index.ts';
import { type PlacedNode, readYaml } from '../text/index.ts';

/**
 * What a bench record read of its unit as it was left, setting by setting, as written: one figure each. What was
 * tried with gauges that went in or did not is no figure, nor is what was read place by place. Takes what it can
 * of a text that is no good record; `record` tells what is wrong with it.
 */
export function leftTexts(text: string): readonly (readonly [setting: string, text: string])[] {
  const base = text.startsWith('\ufeff') ? 1 : 0;
  const { root } = readYaml(text.slice(base), base);
  return [...entriesOf(under(root, 'settings'))].flatMap(([name, { value }]) => {
    const left = scalarOf(under(value, 'left'));
    const figure = /^as found$/i.test(left) ? scalarOf(under(value, 'found')) : left;
    return figure === '' ? [] : [[name, figure] as const];
  });
}

function scalarOf(node: PlacedNode | undefined): string {
  return node?.kind === 'scalar' ? node.text.trim() : '';
}
