import type { Kind } from '../kinds/model.ts';
import type { Setting, Sheet } from '../sheet/model.ts';
import { oncePer } from '../text/index.ts';
import type { Told } from './prose-asides.ts';

const KINDS_OF =
  '(?:later|latest|earlier|early|late|older|newer|export|former|previous|replacement|racing|competition|heavy-duty|similar|sister|larger|smaller|pre-war|post-war|(?:18|19|20)\\d\\d)';
const ANY_OF = '(?:other|another|others|some|many|certain|most|first|second|third|different)';
const UNITS =
  '(?:units?|bod(?:y|ies)|castings?|covers?|cars?|engines?|trucks?|vans?|parts?|plates?|stamped|ones?)';
const KINDS =
  '(?:models?|versions?|types?|patterns?|series|issues?|editions?|printings?|papers?|manuals?|books?|handbooks?|bulletins?|leaflets?|sheets?|sources?|cards?|charts?|tables?|tags?|makers?|people|men|shops|fitters|restorers|hands)';

/** `the later unit`, `early cars`, `some papers`: another thing of the kind than the sheet is about. */
const otherThing = oncePer((kind: Kind): RegExp => {
  const unit = /\p{L}+$/u.exec(kind.title.toLowerCase())?.[0] ?? 'unit';
  const between = '(?: [\\p{L}\\p{N}-]+){0,2} ';
  return new RegExp(
    `\\b(?:${KINDS_OF}${between}(?:${unit}s?|${UNITS}|${KINDS})|${ANY_OF}${between}${KINDS})\\b`,
    'u',
  );
});

const CONDITION =
  /\b(?:(?:with|on|for|where|if)(?: [\p{L}-]+){0,3} (?:automatic|overdrive|air[ -]condition(?:ing|er)|transmission|export|racing|competition|towing|altitude|heavy (?:oil|duty))|at altitude|above \d[\d,]* ?(?:ft|feet|m|meters)|for (?:racing|competition|export|towing|altitude|hot climates|cold climates|winter|summer)|in (?:hot|cold) (?:climates|weather)|in (?:winter|summer)|when (?:new|worn|cold)|if (?:it is )?(?:new|worn|cold)|used to be|was once|once was|formerly|originally|in the past|instead of the)\b/u;

/** Whether a sentence gives its figure to another unit, paper or circumstance than the setting is of. */
export function readsOtherwise(told: Told, sheet: Sheet, kind: Kind): boolean {
  const said = `${told.before} # ${told.after}`;
  if (otherThing(kind).test(said) || CONDITION.test(said)) return true;
  return namesOtherPaper(said, told.near, sheet) || namesOtherState(told, kind);
}

/** A source that the sheet knows and that none of the near settings follows: `Bulletin 17 has 7/32 in`. */
function namesOtherPaper(said: string, near: readonly Setting[], sheet: Sheet): boolean {
  const followed = new Set(near.flatMap(({ from }) => from.map(({ source }) => source.value)));
  for (const [name, { title }] of sheet.sources) {
    if (followed.has(name)) continue;
    const words = [name, title?.value ?? ''].map((word) => word.toLowerCase().trim());
    if (words.some((word) => word !== '' && holdsWhole(said, word))) return true;
  }
  return false;
}

function holdsWhole(text: string, words: string): boolean {
  const at = text.indexOf(words);
  if (at < 0) return false;
  const edge = /[\p{L}\p{N}]/u;
  return !edge.test(text.charAt(at - 1)) && !edge.test(text.charAt(at + words.length));
}

/** `450 rpm in drive` of a speed that is set in neutral: another condition of a part that it names. */
function namesOtherState({ near, before, after }: Told, kind: Kind): boolean {
  const said = ` ${before} # ${after} `;
  return near.some((setting) =>
    [...setting.said].some(([key, { value }]) => {
      const part = kind.parts.get(key);
      if (part === undefined) return false;
      const own = value
        .toLowerCase()
        .replace(/[^\p{L}]+/gu, ' ')
        .trim();
      // `on` and `out` are said of anything: a condition needs its part, or `in`, `when` before it.
      const lead = said.includes(part.label.toLowerCase()) ? ' ' : ' (?:in|when|while|if|engine) ';
      const says = (name: string): boolean =>
        new RegExp(`${lead}${name.replace(/[^\p{L}]+/gu, '[ -]')}\\b`, 'u').test(said);
      const others = [...part.conditions.keys()].filter((name) => !own.includes(name));
      return others.some(says) && !said.includes(` ${own}`);
    }),
  );
}
