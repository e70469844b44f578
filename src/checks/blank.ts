/**
 * Whether a text only holds the place of one that is still to come: `fill in`, as `gaugeleaf draft`
 * writes it, or what people write for it. Checks of sizes pass such a text over: `blank-to-fill`
 * speaks of it.
 */
export function isBlank(text: string): boolean {
  return /^(?:to )?fill[- ]in\.?$|^(?:tbd|tbc|todo|to do|xxx+)$|^[?_.…]+$/i.test(text.trim());
}
