import type { Placed } from '../text/span.ts';
import type { PlacedEntry, PlacedNode } from '../text/yaml-nodes.ts';
import { entriesOf, type Fields, under } from './fields.ts';
import type { RuledState, WorkRule } from './model.ts';

/** The sheet's own rules of the order of work, in the order they are written. */
export function readWorkRules(node: PlacedNode | undefined, fields: Fields): readonly WorkRule[] {
  return [...entriesOf(node)].map(([name, entry]) => readRule(name, entry, fields));
}

function readRule(name: string, { key, value }: PlacedEntry, fields: Fields): WorkRule {
  const without = under(value, 'without');
  return {
    operation: { value: name, span: key.span, source: name },
    after: fields.texts(under(value, 'after')),
    needs: readStates(under(value, 'needs'), fields),
    leaves: readStates(under(value, 'leaves'), fields),
    disturbs: fields.texts(under(value, 'disturbs')),
    without: {
      after: fields.texts(under(without, 'after')),
      needs: fields.texts(under(without, 'needs')),
      disturbs: fields.texts(under(without, 'disturbs')),
    },
    because: fields.text(under(value, 'because')),
    span: { start: key.span.start, end: Math.max(key.span.end, value.span.end) },
  };
}

function readStates(node: PlacedNode | undefined, fields: Fields): readonly RuledState[] {
  return [...entriesOf(node)].map(([name, { key, value }]) => {
    const part: Placed<string> = { value: name, span: key.span, source: name };
    return { part, conditions: fields.texts(value) };
  });
}
