import type { Dimension } from '../quantity/model.ts';
import type {
  ConditionData,
  NeedData,
  NeedsData,
  PartData,
  StateData,
  StatesData,
} from './data.ts';
import type {
  Following,
  KindPart,
  OrderRule,
  PartCondition,
  ReasonedNeed,
  StateNeed,
  StateTerm,
  Strength,
} from './model.ts';

/** One name or a list of them as a list; empty for nothing. */
export function listOf(any: string | readonly string[] | undefined): readonly string[] {
  return any === undefined ? [] : typeof any === 'string' ? [any] : any;
}

/** Parts with any of some conditions each, in the order of the data. */
export function statesFrom(states: StatesData | undefined): readonly StateNeed[] {
  return Object.entries(states ?? {}).map(([part, any]) => ({ part, anyOf: listOf(any) }));
}

/** Parts with one condition each; of a list the first. */
export function termsFrom(states: StatesData | undefined): readonly StateTerm[] {
  return statesFrom(states).map(({ part, anyOf }) => ({ part, condition: anyOf[0] ?? '' }));
}

/** Needs with their reasons, in the order of the data; of custom where `strength` says so. */
export function needsFrom(
  needs: NeedsData | undefined,
  strength: Strength = 'hard',
): readonly ReasonedNeed[] {
  return Object.entries(needs ?? {}).map(([part, need]) => needFrom(part, need, strength));
}

function needFrom(part: string, need: NeedData, strength: Strength): ReasonedNeed {
  return {
    part,
    anyOf: listOf(need.is),
    noneOf: listOf(need.not),
    because: need.because,
    strength: strength === 'hard' && need.likely ? 'likely' : strength,
    unless: statesFrom(need.unless),
    whileIn: statesFrom(need.while),
    ifSaid: new Map(Object.entries(need['if-said'] ?? {})),
    unlessStated: (need['unless-stated'] ?? []) as readonly Dimension[],
    ifWords: need['if-words'] ?? [],
    begins: need.begins ?? false,
  };
}

/** Rules about other operations or settings, in the order of the data. */
export function rulesFrom(
  reasons: Readonly<Record<string, string>> | undefined,
  strength: Strength = 'hard',
): readonly OrderRule[] {
  return Object.entries(reasons ?? {}).map(([name, because]) => ({ name, because, strength }));
}

/** The parts of a kind from its data, in its order, with what holds in each of their conditions. */
export function buildParts(
  data: Readonly<Record<string, PartData>>,
  states: Readonly<Record<string, StateData>>,
): ReadonlyMap<string, KindPart> {
  return new Map(Object.entries(data).map(([name, part]) => [name, buildPart(name, part, states)]));
}

function buildPart(
  name: string,
  data: PartData,
  states: Readonly<Record<string, StateData>>,
): KindPart {
  return {
    name,
    label: data.label,
    aliases: data.aliases ?? [],
    starts: data.starts ?? null,
    ifFeature: data['if-feature'] ?? [],
    onlyIfNamed: data['only-if-named'] ?? false,
    wordsCount: data['words-count'] ?? false,
    home: data.home ?? [],
    homeAtStart: data['home-at-start'] ?? true,
    reads: new Map(Object.entries(data.reads ?? {})),
    conditions: new Map(
      Object.entries(data.conditions).map(([each, condition]) => [
        each,
        buildCondition(name, each, condition, states[`${name} ${each}`] ?? {}),
      ]),
    ),
  };
}

function buildCondition(
  part: string,
  name: string,
  data: ConditionData,
  state: StateData,
): PartCondition {
  return {
    name,
    aliases: data.aliases ?? [],
    countsAs: data['counts-as'] ?? [],
    says: state.says ?? name.replaceAll('-', ' '),
    instruction: state.do ?? null,
    needs: needsFrom(state.needs),
    after: rulesFrom(state.after),
    comesFrom: state['comes-from'] ? needFrom(part, state['comes-from'], 'hard') : null,
    disturbs: rulesFrom(state.disturbs),
    follows: Object.entries(state.follows ?? {}).map(
      ([part, { is, from, again, because, ...rest }]): Following => ({
        part,
        condition: listOf(is)[0] ?? '',
        from: from ?? [],
        again: again ?? false,
        ifFeature: rest['if-feature'] ?? [],
        because,
      }),
    ),
    bars: needsFrom(state.bars),
    startsUp: state['starts-up'] ?? false,
  };
}
