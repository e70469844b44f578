/** A value that is printed as it stands. `html` goes into a template in three braces, the others in two. */
export interface LeafShape {
  readonly is: 'text' | 'html' | 'number' | 'flag';
  readonly meaning: string;
}

/** A list of values of one shape. */
export interface ListShape<Of extends Shape = Shape> {
  readonly is: 'list';
  readonly meaning: string;
  readonly of: Of;
}

/** Values by name. */
export interface FieldsShape<
  Fields extends Readonly<Record<string, Shape>> = Readonly<Record<string, Shape>>,
> {
  readonly is: 'fields';
  readonly meaning: string;
  readonly fields: Fields;
}

/** What a template finds at one place of its model, with what it means. */
export type Shape =
  | LeafShape
  | ListShape
  | {
      readonly is: 'fields';
      readonly meaning: string;
      readonly fields: { readonly [name: string]: Shape };
    };

/** The shape that a model's type has: a field that is added, dropped or changed is a type error. */
export type ShapeOf<Model> = [NonNullable<Model>] extends [string | number | boolean]
  ? LeafShape
  : NonNullable<Model> extends readonly (infer Item)[]
    ? ListShape<ShapeOf<Item> & Shape>
    : {
        readonly is: 'fields';
        readonly meaning: string;
        readonly fields: {
          readonly [Name in keyof NonNullable<Model>]-?: ShapeOf<NonNullable<Model>[Name]>;
        };
      };

/** A text, printed in two braces. */
export function text(meaning: string): LeafShape {
  return { is: 'text', meaning };
}

/** HTML, printed in three braces. */
export function html(meaning: string): LeafShape {
  return { is: 'html', meaning };
}

/** A number, printed in two braces. */
export function number(meaning: string): LeafShape {
  return { is: 'number', meaning };
}

/** Yes or no, for `{{#if}}`. */
export function flag(meaning: string): LeafShape {
  return { is: 'flag', meaning };
}

/** A list, for `{{#each}}`. */
export function list<Of extends Shape>(meaning: string, of: Of): ListShape<Of> {
  return { is: 'list', meaning, of };
}

/** Values by name, for a dot or `{{#with}}`. */
export function fields<Fields extends Readonly<Record<string, Shape>>>(
  meaning: string,
  named: Fields,
): FieldsShape<Fields> {
  return { is: 'fields', meaning, fields: named };
}
