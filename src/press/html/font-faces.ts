import type { Templates } from '../orders/model.ts';

/** A file of `templates/fonts` as a style names it. */
interface FontRule {
  readonly family: string;
  /** As written: `600`. */
  readonly weight: string;
  readonly isItalic: boolean;
  readonly file: string;
}

/** The `@font-face` rules of `styles.css` that name a file. */
export function fontRules(templates: Templates): readonly FontRule[] {
  const style = templates.texts.get('styles.css') ?? '';
  return [...style.matchAll(/@font-face\s*\{([^}]*)\}/g)].flatMap(([, rule = '']) => {
    const family = /font-family:\s*["']?([^"';}]+)["']?/.exec(rule)?.[1]?.trim();
    const file = /url\(\s*["']?fonts\/([^"')]+)["']?\s*\)/.exec(rule)?.[1];
    if (family === undefined || file === undefined) return [];
    const weight = /font-weight:\s*([^;}]+)/.exec(rule)?.[1]?.trim() ?? '400';
    return [{ family, weight, isItalic: /font-style:\s*italic/.test(rule), file }];
  });
}

/**
 * The smallest height of capitals in ems among the files that a style gives to each font family, by
 * the `@font-face` rules of `styles.css`. A family whose files don't say their height is absent.
 */
export function capHeightsByFamily(templates: Templates): ReadonlyMap<string, number> {
  const heights = new Map<string, number>();
  for (const { family, file } of fontRules(templates)) {
    const height = templates.capHeights.get(file);
    if (height === undefined) continue;
    heights.set(family, Math.min(height, heights.get(family) ?? height));
  }
  return heights;
}
