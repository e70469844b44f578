/** Plain data of that type that nobody writes to, at any depth. */
export type ReadOnly<T> = T extends readonly (infer Item)[]
  ? readonly ReadOnly<Item>[]
  : T extends object
    ? { readonly [Key in keyof T]: ReadOnly<T[Key]> }
    : T;
