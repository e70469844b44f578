import type { CheckContext } from '../checks/index.ts';
import type { DeskProject } from '../desk/model.ts';
import { gaugeBook, kitOf, readKitEntry } from '../gauges/index.ts';
import { builtInKinds, readKind } from '../kinds/index.ts';
import type { Kind } from '../kinds/model.ts';
import { wireGaugeNamed } from '../quantity/index.ts';
import { formulaNames } from '../relations/index.ts';
import type { SheetContext } from './model.ts';

/** What a sheet needs and nobody has told yet. */
export interface Lacking {
  readonly bases: Set<string>;
  readonly pictures: Set<string>;
}

/** The server's plain data as what the checks take; names that are asked for in vain go into `lacking`. */
export function projectFrom(context: SheetContext, lacking: Lacking): DeskProject {
  const kinds = new Map<string, Kind>(builtInKinds());
  for (const { file, text } of context.kinds) {
    const { kind } = readKind(text, file, formulaNames());
    if (kind !== null) kinds.set(kind.name, kind);
  }
  const swg = wireGaugeNamed(context.wireGauge);
  const checks: CheckContext = {
    gauges: gaugeBook(),
    kinds: context.kinds.length === 0 ? builtInKinds() : kinds,
    wireGauge: context.wireGauge,
    altitude: context.altitude,
    measuredUnits: context.measuredUnits,
    usualOrder: context.usualOrder,
    sharedSources: new Map(context.sharedSources),
    kit: context.kit === null ? null : kitOf(context.kit.map((entry) => readKitEntry(entry, swg))),
    family: {
      find: (id) => {
        const found = Object.hasOwn(context.bases, id) ? context.bases[id] : undefined;
        if (found === undefined && context.names.includes(id)) lacking.bases.add(id);
        return found ?? null;
      },
      names: () => context.names,
    },
    picture: (url) => {
      const known = Object.hasOwn(context.pictures, url) ? context.pictures[url] : undefined;
      if (known === undefined) lacking.pictures.add(url);
      return known ?? 'found';
    },
  };
  return { context: checks };
}
