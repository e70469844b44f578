import { levelName } from '../kinds/index.ts';
import type { Kind, KindPart, ReasonedNeed } from '../kinds/model.ts';
import type { Setting } from '../sheet/model.ts';
import { oncePer, plainWords } from '../text/index.ts';

/**
 * The states that settings themselves say they are measured in, by keys beside their values: `gasket:
 * removed`, `gear: drive`, `temperature: cold`. A key is a part's own name, or the one that the kind
 * names for it (`keys`, part to key). What names no condition of the part says nothing of a state.
 */
export function saidNeeds(
  settings: readonly Setting[],
  keys: ReadonlyMap<string, string>,
  kind: Kind,
): readonly ReasonedNeed[] {
  const found = new Map<string, ReasonedNeed>();
  const named = namedBy(keys, kind);
  const add = (part: KindPart, condition: string, because: string): void => {
    if (found.has(part.name)) return;
    found.set(part.name, {
      part: part.name,
      anyOf: [condition],
      noneOf: [],
      because,
      strength: 'hard',
      unless: [],
      whileIn: [],
      ifSaid: new Map(),
      unlessStated: [],
      ifWords: [],
      begins: false,
    });
  };
  for (const setting of settings) {
    const state = kind.parts.get(kind.settings.get(setting.id)?.saysState ?? '');
    const value = setting.value?.reading.ok ? setting.value.reading.statement : null;
    if (state && value?.dimension === 'condition') {
      const words = plainWords(value.text).split(' ');
      const condition = words.find((each) => state.conditions.has(each));
      if (condition !== undefined) add(state, condition, `the setting says \`${value.text}\``);
    }
    for (const [key, said] of setting.said) {
      for (const part of [...(named.get(key) ?? []), ...(partsByKey(kind).get(key) ?? [])]) {
        const condition = found.has(part.name) ? null : kind.conditionNamed(said.value, part);
        if (condition === null) continue;
        add(part, condition, `the setting says \`${key}: ${said.value}\``);
        break;
      }
    }
  }
  return [...found.values()];
}

function namedBy(keys: ReadonlyMap<string, string>, kind: Kind): ReadonlyMap<string, KindPart[]> {
  const named = new Map<string, KindPart[]>();
  for (const [name, key] of keys) {
    const part = kind.parts.get(name);
    if (part) named.set(key, [...(named.get(key) ?? []), part]);
  }
  return named;
}

/** Parts by the keys that name them: their names, and their labels where these read as keys. */
const partsByKey = oncePer((kind: Kind): ReadonlyMap<string, KindPart[]> => {
  const parts = new Map<string, KindPart[]>();
  for (const part of kind.parts.values()) {
    const names = new Set([part.name, levelName(part.label)]);
    for (const name of names) parts.set(name, [...(parts.get(name) ?? []), part]);
  }
  return parts;
});
