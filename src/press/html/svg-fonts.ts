import type { Templates } from '../orders/model.ts';
import { fontRules } from './font-faces.ts';

/**
 * A drawing that is a file of its own, with the fonts that its lettering is set in put into it as they
 * stand in `templates/fonts`: whatever shows it, it looks as it does in print. Faces that no text of it
 * has are left out, and so is a family that `styles.css` has no file for.
 */
export function withFonts(svg: string, templates: Templates): string {
  const used = facesIn(svg);
  const rules = fontRules(templates).flatMap(({ family, weight, isItalic, file }) => {
    const bytes = templates.fonts.get(file);
    if (isItalic || bytes === undefined || !used.has(`${family} ${weight}`)) return [];
    const data = Buffer.from(bytes).toString('base64');
    return `@font-face{font-family:"${family}";font-weight:${weight};src:url(data:font/woff2;base64,${data})}`;
  });
  if (rules.length === 0) return svg;
  // Behind what a drawing is called and says, which come first in it.
  const at = svg.indexOf('</desc>') + '</desc>'.length;
  return `${svg.slice(0, at)}\n<style>${rules.join('\n')}</style>${svg.slice(at)}`;
}

/** The first family and the weight of every text: `Gaugeleaf Sans 600`. What is not said is taken from around. */
function facesIn(svg: string): ReadonlySet<string> {
  const used = new Set<string>();
  const around = [{ family: '', weight: '400' }];
  for (const [, closes, name = '', attributes = '', alone] of svg.matchAll(
    /<(\/?)(svg|g|text|tspan)\b((?:[^>"]|"[^"]*")*?)(\/?)>/g,
  )) {
    if (closes === '/') {
      around.pop();
      continue;
    }
    const outer = around.at(-1) ?? { family: '', weight: '400' };
    const family = /\bfont-family="\s*'?([^',"]+)/.exec(attributes)?.[1] ?? outer.family;
    const weight = /\bfont-weight="([^"]+)"/.exec(attributes)?.[1] ?? outer.weight;
    if (name === 'text' || name === 'tspan') used.add(`${family} ${weight}`);
    if (alone !== '/') around.push({ family, weight });
  }
  return used;
}
