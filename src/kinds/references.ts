import { references } from '../generated/kind-references.ts';
import { nearestName } from '../text/index.ts';
import type { KindData } from './data.ts';
import type { KindFault } from './faults.ts';

/** What a name in a kind may refer to: `refersTo` of its schema. */
export type Referent = 'setting' | 'operation' | 'feature' | 'hazard' | 'count' | 'size';

/** A place of a kind's data at which its own entries are named. */
export interface Reference {
  /** Keys from the root; `*` stands for any key or entry. */
  readonly path: readonly string[];
  readonly to: Referent;
}

type Path = readonly (string | number)[];

/** What each is called, and the section that a new one goes into. */
const TOLD: Readonly<Record<Referent, readonly [noun: string, section: string]>> = {
  setting: ['setting', 'settings'],
  operation: ['operation', 'operations'],
  feature: ['feature', 'features'],
  hazard: ['hazard', 'hazards'],
  count: ['count', 'counts'],
  size: ['size of the unit', 'unit'],
};

/** Names of entries that the kind has not, wherever its schema says that a name refers to one. */
export function referenceFaults(data: KindData): KindFault[] {
  const sizes = Object.entries(data.unit ?? {}).filter(([, is]) => is[0] !== 'thread');
  const names: Readonly<Record<Referent, readonly string[]>> = {
    setting: Object.keys(data.settings),
    operation: Object.keys(data.operations),
    feature: Object.keys(data.features ?? {}),
    hazard: Object.keys(data.hazards ?? {}),
    count: Object.keys(data.counts ?? {}),
    size: sizes.map(([name]) => name),
  };
  return references.flatMap(({ path, to }) =>
    placesOf(data, path, []).flatMap(({ value, at }) =>
      namesIn(value, at)
        .filter(({ name }) => !names[to].includes(name))
        .map(({ name, place, onKey }) => ({
          path: place,
          onKey,
          ...unknownName(to, name, names[to]),
        })),
    ),
  );
}

/** What is said of a name that is none of those that the kind has. */
export function unknownName(
  to: Referent,
  name: string,
  names: readonly string[],
): { readonly message: string; readonly fix: string } {
  const [noun, section] = TOLD[to];
  const near = nearestName(name, names);
  return {
    message: `this kind has no ${noun} \`${name}\``,
    fix: near ? `did you mean \`${near}\`?` : `add it under \`${section}:\`, or take it out`,
  };
}

function placesOf(
  value: unknown,
  [key, ...rest]: readonly string[],
  at: Path,
): { readonly value: unknown; readonly at: Path }[] {
  if (value === undefined || value === null) return [];
  if (key === undefined) return [{ value, at }];
  if (typeof value !== 'object') return [];
  if (key !== '*') return placesOf(Reflect.get(value, key), rest, [...at, key]);
  return entriesOf(value).flatMap(([each, below]) => placesOf(below, rest, [...at, each]));
}

function entriesOf(value: object): readonly (readonly [string | number, unknown])[] {
  return Array.isArray(value) ? [...value.entries()] : Object.entries(value);
}

/** The names that a value holds: itself, each entry at whatever depth, or each key. */
function namesIn(
  value: unknown,
  at: Path,
): { readonly name: string; readonly place: Path; readonly onKey: boolean }[] {
  if (typeof value === 'string') return [{ name: value, place: at, onKey: false }];
  if (Array.isArray(value)) return value.flatMap((each, i) => namesIn(each, [...at, i]));
  return Object.keys(Object(value)).map((name) => ({ name, place: [...at, name], onKey: true }));
}
