import { execFileSync, spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, test } from 'vitest';

/**
 * The examples of docs/library.md, each held by the compiler against the types that come with the package,
 * and run against the built package; what they print stands below them.
 */
const root = join(import.meta.dirname, '..', '..');
const page = join(root, 'docs', 'library.md');
const block = /<!-- library -->\n```js\n([\s\S]*?)```\n\n<!-- printed -->\n```text\n([\s\S]*?)```/g;
const examples = [...readFileSync(page, 'utf8').matchAll(block)].map(
  ([, code = '', printed = ''], index) => ({ index, code, printed }),
);

const home = mkdtempSync(join(tmpdir(), 'gaugeleaf-library-'));
afterAll(() => rmSync(home, { recursive: true, force: true }));
mkdirSync(join(home, 'node_modules'));
symlinkSync(root, join(home, 'node_modules', 'gaugeleaf'), 'dir');
symlinkSync(join(root, 'sheets'), join(home, 'sheets'), 'dir');
for (const { index, code } of examples) writeFileSync(join(home, `example-${index}.mjs`), code);

test('there is an example for each thing that the library offers', () => {
  const code = examples.map((example) => example.code).join('\n');
  for (const name of ['examine', 'readSize', 'findings', 'schemas/']) expect(code).toContain(name);
});

test.each(examples)('example $index prints what the page says', ({ index, printed }) => {
  const { status, stdout, stderr } = spawnSync(process.execPath, [`example-${index}.mjs`], {
    cwd: home,
    encoding: 'utf8',
  });
  expect(status, stderr).toBe(0);
  if (process.env.RENEW_GOLDEN) {
    const text = readFileSync(page, 'utf8');
    let at = -1;
    const renewed = text.replace(block, (whole, code: string) => {
      at += 1;
      return at === index
        ? `<!-- library -->\n\`\`\`js\n${code}\`\`\`\n\n<!-- printed -->\n\`\`\`text\n${stdout}\`\`\``
        : whole;
    });
    writeFileSync(page, renewed);
    return;
  }
  expect(stdout).toBe(printed);
});

test('the types that come with it serve a strict program, and refuse what is not there', () => {
  writeFileSync(
    join(home, 'wrong.mts'),
    "import { examine } from 'gaugeleaf';\nexamine('').findings[0]?.meaning;\nexamine('', { wireGauge: 'none' });\n",
  );
  const config = {
    compilerOptions: {
      strict: true,
      noEmit: true,
      target: 'ES2023',
      module: 'nodenext',
      allowJs: true,
      checkJs: true,
      // The packages that the types might lean on are not there.
      types: [],
      skipLibCheck: false,
    },
    files: [...examples.map(({ index }) => `example-${index}.mjs`), 'wrong.mts'],
  };
  writeFileSync(join(home, 'tsconfig.json'), JSON.stringify(config));
  let said = '';
  try {
    execFileSync(
      process.execPath,
      [join(root, 'node_modules', 'typescript', 'bin', 'tsc'), '-p', home],
      {
        cwd: home,
        encoding: 'utf8',
      },
    );
  } catch (error) {
    said = String((error as { stdout: unknown }).stdout);
  }
  const faults = said.split('\n').filter((line) => /error TS/.test(line));
  // Node's own names are not known here, and that is all that the examples lack.
  const unknown = faults.filter(
    (line) =>
      !/TS2591|TS2307: Cannot find module 'node:|Cannot find name 'console'|TS2584|TS2339: Property 'url'/.test(
        line,
      ),
  );
  expect(unknown.map((line) => line.replace(/\(.*?\).*error (TS\d+).*/, ' $1'))).toEqual([
    'wrong.mts TS2339',
    'wrong.mts TS2322',
  ]);
});
