import { describe, expect, test } from 'vitest';
import { sheetBody } from '../../../src/press/matter/body.ts';
import { sampleText, toPrint } from '../stand.ts';

/** The steps of an operation with that Markdown; what can be spared stands in brackets. */
function steps(markdown: string): string {
  const text = `${sampleText}\n## Test bench\n\n${markdown}\n`;
  const { sheet } = toPrint(text);
  const html =
    sheetBody(sheet, { prefix: 'card', picture: null, altitude: null }).operations.at(-1)?.steps ??
    '';
  return html
    .replace(/<span class="more">(.*?)<\/span>/g, '[$1]')
    .replace(/<span class="step-number">(\d+)<\/span>/g, '($1)')
    .replace(/<[^>]+>/g, '')
    .replace(/\s+/g, ' ')
    .trim();
}

describe('a step on a card', () => {
  test.each([
    [
      '1. Roll the rod on glass. Replace a bent one.',
      '(1)Roll the rod on glass.[ Replace a bent one.]',
    ],
    ['1. Pass a No. 29 drill. It drags.', '(1)Pass a No. 29 drill.[ It drags.]'],
    ['1. Bend it. Never bend the needle tab.', '(1)Bend it. Never bend the needle tab.'],
    [
      '1. Sight along it. They lie :value[float-level] apart.',
      '(1)Sight along it. They lie 13⁄64 ± 1⁄64 in apart.',
    ],
    ['1. One. Two. Do not three. Four.', '(1)One.[ Two.] Do not three.[ Four.]'],
    ['4. Fourth.\n5. Fifth! *Then* rest.', '(4)Fourth. (5)Fifth! Then rest.'],
    ['1. At .203 in. it fits', '(1)At .203 in. it fits'],
  ])('%s', (markdown, expected) => {
    expect(steps(markdown)).toBe(expected);
  });

  test('in a list with empty lines is parted too', () => {
    expect(steps('1. First. More.\n\n2. Second. More.')).toBe(
      '(1) First.[ More.] (2) Second.[ More.]',
    );
  });
});
