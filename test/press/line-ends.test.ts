import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import type { CheckContext } from '../../src/checks/index.ts';
import { examine } from '../../src/checks/list.ts';
import { sheetSnapshot } from '../../src/compare/index.ts';
import { gaugeBook } from '../../src/gauges/index.ts';
import { builtInKinds } from '../../src/kinds/index.ts';
import { bookletModel } from '../../src/press/booklet/model.ts';
import { cardModel } from '../../src/press/card/model.ts';
import { capHeightsByFamily } from '../../src/press/html/font-faces.ts';
import { builtInTemplates, sampleText } from './stand.ts';

const folder = new URL('../../sheets/', import.meta.url);
const texts: readonly (readonly [string, string])[] = [
  ['the sample', sampleText],
  ...readdirSync(folder)
    .filter((name) => name.endsWith('.md'))
    .map((name): readonly [string, string] => [name, readFileSync(new URL(name, folder), 'utf8')]),
];

const context: CheckContext = {
  kinds: builtInKinds(),
  gauges: gaugeBook(),
  wireGauge: 'imperial',
  picture: null,
};
const picture = () => ({ dataUri: 'data:image/png;base64,iVBORw0KGgo=' });
const capHeights = capHeightsByFamily(builtInTemplates());
const options = { paper: 'letter', draft: false, picture, capHeights, readings: null } as const;

/** Everything that leaves a sheet for people: findings in words, card, chapter, plain data. */
function outcome(text: string) {
  const { sheet, findings } = examine(text, 'sheets/any.md', context);
  const entry = { sheet, findings };
  return {
    findings: findings.map(({ check, message, fix, span }) => {
      const { line, column } = sheet.lines.place(span.start);
      return `${line}:${column} ${check} ${message} ${fix}`;
    }),
    card: cardModel(sheet, findings, null, options),
    chapter: bookletModel([entry], { title: 'Settings' }, options),
    data: sheetSnapshot(sheet),
  };
}

describe.each(texts)('%s', (_, text) => {
  const right = outcome(text);
  test('says the same where its lines end as on another system, and its card has the same code', () => {
    expect(text).not.toContain('\r');
    expect(outcome(text.replaceAll('\n', '\r\n'))).toEqual(right);
  });
});
