import type { KindData, NeedsData } from './data.ts';
import type { KindFault } from './faults.ts';
import { listOf } from './parts.ts';

/** A part in one condition, as two words: `throttle shut`. */
type State = string;

/**
 * States that contradict one another by the kind's own data: what one brings about and shuts out, a need
 * that nothing can meet because one half of it shuts the other out, a state that leads away from itself.
 */
export function stateFaults(data: KindData): KindFault[] {
  const faults: KindFault[] = [];
  const add = (path: readonly (string | number)[], message: string): void => {
    faults.push({ path, onKey: true, message, fix: 'take one of the two out' });
  };
  const barred = (by: State, state: State): boolean => {
    const [part = '', condition = ''] = state.split(' ');
    const bar = data.states?.[by]?.bars?.[part];
    return bar !== undefined && bar.unless === undefined && meets(data, part, condition, bar.is);
  };
  for (const [state, { follows = {}, needs = {} }] of Object.entries(data.states ?? {})) {
    const [own = '', condition = ''] = state.split(' ');
    for (const [part, follow] of Object.entries(follows)) {
      const led = `${part} ${listOf(follow.is)[0] ?? ''}`;
      const path = ['states', state, 'follows', part];
      if (barred(state, led)) add(path, `\`${state}\` both brings about and bars \`${led}\``);
      if (barred(led, state)) add(path, `\`${state}\` brings about \`${led}\`, which bars it`);
      const back = data.states?.[led]?.follows?.[own];
      if (back && back.from === undefined && !meets(data, own, condition, back.is))
        add(
          path,
          `\`${state}\` brings about \`${led}\`, which brings it to \`${listOf(back.is)[0]}\``,
        );
    }
    for (const [part, need] of Object.entries(needs))
      if (listOf(need.is).every((each) => barred(state, `${part} ${each}`)))
        add(['states', state, 'needs', part], `\`${state}\` needs what it bars`);
  }
  const together = (needs: NeedsData, path: readonly string[]): void => {
    for (const [one, first] of Object.entries(needs))
      for (const [two, second] of Object.entries(needs))
        if (
          one !== two &&
          listOf(first.is).every((is) =>
            listOf(second.is).every((other) => barred(`${one} ${is}`, `${two} ${other}`)),
          )
        )
          add(
            [...path, two],
            `nothing meets both needs: the \`${one}\` bars what is needed of the \`${two}\``,
          );
  };
  for (const [name, { needs = {}, usual = {} }] of Object.entries(data.operations))
    together({ ...usual.needs, ...needs }, ['operations', name, 'needs']);
  for (const [name, { needs = {} }] of Object.entries(data.settings))
    together(needs, ['settings', name, 'needs']);
  return faults;
}

function meets(
  data: KindData,
  part: string,
  condition: string,
  wanted: string | readonly string[] | undefined,
): boolean {
  const any = listOf(wanted);
  const counts = data.parts?.[part]?.conditions[condition]?.['counts-as'] ?? [];
  return any.includes(condition) || counts.some((each) => any.includes(each));
}
