import { HtmlValidate, StaticConfigLoader } from 'html-validate';
import { describe, expect, test } from 'vitest';
import { demoOrder, pagesOf } from './demo-site.ts';

// The pages under html-validate's own recommended rules, none of them switched off.
const validator = new HtmlValidate(
  new StaticConfigLoader({ extends: ['html-validate:recommended'] }),
);
const pages = await pagesOf(demoOrder().order);

describe('the demo’s pages under html-validate', () => {
  test.each([...pages])('%s has no error and no warning', async (_, html) => {
    const { results } = await validator.validateString(html);
    const said = results.flatMap(({ messages }) =>
      messages.map(({ ruleId, message, line }) => `${line}: ${message} (${ruleId})`),
    );
    expect(said).toEqual([]);
  });

  test('a fault would be found', async () => {
    const html = [...pages.values()][0]?.replace('<main', '<p><div></div></p><main') ?? '';
    const { valid } = await validator.validateString(html);
    expect(valid).toBe(false);
  });
});
