/** A word of more signs than this is cut in a finding: nobody reads it, and a sheet may have one of a mile. */
const LONGEST_WORD = 100;

const LONG_WORDS = new RegExp(`\\S{${LONGEST_WORD + 1},}`, 'g');

/**
 * Puts values in place of `{name}`; braces that hold anything but a bare name stay as they are. Fails
 * with an `Error` for a name without a value: then the check `id` is at fault.
 */
export function fillTemplate(
  template: string,
  values: Readonly<Record<string, string>>,
  id: string,
): string {
  return template.replace(/\{([a-zA-Z]+)\}/g, (_, name: string) => {
    const value = values[name];
    if (value === undefined) throw new Error(`check ${id} leaves {${name}} unfilled`);
    return value.replace(LONG_WORDS, (word) => `${word.slice(0, LONGEST_WORD - 1)}…`);
  });
}
