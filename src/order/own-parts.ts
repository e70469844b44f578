import type { Kind, KindPart, PartCondition } from '../kinds/model.ts';
import type { WorkRule } from '../sheet/model.ts';

/** The parts of a kind with those that a sheet declares under `work:`; the kind's own where it declares none. */
export function ownParts(rules: readonly WorkRule[], kind: Kind): Kind['parts'] {
  const own = rules.filter(({ conditions }) => conditions.length > 0);
  if (own.length === 0) return kind.parts;
  return new Map([
    ...kind.parts,
    ...own.map((rule): readonly [string, KindPart] => {
      const name = condition(rule.operation.value);
      return [
        name,
        {
          name,
          label: rule.label?.value ?? rule.operation.value.replaceAll('-', ' '),
          aliases: rule.aliases.map(({ value }) => value),
          starts: rule.starts === null ? null : condition(rule.starts.value),
          ifFeature: [],
          onlyIfNamed: false,
          wordsCount: false,
          homeAtStart: true,
          home: rule.home.map(({ value }) => condition(value)),
          reads: new Map(),
          conditions: new Map(rule.conditions.map(({ value }) => [condition(value), plain(value)])),
        },
      ];
    }),
  ]);
}

function condition(text: string): string {
  return text
    .trim()
    .toLowerCase()
    .replace(/[\s_]+/g, '-');
}

function plain(text: string): PartCondition {
  return {
    name: condition(text),
    aliases: [],
    countsAs: [],
    says: text,
    instruction: null,
    needs: [],
    after: [],
    comesFrom: null,
    disturbs: [],
    follows: [],
    bars: [],
    startsUp: false,
  };
}
