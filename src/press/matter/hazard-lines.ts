import type { Element, ElementContent, RootContent } from 'hast';
import type { TaskHazard } from './task-hazards.ts';

/**
 * What is done under a heading with a line of reminder in each step that meets a hazard, right before its
 * words: symbol, signal word and one imperative. Panels that name a hazard are left out: their full words
 * stand before the work. Steps are counted as the sheet counts them, over all lists under the heading.
 * With `ahead` what the first step of a list meets stands in a paragraph before that list, and so right before
 * the step, where it takes the whole width of the page; a short line of it stays in the step.
 */
export function withHazardLines(
  nodes: readonly RootContent[],
  hazards: readonly TaskHazard[],
  ahead = false,
): readonly RootContent[] {
  let step = -1;
  return nodes
    .filter((node) => !isNamedPanel(node))
    .flatMap((node): RootContent[] => {
      if (node.type !== 'element' || node.tagName !== 'ol') return [node];
      const first = step + 1;
      const met = hazards.filter((hazard) => hazard.step === first);
      const before = ahead && saidOf(met).length > shortLine ? met : [];
      const children = node.children.map((item): ElementContent => {
        if (item.type !== 'element' || item.tagName !== 'li') return item;
        step += 1;
        const here = hazards.filter((hazard) => hazard.step === step && !before.includes(hazard));
        return here.length === 0 ? item : { ...item, children: [...lines(here), ...item.children] };
      });
      const list = { ...node, children };
      return before.length === 0 ? [list] : [paragraph(before), list];
    });
}

/** Letters that have room beside the number of a step in a column of half the page. */
const shortLine = 60;

function saidOf(met: readonly TaskHazard[]): string {
  return [...new Set(met.flatMap(({ word, imperative }) => [word, imperative]))].join(' ');
}

function paragraph(met: readonly TaskHazard[]): Element {
  const properties = { className: ['reminders'] };
  return { type: 'element', tagName: 'p', properties, children: lines(met) };
}

function isNamedPanel(node: RootContent): boolean {
  if (node.type !== 'element') return false;
  const { dataHazards } = node.properties;
  return typeof dataHazards === 'string' && dataHazards !== '';
}

/** One line a signal word, `⚠ WARNING Keep clear. Wear goggles.` */
function lines(met: readonly TaskHazard[]): Element[] {
  const words = [...new Set(met.map(({ word }) => word))];
  return words.map((word) => {
    const same = met.filter((hazard) => hazard.word === word);
    const signal = same[0]?.signal ?? 'notice';
    const head = same[0]?.alert ? `⚠ ${word}` : word;
    const said = [...new Set(same.map(({ imperative }) => imperative))].join(' ');
    return {
      type: 'element',
      tagName: 'span',
      properties: { className: ['reminder', `reminder-${signal}`] },
      children: [
        {
          type: 'element',
          tagName: 'b',
          properties: { className: ['signal'] },
          // The symbol is not parted from its word, nor the word from what it says.
          children: [{ type: 'text', value: head.replace(' ', '\u00a0') }],
        },
        // Behind it the step's own words begin, in whatever copies the text.
        { type: 'text', value: ` ${said} ` },
      ],
    };
  });
}
