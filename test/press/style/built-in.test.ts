import handlebars from 'handlebars';
import { expect, test } from 'vitest';
import { readWording } from '../../../src/press/orders/index.ts';
import { templateShapes } from '../../../src/press/style/check-style.ts';
import { checkTemplates } from '../../../src/press/style/check-template.ts';
import { checkStyle } from '../../../src/press/style/index.ts';
import { readTemplateFolder, wordingFile } from '../../../src/project/template-folder.ts';
import { builtInFolder } from '../../../src/project/templates.ts';

const { texts, fonts, unusable } = readTemplateFolder(builtInFolder(), builtInFolder());
const wording = readWording(texts.get(wordingFile) ?? '').words;

test('the built-in templates use nothing that there is not', () => {
  expect(unusable).toEqual([]);
  expect(checkTemplates(templateShapes, { texts, wording }, handlebars).faults).toEqual([]);
});

test('no built-in file lies idle, and no style names what there is not', async () => {
  const style = { own: texts, builtIn: texts, wording, fonts: new Set(fonts.keys()) };
  expect(await checkStyle({ ...style, drawings: new Set() })).toEqual([]);
});
