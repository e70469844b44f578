import type { KindData } from '../generated/kind-data.ts';

/** A kind of unit as its data file holds it, once `kind.schema.json` has passed it: the schema says what each is. */
export type { KindData };

type Entry<Section> = NonNullable<Section>[keyof NonNullable<Section>];

export type RelationData = NonNullable<KindData['relations']>[number];
export type OrderData = NonNullable<KindData['orders']>[number];
export type PlaceData = OrderData['less'];
export type SettingData = Entry<KindData['settings']>;
export type OperationData = Entry<KindData['operations']>;
export type PartData = Entry<KindData['parts']>;
export type ConditionData = Entry<PartData['conditions']>;
/** What holds of a part in one of its conditions. */
export type StateData = Entry<KindData['states']>;
export type DrawingData = NonNullable<OperationData['drawings']>[number];
/** By the operation or setting that a rule is about: its reason. */
export type Reasons = NonNullable<OperationData['after']>;
/** Parts, each with what it must be, or must not be, and why. */
export type NeedsData = NonNullable<OperationData['needs']>;
export type NeedData = Entry<NeedsData>;
/** Parts, each with a condition or a list of which any will do. */
export type StatesData = NonNullable<OperationData['leaves']>;
/** Lists of names of which one at least is needed. */
export type Choices = NonNullable<KindData['one-of']>;
