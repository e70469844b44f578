import { levelName } from '../kinds/index.ts';
import type { Kind, KindOperation, Stage } from '../kinds/model.ts';
import type { Placed, PlacedEntry, PlacedNode } from '../text/index.ts';
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
    label: fields.text(under(value, 'label')),
    aliases: fields.texts(under(value, 'aliases')),
    stage: fields.text(under(value, 'stage')),
    hazards: under(value, 'hazards') === undefined ? null : fields.texts(under(value, 'hazards')),
    settings: fields.texts(under(value, 'settings')),
    conditions: fields.texts(under(value, 'conditions')),
    starts: fields.text(under(value, 'starts')),
    home: fields.texts(under(value, 'home')),
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

/** An operation of the sheet's own, as a kind would have it; its rules are not in it yet. */
export function ownOperation(rule: WorkRule, label: string, kind: Kind | null): KindOperation {
  return {
    name: levelName(rule.operation.value),
    label,
    aliases: rule.aliases.map(({ value }) => value),
    explain: rule.because?.value ?? '',
    stage: (rule.stage?.value ?? 'bench') as Stage,
    settings: rule.settings.flatMap(({ value }) => kind?.settingNamed(value)?.name ?? []),
    alsoMeasures: [],
    optional: false,
    hazards: [],
    after: [],
    before: new Map(),
    needs: [],
    needsSaid: new Map(),
    leaves: [],
    disturbsSaid: new Map(),
    disturbs: [],
    without: new Set(),
    steps: [],
    drawings: [],
  };
}

/**
 * The sheet's own operation that a heading calls, by its name, its label or another name; null where
 * none is. What the kind knows is never the sheet's own.
 */
export function ownOperationCalled(
  text: string,
  rules: readonly WorkRule[],
  kind: Kind | null,
): KindOperation | null {
  const plain = levelName(text);
  for (const rule of rules) {
    const { operation, label, aliases, conditions } = rule;
    if (label === null || conditions.length > 0) continue;
    const names = [operation.value, label.value, ...aliases.map(({ value }) => value)];
    if (!names.some((name) => levelName(name) === plain)) continue;
    if (kind?.operationNamed(operation.value)) continue;
    return ownOperation(rule, label.value, kind);
  }
  return null;
}
