/** Front matter of an example: a manual, and a bench with so many units and these lists of readings. */
export function bench(units: number | null, ...lists: readonly string[]): string {
  const said = units === null ? '' : `\n    units: ${units}`;
  return `sources:
  m48: { title: Wexcombe Four Workshop Manual, kind: manual, year: 1948 }
  bench:
    title: Good units measured
    kind: measured${said}
    readings:
${lists.map((each) => `      ${each}`).join('\n')}`;
}
