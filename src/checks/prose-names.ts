import type { Setting, Sheet } from '../sheet/model.ts';
import type { Told } from './prose-asides.ts';

interface Name {
  readonly setting: Setting;
  readonly phrase: string;
}

/** Every name of a sheet's settings, as plain words between blanks, the longest first. */
function namesOfSettings(sheet: Sheet): readonly Name[] {
  const names: Name[] = [];
  for (const setting of sheet.settings.values()) {
    const meant = setting.known;
    const all = [setting.name.value, meant?.name ?? '', meant?.label ?? ''];
    for (const name of new Set([...all, ...(meant?.aliases ?? [])].map(spacedWords)))
      if (name.trim() !== '') names.push({ setting, phrase: name });
  }
  return names.sort((a, b) => b.phrase.length - a.phrase.length);
}

/**
 * The settings that a sentence names in words, the one named last before the figure first. Of `fast
 * idle speed` only the longest name counts; the name in a mark is the mark's.
 */
export function settingsNamed(
  told: Pick<Told, 'before' | 'after'>,
  sheet: Sheet,
): readonly Setting[] {
  const names = namesOfSettings(sheet);
  const before = namedIn(told.before, names).reverse();
  return [...new Set([...before, ...namedIn(told.after, names)])];
}

function namedIn(sentence: string, names: readonly Name[]): Setting[] {
  let rest = spacedWords(sentence.replace(/:(?:value|state)\[[^\]]*\]/g, ' # '));
  const found: { readonly at: number; readonly setting: Setting }[] = [];
  for (const { setting, phrase } of names) {
    const at = rest.indexOf(phrase);
    if (at < 0) continue;
    found.push({ at, setting });
    rest = `${rest.slice(0, at)} ${'#'.repeat(phrase.length - 2)} ${rest.slice(at + phrase.length)}`;
  }
  return found.sort((a, b) => a.at - b.at).map(({ setting }) => setting);
}

/** ` float level `: small letters, one blank before and after each word. */
function spacedWords(text: string): string {
  return ` ${text
    .toLowerCase()
    .replace(/[^\p{L}\p{N}#]+/gu, ' ')
    .trim()} `;
}
