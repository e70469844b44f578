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
    return value;
  });
}
