import type { SheetSnapshot } from './model.ts';

/**
 * A step or caution as a reader without the sheet's marks would have it: states left out, a setting's
 * mark replaced by the value that the sheet gives it, Markdown's stars and links taken off.
 */
export function plainStep(text: string, sheet: SheetSnapshot | null): string {
  return text
    .replace(/:state\[[^\]]*\](?:\{[^}]*\})?/g, '')
    .replace(/:value\[([^\]]*)\](?:\{[^}]*\})?/g, (_, name: string) => valueNamed(name, sheet))
    .replace(/!?\[([^\]]*)\]\([^)]*\)/g, '$1')
    .replace(/(\*\*|__|\*|`)(.+?)\1/g, '$2')
    .replace(/\s+([.,;:])/g, '$1')
    .replace(/\s+/g, ' ')
    .trim();
}

function valueNamed(name: string, sheet: SheetSnapshot | null): string {
  const setting = sheet?.settings.find((each) => each.name === name || each.label === name);
  const values = Object.entries(setting?.values ?? {});
  if (values.length === 0) return name.replaceAll('-', ' ');
  return values.map(([place, value]) => (place === '' ? value : `${place} ${value}`)).join(', ');
}
