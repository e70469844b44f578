import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { allChecks, type CheckContext, examineParsed } from '../../src/checks/index.ts';
import { runChecks } from '../../src/checks/run.ts';
import { gaugeBook } from '../../src/gauges/index.ts';
import { builtInKinds } from '../../src/kinds/index.ts';
import { sameFamily } from '../../src/quantity/index.ts';
import type { Statement } from '../../src/quantity/model.ts';
import { readSheet } from '../../src/sheet/index.ts';
import type { PlacedSize, Setting, Sheet } from '../../src/sheet/model.ts';
import { casesToTry, isQuick } from '../suite/part.ts';

const folder = new URL('../../sheets/', import.meta.url);
const context: CheckContext = {
  gauges: gaugeBook(),
  kinds: builtInKinds(),
  wireGauge: 'imperial',
  picture: null,
};

/** One digit of one size that its setting states at least twice. */
interface Digit {
  readonly file: string;
  readonly setting: Setting;
  readonly size: PlacedSize;
  readonly offset: number;
}

function statementOf(size: PlacedSize | null): Statement | null {
  return size?.reading.ok ? size.reading.statement : null;
}

/** The sizes of a setting that say the same thing: value, `also`, gauge. */
function stated(setting: Setting): { size: PlacedSize; statement: Statement }[] {
  const sizes = [setting.value, ...setting.also, setting.gauge, setting.go, setting.noGo];
  const found: { size: PlacedSize; statement: Statement }[] = [];
  const dimension = statementOf(setting.value)?.dimension;
  for (const size of sizes) {
    const statement = statementOf(size);
    if (!size || !statement || !dimension || statement.condition !== null) continue;
    if (sameFamily(statement.dimension, dimension)) found.push({ size, statement });
  }
  return found;
}

/** Where the tolerance of a written size starts: its digits are stated twice only if limits are. */
function toleranceStart(text: string): number {
  const at = text.search(/±|\+\/-|\s\+/);
  return at < 0 ? text.length : at;
}

function digitsOf(sheet: Sheet): Digit[] {
  const digits: Digit[] = [];
  for (const setting of sheet.settings.values()) {
    const sizes = stated(setting);
    if (sizes.length < 2) continue;
    const limited = sizes.filter(({ statement }) => statement.low || statement.high).length;
    for (const { size, statement } of sizes) {
      const source = sheet.text.slice(size.span.start, size.span.end);
      // After the figure stand words such as `per 10 strokes`; their digits are part of the unit.
      const end = statement.dimension === 'delivery' ? source.search(/per|\//) : source.length;
      const tolerance = toleranceStart(source);
      for (let i = 0; i < end; i++) {
        if (!/\d/.test(source.charAt(i))) continue;
        if (i > tolerance && limited < 2) continue;
        digits.push({ file: sheet.file, setting, size, offset: size.span.start + i });
      }
    }
  }
  return digits;
}

/** The sheet's text with all settings but one blanked, line for line, and no work below. */
function only(sheet: Sheet, setting: Setting): string {
  const { text, frontMatter } = sheet;
  const blank = (part: string): string => part.replace(/[^\n]/g, ' ');
  let kept = '';
  let at = 0;
  for (const other of sheet.settings.values()) {
    if (other === setting) continue;
    kept +=
      text.slice(at, other.name.span.start) +
      blank(text.slice(other.name.span.start, other.span.end));
    at = other.span.end;
  }
  const end = frontMatter?.end ?? text.length;
  return `${kept}${text.slice(at, end)}\n---\n`;
}

function changed(text: string, offset: number, digit: string): string {
  return text.slice(0, offset) + digit + text.slice(offset + 1);
}

/**
 * Digits to put in place of one: all nine others when ALL_DIGITS=1 is set (some minutes), else
 * three that differ from place to place, so that every digit is tried in a minute.
 */
function replacements(digit: string, offset: number): string[] {
  const steps =
    process.env.ALL_DIGITS === '1' ? [1, 2, 3, 4, 5, 6, 7, 8, 9] : [1, 9, 2 + (offset % 7)];
  return steps.map((step) => String((Number(digit) + step) % 10));
}

const SIZE_CHECKS =
  /^(?:(?:size|sizes|gauge|limits|fraction|dimension|places)-|worked-disagrees|relation-unworkable|dissent-unruled)/;
const sizeChecks = allChecks.filter(({ id }) => SIZE_CHECKS.test(id));

/** Whether a size check speaks of the line of the digit, or points to it from the other statement. */
function isFound(text: string, file: string, line: number): boolean {
  const sheet = readSheet(text, file, context);
  return runChecks(sizeChecks, sheet, context).some(({ span: own, related }) =>
    [own, ...related.map(({ span }) => span)].some(
      (span) => sheet.lines.place(span.start).line === line,
    ),
  );
}

const sheets = readdirSync(folder)
  .filter((name) => name.endsWith('.md'))
  .sort()
  .map((name) => readSheet(readFileSync(new URL(name, folder), 'utf8'), `sheets/${name}`, context));

describe('one wrong digit in the demo', () => {
  it('has sheets that are clean to begin with', () => {
    for (const sheet of sheets) {
      const loud = examineParsed(sheet, context).filter(({ accepted }) => accepted === null);
      expect(loud, sheet.file).toEqual([]);
    }
  });

  it('is found at its line in at least 99 of 100 cases', { timeout: 400_000 }, () => {
    let tried = 0;
    const missed: string[] = [];
    let whole = 0;
    for (const sheet of sheets) {
      for (const { setting, size, offset } of casesToTry(digitsOf(sheet), 32)) {
        const text = only(sheet, setting);
        const line = sheet.lines.place(offset).line;
        for (const digit of replacements(sheet.text.charAt(offset), offset)) {
          tried++;
          const found = isFound(changed(text, offset, digit), sheet.file, line);
          // A sample is held against the whole sheet, so that the short cut above proves nothing false.
          if (tried % (isQuick ? 53 : 211) === 0) {
            whole++;
            expect(
              isFound(changed(sheet.text, offset, digit), sheet.file, line),
              `${sheet.file}:${line}`,
            ).toBe(found);
          }
          if (found) continue;
          const wrong = changed(sheet.text, offset, digit).slice(size.span.start, size.span.end);
          const others = stated(setting)
            .filter((each) => each.size !== size)
            .map((each) => each.statement.text);
          missed.push(
            `${sheet.file}:${line} ${setting.name.value}: ${size.text} → ${wrong}, beside ${others.join(', ')}`,
          );
        }
      }
    }
    const rate = (100 * (tried - missed.length)) / tried;
    console.log(
      `digits changed: ${tried}; found: ${tried - missed.length} (${rate.toFixed(2)} %); whole sheets tried: ${whole}`,
    );
    for (const each of missed) console.log(`not found, agrees at its stated places: ${each}`);
    expect(tried).toBeGreaterThan(isQuick ? 100 : 1000);
    expect(rate).toBeGreaterThanOrEqual(99);
  });
});
