import type { Templates } from '../orders/model.ts';

/**
 * The smallest height of capitals in ems among the files that a style gives to each font family, by
 * the `@font-face` rules of `styles.css`. A family whose files don't say their height is absent.
 */
export function capHeightsByFamily(templates: Templates): ReadonlyMap<string, number> {
  const heights = new Map<string, number>();
  const style = templates.texts.get('styles.css') ?? '';
  for (const [, rule = ''] of style.matchAll(/@font-face\s*\{([^}]*)\}/g)) {
    const family = /font-family:\s*["']?([^"';}]+)["']?/.exec(rule)?.[1]?.trim();
    const file = /url\(\s*["']?fonts\/([^"')]+)["']?\s*\)/.exec(rule)?.[1];
    const height = file === undefined ? undefined : templates.capHeights.get(file);
    if (family === undefined || height === undefined) continue;
    heights.set(family, Math.min(height, heights.get(family) ?? height));
  }
  return heights;
}
