import { solvedKeys } from '../../relations/index.ts';
import { whereWords } from '../../sheet/index.ts';
import type { Setting, Sheet } from '../../sheet/model.ts';

/** What stands beside the value of a setting, parted in two. */
export interface SettingFacts {
  /** Where and in what state it is measured: `free end of the float; gasket removed`; null for nothing. */
  readonly datum: string | null;
  /** Figures that go with it and follow from it: `travel 0.039 in`, `area 0.063 in2`; null for none. */
  readonly further: string | null;
}

/**
 * The words of a setting, parted into what one has to know to measure it and what follows from it: a key
 * that a formula of the kind can work out and that need not be said is a further figure. `without`: keys
 * that are told elsewhere.
 */
export function settingFacts(
  setting: Setting,
  sheet: Sheet,
  without: readonly string[] = [],
): SettingFacts {
  const worked = solvedKeys(setting, sheet);
  const keys = [...setting.said.keys()];
  const bare = { ...setting, travel: null, placesDiffer: null };
  const further = { ...setting, at: null };
  return {
    datum: whereWords(bare, [...without, ...worked]),
    further: whereWords(further, [...without, ...keys.filter((key) => !worked.has(key))]),
  };
}
