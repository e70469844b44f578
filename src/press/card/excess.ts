import type { Run } from '../browser/index.ts';
import { capHeightMm, labelAngles } from '../lettering/index.ts';
import type { Setting } from './fit.ts';
import type { CardModel } from './model.ts';

/** A part of the card with the lines of running text that it takes up. */
interface Part {
  readonly name: string;
  readonly lines: number;
}

/** How long the card is in some setting, and which of its parts make it so. */
interface Measured {
  /** Lines of running text that are more than a leaf has; 0 where it fits. */
  readonly over: number;
  /** Operations with their steps, the longest first. */
  readonly operations: readonly Part[];
  /** The other parts, in the order of the card. */
  readonly others: readonly Part[];
}

const dash = (parts: readonly Part[]): string =>
  parts.map(({ name, lines }) => `${name} (${counted(lines)})`).join(', ');

/**
 * Why a card can't be printed: by how much it is too long in the setting that needs least room, what
 * takes up the most, and what may be done.
 */
export async function tooLong(run: Run, model: CardModel, setting: Setting): Promise<string> {
  const { over, others } = await measured(run, model, setting);
  const { paper, readingDistanceMm } = model;
  const spared = others.filter(({ name }) => !needed.has(name));
  const hint = paper.small ? 'take a larger paper' : 'part the sheet';
  const leave =
    spared.length === 0 ? '' : `, or leave to the booklet what it can spare: ${dash(spared)}`;
  return (
    `The card of ${model.face.title} is about ${counted(over)} too long for one leaf of ${paper.label}, with its ` +
    'steps left to the booklet and in the smallest type that can be read ' +
    `${readingDistanceMm} mm away (capitals of ${capHeightMm(readingDistanceMm, labelAngles.least).toFixed(2)} mm). ` +
    `The most goes to ${dash(others.filter(({ name }) => needed.has(name)))}: ${hint}${leave}.`
  );
}

/** What a card that is short of room left to the booklet, and by how much it was too long in full. */
export async function leftOut(run: Run, model: CardModel, setting: Setting): Promise<string> {
  const { over, operations } = await measured(run, model, { content: 'full', density: 'tight' });
  const left = {
    full: '',
    brief: 'the rulings between sources and what its steps can spare',
    terse:
      'the rulings between sources, the whole words of its cautions and what its steps can spare',
    list: 'its steps, the rulings between sources and the whole words of its cautions',
  }[setting.content];
  return (
    `${model.face.title}: in full the card is about ${counted(over)} too long for a leaf of ` +
    `${model.paper.label}, so it leaves ${left} to the booklet. Its longest steps are those of ` +
    `${dash(operations.slice(0, 3))}.`
  );
}

/** The parts that no card is without. */
const needed = new Set(['the settings', 'the cautions', 'the order of work']);

function counted(lines: number): string {
  return lines === 1 ? '1 line' : `${lines} lines`;
}

async function measured(run: Run, model: CardModel, setting: Setting): Promise<Measured> {
  const { density, content } = setting;
  await run.ask(
    `Object.assign(document.body.dataset, { density: '${density}', content: '${content}' })`,
  );
  const found = (await run.ask(partHeights)) as {
    line: number;
    whole: number;
    operations: { name: string; px: number }[];
    others: { name: string; px: number }[];
  };
  const { paper, margins } = model;
  const leafPx = (2 * (paper.heightMm - margins.topMm - margins.bottomMm) * 96) / 25.4;
  const parts = (list: readonly { name: string; px: number }[]) =>
    list
      .map(({ name, px }) => ({ name, lines: Math.round(px / found.line) }))
      .filter(({ lines }) => lines > 0);
  return {
    // One that is a strip no longer than a leaf breaks across its sides so that it is.
    over: Math.max(1, Math.ceil((found.whole - leafPx) / found.line)),
    operations: parts(found.operations).sort((first, second) => second.lines - first.lines),
    others: parts(found.others),
  };
}

const partHeights = `(() => {
  const line = parseFloat(getComputedStyle(document.body).lineHeight);
  const height = (selector) => [...document.querySelectorAll(selector)]
    .reduce((sum, element) => sum + element.getBoundingClientRect().height, 0);
  const operations = [...document.querySelectorAll('.operation')].map((operation) => ({
    name: operation.querySelector('.title').textContent.replace(/\\s*⚠\\s*$/, ''),
    px: [...operation.getClientRects()].reduce((sum, box) => sum + box.height, 0),
  }));
  return {
    line, operations, whole: height('main'),
    others: [
      { name: 'the cautions', px: height('.cautions') },
      { name: 'the settings', px: height('.settings') },
      { name: 'the order of work', px: height('.work') },
      { name: 'what other sources say', px: height('.dissent') },
      { name: 'footnotes', px: height('.footnotes') },
      { name: 'editor’s notes', px: height('footer .notes') },
      { name: 'the notice', px: height('footer .notice') },
    ],
  };
})()`;
