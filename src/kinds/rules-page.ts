import type { Kind, KindOperation, OrderRule, ReasonedNeed, Strength } from './model.ts';
import { stateOf, whenAsked, whereSaid } from './rule-words.ts';

const strengths: Readonly<Record<Strength, string>> = {
  hard: 'hard',
  likely: 'likely',
  usual: 'custom',
};

/** Every rule of the order of work of some kinds, with its reason, as a page of Markdown. */
export function rulesPage(kinds: Iterable<Kind>): string {
  const parts = [
    '# Rules of the order of work',
    '',
    'Made from the kinds of unit by `RENEW_GOLDEN=1 npx vitest run test/docs`. All of it is common practice,',
    'no source. *Hard*: a part in the way, a state that a measurement needs, a setting that is moved. *Likely*:',
    'so on nearly every unit, and a warning at most. *Custom*: right manuals differ, and a note at most.',
    'Where a rule hangs on what the steps say, their words are given: a setting that is moved “where the steps',
    'say” them is moved by custom only where they do not, and a need asked for there is asked for nowhere else.',
    'A need “as it begins” is one of the first moment: what is measured goes on to another state.',
    '',
  ];
  for (const kind of kinds) parts.push(...kindRules(kind));
  return `${parts.join('\n').trimEnd()}\n`;
}

function kindRules(kind: Kind): readonly string[] {
  const lines = [`## ${kind.title}`, ''];
  const table = (title: string, rows: readonly string[]): void => {
    if (rows.length === 0) return;
    lines.push(
      `### ${title}`,
      '',
      '| rule | strength | reason |',
      '| --- | --- | --- |',
      ...rows,
      '',
    );
  };
  for (const operation of kind.operations.values())
    table(operation.label, operationRules(operation, kind));
  table(
    'Settings, whoever measures them',
    [...kind.settings.values()].flatMap(({ label, needs, countedFrom }) => [
      ...needs.map((need) => row(`${label} needs ${stateOf(need, kind)}${whenAsked(need)}`, need)),
      ...countedFrom.map((need) => row(`${label} is counted from ${stateOf(need, kind)}`, need)),
    ]),
  );
  table('States', stateRules(kind));
  table(
    'Stages',
    [...kind.stages].map(([stage, because]) => `| ${stage} | custom | ${because} |`),
  );
  return lines;
}

function operationRules(
  { after, needs, disturbs, disturbsSaid }: KindOperation,
  kind: Kind,
): readonly string[] {
  return [
    ...after.map((rule) =>
      row(`after ${kind.operations.get(rule.name)?.label ?? rule.name}`, rule),
    ),
    ...needs.map((need) => row(`needs ${stateOf(need, kind)}${whenAsked(need)}`, need)),
    ...disturbs.map((rule) =>
      row(
        `moves ${kind.settings.get(rule.name)?.label ?? rule.name}${whereSaid(disturbsSaid.get(rule.name))}`,
        rule,
      ),
    ),
  ];
}

function stateRules(kind: Kind): readonly string[] {
  return [...kind.parts.values()].flatMap(({ name, label, conditions }) =>
    [...conditions.values()].flatMap((condition) => {
      const own = `${label} ${condition.says}`;
      const follows = condition.follows.map((each) => {
        const led = { part: each.part, anyOf: [each.condition] };
        return `| ${own} brings about ${stateOf(led, kind)} | hard | ${each.because} |`;
      });
      const { comesFrom } = condition;
      return [
        ...condition.needs.map((need) =>
          row(`${own} needs ${stateOf(need, kind)}${whenAsked(need)}`, need),
        ),
        ...condition.after.map((rule) =>
          row(`${own} after ${kind.operations.get(rule.name)?.label ?? rule.name}`, rule),
        ),
        ...follows,
        ...condition.bars.map((need) => row(`${own} shuts out ${stateOf(need, kind)}`, need)),
        ...condition.disturbs.map((rule) =>
          row(`${own} moves ${kind.settings.get(rule.name)?.label ?? rule.name}`, rule),
        ),
        ...(comesFrom
          ? [row(`${own} comes from ${stateOf({ ...comesFrom, part: name }, kind)}`, comesFrom)]
          : []),
      ];
    }),
  );
}

function row(words: string, { strength, because }: OrderRule | ReasonedNeed): string {
  return `| ${words} | ${strengths[strength]} | ${because} |`;
}
