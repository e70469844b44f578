import type { BoundPlace, Kind, KindBinding } from '../kinds/model.ts';
import type { Setting, Sheet } from '../sheet/model.ts';
import { figureIn } from './figure.ts';
import type { Relation, RelationQuantity } from './model.ts';
import type { Places, StatedPlace } from './stated-place.ts';

/** A quantity of a relation on one sheet. */
export interface BoundQuantity {
  readonly quantity: RelationQuantity;
  /** Null where the kind binds it to no place. */
  readonly place: StatedPlace | null;
}

/** A relation as it stands on one sheet, or at one place of settings that have several. */
export interface Instance {
  /** Its place in the order of the kind's relations. */
  readonly index: number;
  readonly relation: Relation;
  readonly binding: KindBinding;
  /** `primary`, where the settings that take part are stated by barrel; null otherwise. */
  readonly at: string | null;
  readonly quantities: ReadonlyMap<string, BoundQuantity>;
}

/** The relations of a kind that a sheet says anything of, in the kind's order. */
export function instancesOf(
  sheet: Sheet,
  kind: Kind,
  places: Places,
  relations: ReadonlyMap<string, Relation>,
): readonly Instance[] {
  const features = new Set(sheet.unit.features.map(({ id }) => id));
  const instances: Instance[] = [];
  for (const binding of kind.relations.bindings) {
    const relation = relations.get(binding.relation);
    const isOfUnit =
      (binding.ifFeature.length === 0 || binding.ifFeature.some((name) => features.has(name))) &&
      !binding.unlessFeature.some((name) => features.has(name));
    if (!relation || !isOfUnit || !mayHaveLine(binding, places)) continue;
    if (!isSame(binding, places)) continue;
    for (const at of placeNames(binding, places)) {
      const quantities = bind(relation, binding, places, at);
      const bound = [...quantities.values()].flatMap(({ place }) => place ?? []);
      // A figure needs a line to stand beside: the setting it belongs to, or one that states a part.
      const hasLine =
        places.setting(binding.of) !== null ||
        bound.some(({ bound: { is }, status }) => is === 'setting' && status !== 'absent');
      if (hasLine && bound.some(isPartOf))
        instances.push({ index: instances.length, relation, binding, at, quantities });
    }
  }
  return instances;
}

/** Whether the sheet has any setting of a binding, without a look at what it says. */
function mayHaveLine({ of, quantities }: KindBinding, places: Places): boolean {
  if (places.setting(of)) return true;
  for (const bound of quantities.values())
    if (bound.is === 'setting' && places.setting(bound.setting)) return true;
  return false;
}

/** Whether a place brings a relation onto a sheet: it states something, or another relation may. */
function isPartOf({ status, bound }: StatedPlace): boolean {
  return bound.is === 'worked' || (status !== 'absent' && bound.is !== 'fixed');
}

function bind(
  relation: Relation,
  binding: KindBinding,
  places: Places,
  at: string | null,
): ReadonlyMap<string, BoundQuantity> {
  return new Map(
    relation.quantities.map((quantity) => {
      const bound = binding.quantities.get(quantity.name);
      const found = bound ? places.find(bound, quantity.dimension, at) : null;
      const place = found && fromOwnZero(found, quantity);
      return [quantity.name, { quantity, place }];
    }),
  );
}

/** The settings among the places of a binding that the sheet has. */
function settingsOf(binding: KindBinding, places: Places): readonly Setting[] {
  const names = [...binding.quantities.values()].flatMap((bound) =>
    bound.is === 'setting' ? [bound.setting] : [],
  );
  return [...new Set(names)].flatMap((name) => places.setting(name) ?? []);
}

/** Whether the words that have to be the same beside all the settings are. */
function isSame(binding: KindBinding, places: Places): boolean {
  if (binding.same.length === 0) return true;
  const settings = settingsOf(binding, places);
  return binding.same.every((key) => {
    const [first, ...rest] = settings.map((setting) => wordBeside(setting, key));
    return settings.length < 2 || (first !== null && rest.every((word) => word === first));
  });
}

function wordBeside(setting: Setting, key: string): string | null {
  const placed = key === 'at' ? setting.at : setting.said.get(key);
  return placed?.value.trim().toLowerCase().replace(/\s+/g, ' ') ?? null;
}

/** The places that a relation holds at one by one: those its settings name, or none. */
function placeNames(binding: KindBinding, places: Places): readonly (string | null)[] {
  const names = new Set<string>();
  for (const bound of binding.quantities.values()) {
    const setting = isByPlace(bound) ? places.setting(bound.setting) : null;
    for (const name of setting?.places.keys() ?? []) names.add(name);
  }
  return names.size === 0 ? [null] : [...names];
}

function isByPlace(bound: BoundPlace): bound is Extract<BoundPlace, { is: 'setting' }> {
  return bound.is === 'setting' && bound.key === null && bound.atPlace === null;
}

/** What is taken for a quantity that nothing is said of; null where the relation is mute without it. */
export function unsaidOf({ quantity, place }: BoundQuantity) {
  const isUnsaid = place === null || place.status === 'absent';
  return isUnsaid && quantity.unsaid
    ? { figure: figureIn(quantity.unsaid.value), words: quantity.unsaid.words }
    : null;
}

/** An absolute pressure is never worked as one over ambient: the two differ by the weather. */
function fromOwnZero(place: StatedPlace, { absolute }: RelationQuantity): StatedPlace {
  if (absolute === true || place.statement?.reference !== 'absolute') return place;
  return { ...place, status: 'other', figure: null };
}
