import { nearestName } from '../../text/index.ts';
import { placeholders, readWording, type Wording } from '../orders/index.ts';
import { perhaps, type TemplateFault } from './template-fault.ts';

/**
 * What is wrong in a club's file of words: keys that nothing goes by, and lines that leave out what
 * the page puts into them, or want what it has not. `wording` are the built-in words.
 */
export function checkWording(file: string, text: string, wording: Wording): TemplateFault[] {
  const { words, faults, keySpan } = readWording(text);
  const found: TemplateFault[] = faults.map((fault) => ({ file, grave: true, ...fault }));
  for (const [key, line] of words) {
    const span = keySpan(key) ?? { start: 0, end: 0 };
    const tell = (message: string, fix: string) => {
      found.push({ file, grave: true, span, message, fix });
    };
    const built = wording.get(key);
    if (built === undefined) {
      const near = nearestName(key, wording.keys());
      tell(`no words go by the key \`${key}\``, perhaps(near, wording.keys(), 'there are'));
      continue;
    }
    const wanted = placeholders(built);
    const has = placeholders(line);
    const unknown = has.find((name) => !wanted.includes(name));
    const missing = wanted.find((name) => !has.includes(name));
    if (unknown !== undefined) {
      const names = wanted.map((name) => `{${name}}`);
      const near = nearestName(unknown, wanted) ?? missing ?? null;
      tell(
        `the words for \`${key}\` have {${unknown}}, and the page has nothing to put there`,
        perhaps(near === null ? null : `{${near}}`, names, 'it has'),
      );
    } else if (missing !== undefined) {
      tell(
        `the words for \`${key}\` leave out {${missing}}, and with it what the page puts there`,
        `the built-in words are: ${built}`,
      );
    }
  }
  return found;
}
