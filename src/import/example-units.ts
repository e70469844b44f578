import type { Kind } from '../kinds/model.ts';
import { readYaml } from '../text/index.ts';
import { givenSetting, type ListedUnit } from './listed-unit.ts';

/** What an example says of a unit. */
interface ExampleData {
  readonly features: readonly string[];
  readonly unit: Readonly<Record<string, string>>;
  readonly settings: Readonly<Record<string, Readonly<Record<string, string>>>>;
}

/**
 * The invented units of a text that gives one for each of some kinds, by the kind's name. A kind that
 * is not among `kinds` is left out. Fails with an `Error` for a text that is no YAML: it comes with
 * the program.
 */
export function exampleUnits(
  text: string,
  kinds: ReadonlyMap<string, Kind>,
): ReadonlyMap<string, ListedUnit> {
  const { value, problems } = readYaml(text);
  if (problems.length > 0) throw new Error(`the examples cannot be read: ${problems[0]?.message}`);
  const units = new Map<string, ListedUnit>();
  for (const [name, data] of Object.entries(value as Record<string, ExampleData>)) {
    const kind = kinds.get(name);
    if (kind !== undefined) units.set(name, unitOf(data, kind));
  }
  return units;
}

function unitOf({ features, unit, settings }: ExampleData, kind: Kind): ListedUnit {
  const listed: ListedUnit = {
    rows: [],
    cell: { row: 0, column: 0 },
    maker: 'Example',
    model: 'One',
    title: `Example of a sheet: ${kind.title.toLowerCase()}`,
    partNumbers: [],
    features,
    fits: null,
    facts: new Map(Object.entries(unit)),
    note: 'invented, and fits no engine',
    settings: new Map(),
  };
  for (const [name, { value = null, ...says }] of Object.entries(settings)) {
    const given = givenSetting(listed, name);
    given.value = value;
    for (const [key, said] of Object.entries(says)) given.says.set(key, said);
  }
  return listed;
}
