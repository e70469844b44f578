import { kindNamed } from '../kinds/index.ts';
import type { Kind } from '../kinds/model.ts';
import type { Choice } from '../text/index.ts';
import { openPoints } from './guess-mapping.ts';
import type { Mapping } from './mapping.ts';

/** A mapping that a list can be read by, with its kind of unit. */
export interface SettledMapping {
  readonly mapping: Mapping;
  readonly kind: Kind;
}

/** A mapping with its kind, or what it leaves open; `shown` names its file. */
export function settledMapping(
  mapping: Mapping,
  kinds: ReadonlyMap<string, Kind>,
  shown: string,
): Choice<SettledMapping> {
  const kind = kindNamed(mapping.kind, kinds);
  if (kind === null) {
    return { ok: false, message: `there is no kind of unit called ${mapping.kind}`, fix: null };
  }
  const open = openPoints(mapping, kind);
  return open.length === 0
    ? { ok: true, value: { mapping, kind } }
    : { ok: false, message: `${shown} does not say enough. ${open.join(' ')}`, fix: null };
}
