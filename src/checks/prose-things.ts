import type { Kind } from '../kinds/model.ts';
import type { Statement } from '../quantity/model.ts';
import { holdsAny, lastWords, type Told } from './prose-asides.ts';

/** Dimensions that things are told by: a hose's bore, a can's contents, a lamp's weight. */
const OF_THINGS: ReadonlySet<Statement['dimension']> = new Set([
  'length',
  'volume',
  'mass',
  'area',
  'pressure',
  'flow',
]);

/** What ends the words that belong to a figure: `13/64 in clear of the screw` is no screw's size. */
const ENDS_PHRASE =
  /^(?:of|from|in|on|at|to|by|under|over|above|below|between|beside|behind|for|with|when|while|until|and|or|but|then|so|if|is|are|was|were|be|must|shall|should|will|would|may|can|has|have|had|it|its|the|a|an|this|that|these|those|their|your|my|clear|off|out|away|apart|past|through|where|which|who|as|than|before|after|just|goes|passes|enters|fits|drags|stands|lies|comes|measured|set)$/;
const MEASURED =
  /^[ ,]*(?:or so )?(?:thick|long|wide|deep|high|tall|across|square|round|in (?:diameter|bore|length|thickness|width)|diameter|dia|bore|thickness|inside|outside|i\.?d\b|o\.?d\b)/;
/** Between a thing and its size: `hose of 3/8 in`, `gasket, which is 1/32 in thick`, `bolts 1-1/4 in long`. */
const JOINT =
  /[ ,(]*(?:(?:of|with|which|that|is|are|was|being|about|some|only|a|an|in|the|bore|diameter|thickness|length|size|measur(?:es|ing)|hold(?:s|ing)|made|new|old|standard|usual)[ ,]*)*$/;
const OF_SIZE = /\b(?:of|with an?|hold(?:s|ing))(?: about| some| only| bore| diameter)* ?$/;

/** Whether a figure is the size of a thing that the sentence names, by a kind's words for such things. */
export function namesThing(told: Told, kind: Kind): boolean {
  const { statement, before, after } = told;
  if (!OF_THINGS.has(statement.dimension) || namesGauge(statement)) return false;
  const own = ownWords(told);
  // Of `idle-tube` a tube is the very thing.
  const things = own.size === 0 ? kind.toolWords : kind.toolWords.filter((word) => !own.has(word));
  const isThing = (text: string): boolean => holdsAny(text, things);
  if (isThing(phraseAfter(after))) return true;
  const of = /^[ -]?(?:of|length of|piece of|bit of) ((?:[\p{L}-]+ ?){1,3})/u.exec(after)?.[1];
  if (of !== undefined && !/^(?:the|its|this|that|each) /.test(of) && isThing(of)) return true;
  // `The hole for the pin is 1/8 in across`: how it is measured says that a thing is.
  if (MEASURED.test(after) && isThing(lastWords(before, 7))) return true;
  const joint = JOINT.exec(before)?.[0] ?? '';
  const noun = /(?:[\p{L}-]+ )?[\p{L}-]+$/u.exec(before.slice(0, before.length - joint.length));
  if (noun === null || !isThing(noun[0])) return false;
  return OF_SIZE.test(before) || joint.includes('(');
}

/** A gauge is what a size is measured with, and so the size itself. */
function namesGauge(statement: Statement): boolean {
  return statement.nominal?.gauge != null;
}

/** The words behind a figure that still belong to it: `5/16 in box wrench`. */
function phraseAfter(after: string): string {
  const taken: string[] = [];
  const near = /^[^.,;:!?()[\]]*/.exec(after)?.[0] ?? '';
  for (const word of near.trim().split(/\s+/).slice(0, 4)) {
    if (ENDS_PHRASE.test(word)) break;
    taken.push(word);
  }
  return taken.join(' ');
}

/** The words that the near settings are called by. */
function ownWords({ near }: Told): ReadonlySet<string> {
  const own = new Set<string>();
  for (const setting of near) {
    const { known } = setting;
    for (const name of [setting.name.value, known?.label ?? '', ...(known?.aliases ?? [])])
      for (const word of words(name)) own.add(word);
  }
  return own;
}

function words(text: string): readonly string[] {
  return text.toLowerCase().match(/\p{L}+/gu) ?? [];
}
