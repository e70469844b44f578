/**
 * A function that remembers what it made of each object, for as long as the object lives. It is handed
 * nothing but the object, so that nothing it depends on can be left out of what it is remembered by; of
 * two, one is remembered by the other: `oncePer((sheet) => oncePer((gauges) => ...))`.
 */
export function oncePer<K extends object, V>(make: (key: K) => V): (key: K) => V {
  const made = new WeakMap<K, { readonly value: V }>();
  return (key) => {
    let known = made.get(key);
    if (known === undefined) {
      known = { value: make(key) };
      made.set(key, known);
    }
    return known.value;
  };
}
