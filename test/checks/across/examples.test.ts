import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import type {
  AcrossCheck,
  AcrossExample,
  AcrossFinding,
} from '../../../src/checks/across/define.ts';
import { sheetFacts } from '../../../src/checks/across/facts.ts';
import { acrossChecks } from '../../../src/checks/across/list.ts';
import { runAcross } from '../../../src/checks/across/run.ts';
import { allChecks } from '../../../src/checks/index.ts';
import { readSheet } from '../../../src/sheet/index.ts';
import type { FileRegion } from '../../../src/text/region.ts';
import { exampleContext, wholeSheet } from '../examples.ts';

const context = exampleContext();

function textsOf({ sheets }: AcrossExample): ReadonlyMap<string, string> {
  return new Map(
    Object.entries(sheets).map(([id, fragment]) => [
      `sheets/${id}.md`,
      wholeSheet({ ...fragment, front: `sheet: ${id}\n${fragment.front ?? ''}` }),
    ]),
  );
}

function found(check: AcrossCheck, texts: ReadonlyMap<string, string>): readonly AcrossFinding[] {
  const files = new Map([...texts].map(([file, text]) => [file, { file, text }]));
  const facts = [...texts].map(([file, text]) => {
    const family = {
      find: (id: string) => files.get(`sheets/${id}.md`) ?? null,
      names: () => [...files.keys()],
    };
    const sheet = readSheet(text, file, { ...context, family });
    const taken = sheetFacts(sheet);
    if (taken === null) throw new Error(`${file} has no front matter`);
    return taken;
  });
  return runAcross([check], facts, context);
}

/** The text of a region that lies on one line. */
function under({ file, line, column, endColumn }: FileRegion, texts: ReadonlyMap<string, string>) {
  const words = texts
    .get(file)
    ?.split('\n')
    [line - 1]?.slice(column - 1, endColumn - 1);
  return [file.replace(/^sheets\/|\.md$/g, ''), words ?? ''] as const;
}

describe.each(acrossChecks.map((check) => [check.id, check] as const))('%s', (_, check) => {
  test.each(check.examples.map((example) => [example.name, example] as const))(
    '%s',
    (_name, example) => {
      const texts = textsOf(example);
      const told = found(check, texts).map(({ severity, at, message, fix, related }) => ({
        in: under(at, texts)[0],
        at: under(at, texts)[1],
        message,
        fix,
        severity,
        see: related.map((place) => under(place.at, texts)),
      }));
      expect(told).toEqual(
        example.expect.map((expected) => ({ severity: check.severity, ...expected })),
      );
    },
  );

  test('hits every message of its table', () => {
    const fixes = check.examples.flatMap((example) =>
      found(check, textsOf(example)).map(({ message }) => message),
    );
    for (const { message } of Object.values(check.messages)) {
      const parts = message
        .split(/\{[a-zA-Z]+\}/)
        .map((part) => part.replace(/[()[\]`.*+?$^|\\]/g, '\\$&'));
      expect(
        fixes.some((text) => new RegExp(`^${parts.join('.*')}$`).test(text)),
        message,
      ).toBe(true);
    }
  });

  test('shows right sheets and wrong ones, and says what it is in sentences', () => {
    expect(check.examples.some(({ expect: { length } }) => length === 0)).toBe(true);
    expect(check.examples.some(({ expect: { length } }) => length > 0)).toBe(true);
    expect(check.summary).toMatch(/^[A-Z].*\.$/s);
    expect(check.explain).toMatch(/^[A-Z].*\.$/s);
    if (check.severity === 'warning') expect(check.explain).toMatch(/\bAccept\b/);
  });
});

test('the lists hold every check of the folder, and no id of a sheet’s own checks', () => {
  const folder = new URL('../../../src/checks/across/', import.meta.url);
  const files = readdirSync(folder)
    .filter((name) => name.endsWith('.ts') && name !== 'define.ts')
    .filter((name) => /\bdefineAcrossCheck\(/.test(readFileSync(new URL(name, folder), 'utf8')))
    .map((name) => name.slice(0, -3));
  expect(acrossChecks.map(({ id }) => id).sort()).toEqual(files.sort());
  expect(allChecks.filter(({ id }) => acrossChecks.some((each) => each.id === id))).toEqual([]);
});
