import { describe, expect, test } from 'vitest';
import { good, problems, read, under } from './fixtures.ts';

const sheet = read(good);
const setting = (name: string) => {
  const found = sheet.settings.get(name);
  if (!found) throw new Error(`no setting ${name}`);
  return found;
};

describe('the front matter of a good sheet', () => {
  test('has no problems', () => expect(problems(sheet)).toEqual([]));

  test('lies between its fences', () => {
    const content = under(sheet, sheet.frontMatter) ?? '';
    expect(content.startsWith('# yaml-language-server')).toBe(true);
    expect(content.endsWith('reason: as printed }')).toBe(true);
  });

  test('keeps every scalar as written, at its place', () => {
    for (const placed of [
      sheet.format,
      sheet.id,
      sheet.title,
      sheet.revision,
      sheet.date,
      sheet.status,
      sheet.rounding,
      sheet.wireGauge,
    ]) {
      expect(under(sheet, placed?.span)).toBe(placed?.source);
    }
    expect([sheet.format?.value, sheet.revision?.value]).toEqual([1, 2]);
    expect(sheet.title?.value).toBe('Orlo T71 😀 two-barrel');
    expect([sheet.date?.value, sheet.status?.value]).toEqual(['2026-10-03', 'proof']);
    expect([sheet.rounding?.value, sheet.wireGauge?.value]).toEqual(['ordinary', 'us-steel']);
  });

  test('tells the unit, its sizes, threads and the rest', () => {
    const { unit } = sheet;
    expect(unit.model?.value).toBe('010');
    expect(unit.partNumbers.map(({ value }) => value)).toEqual(['T71-104', '0104']);
    expect(unit.features.map(({ span }) => under(sheet, span))).toEqual([
      'two-barrel',
      'downdraft',
      'Metering Rods',
    ]);
    expect([...unit.sizes].map(([key, { text, reading }]) => [key, text, reading.ok])).toEqual([
      ['throttle-bore', '1-7/16 in', true],
      ['throttle-closed-angle', '12°', true],
    ]);
    expect([...unit.threads.keys()]).toEqual(['idle-needle-thread']);
    expect([...unit.other.keys()]).toEqual(['casting']);
  });

  test('tells fits, sources and acceptances', () => {
    expect(sheet.fits).toMatchObject([{ marque: 'Wexcombe', model: 'Six', years: '1948-1950' }]);
    expect(sheet.sources.get('m48')).toMatchObject({
      kind: { value: 'manual' },
      year: { value: 1948 },
    });
    expect(sheet.sources.get('bench')?.units?.value).toBe(3);
    expect(under(sheet, sheet.sources.get('m48')?.name.span)).toBe('m48');
    expect(sheet.accept[0]).toMatchObject({
      finding: { value: 'chopped' },
      at: { value: 'float-level' },
      reason: { value: 'as printed' },
    });
  });
});

describe('settings', () => {
  test('carry sizes at their places, quotes left outside', () => {
    const { value, also, go, noGo, gauge } = setting('float-level');
    for (const size of [value, ...also, go, noGo]) {
      expect(under(sheet, size?.span)).toBe(size?.text);
      expect(size?.reading.ok).toBe(true);
    }
    expect(also.map(({ text }) => text)).toEqual(['0.203 in', '5.16 mm']);
    expect(gauge).toBeNull();
    expect([go?.text, noGo?.text]).toEqual(['3/16 drill', '7/32 drill']);
  });

  test('are named by the kind, by alias too', () => {
    expect(setting('Choke Unloader').id).toBe('unloader');
    expect(under(sheet, setting('Choke Unloader').name.span)).toBe('Choke Unloader');
    expect(setting('float-level').id).toBe('float-level');
  });

  test('cite sources with their pages', () => {
    const { from, but } = setting('Choke Unloader');
    expect(from.map(({ source, page }) => [under(sheet, source.span), page])).toEqual([
      ['m48', 'p. 33'],
      ['bench', null],
    ]);
    expect(under(sheet, from[0]?.span)).toBe('m48 p. 33');
    expect(but[0]).toMatchObject({
      value: { text: 'No. 30 drill' },
      from: { source: { value: 'bench' } },
      ruling: { value: 'one unit was worn' },
    });
  });

  test('say what is said beside the value', () => {
    const { said, at } = setting('float-level');
    expect([...said].map(([key, { value }]) => [key, value])).toEqual([
      ['cover', 'inverted'],
      ['gasket', 'removed'],
    ]);
    expect(at?.value).toBe('free end of the float');
    const mixture = setting('idle-mixture');
    expect([...mixture.places.keys()]).toEqual(['primary', 'secondary']);
    expect(under(sheet, mixture.places.get('secondary')?.span)).toBe('1 turn out');
    expect(mixture.placesDiffer?.value).toBe('the secondary side is leaner');
    expect(mixture.travel?.text).toBe('0.039 in');
    expect(mixture.rounding?.value).toBe('inward');
    expect(mixture.note?.value).toBe('hot, in neutral');
    expect(under(sheet, mixture.note?.span)).toBe('hot, in neutral');
    expect(mixture.value).toBeNull();
  });
});

describe('the work', () => {
  test('has an operation for each heading of the second level, not for one in a quote', () => {
    expect(
      sheet.operations.map(({ heading, id, known }) => [
        heading.value,
        id?.value,
        known?.name ?? null,
      ]),
    ).toEqual([
      ['Float level', 'float-level', 'float-level'],
      ['idle-mixture set', undefined, null],
    ]);
    const [first, second] = sheet.operations;
    expect(under(sheet, first?.heading.span)).toBe('Float level');
    expect(under(sheet, first?.id?.span)).toBe('float-level');
    expect(under(sheet, second?.heading.span)).toBe(':value[idle-mixture] set');
    expect(first?.span.end).toBe(second?.span.start);
    expect(second?.span.end).toBe(good.length);
    expect(under(sheet, first?.span)?.startsWith('## Float level {#float-level}')).toBe(true);
  });

  test('has steps with the numbers that the list gives', () => {
    expect(sheet.operations.map(({ steps }) => steps.map(({ number }) => number))).toEqual([
      [1, 2],
      [3, 4],
    ]);
    expect(under(sheet, sheet.operations[1]?.steps[0]?.span)).toBe('3. Third.');
  });

  test('has values wherever they are used, tables and headings included', () => {
    expect(
      sheet.values.map(({ name, operation, span }) => [name, operation, under(sheet, span)]),
    ).toEqual([
      ['float-level', 0, ':value[float-level]'],
      ['float-level', 0, ':value[float-level]'],
      ['Choke Unloader', 0, ':value[ Choke Unloader ]'],
      ['idle-mixture', 1, ':value[idle-mixture]'],
      ['idle-mixture', 1, ':value[idle-mixture]'],
    ]);
  });

  test('has states, messages and pictures', () => {
    expect(sheet.states.map(({ text, span }) => [text, under(sheet, span)])).toEqual([
      ['cover inverted', ':state[cover inverted]'],
    ]);
    expect(sheet.messages.map(({ signal, operation }) => [signal, operation])).toEqual([
      ['warning', 0],
    ]);
    const hazards = sheet.messages[0]?.hazards ?? [];
    expect(hazards.map(({ value, span }) => [value, under(sheet, span)])).toEqual([
      ['gasoline-vapor', 'gasoline-vapor'],
      ['solvent', 'solvent'],
    ]);
    expect(under(sheet, sheet.messages[0]?.span)?.endsWith('\n:::')).toBe(true);
    expect(sheet.pictures.map(({ url, alt, span }) => [url, alt, under(sheet, span)])).toEqual([
      ['pictures/front.png', 'Front view', '![Front view][front]'],
      ['pictures/sign.png', 'Sign', '![Sign](pictures/sign.png)'],
    ]);
  });

  test('remembers raw HTML and directives that are none of its own', () => {
    expect(sheet.html.map((span) => under(sheet, span))).toEqual(['<b>', '</b>']);
    expect(
      sheet.directives.map(({ name, kind, span }) => [name, kind, under(sheet, span)]),
    ).toEqual([['vlaue', 'text', ':vlaue[x]']]);
  });
});

describe('prose', () => {
  test('is as long as its span, and its offsets are true', () => {
    for (const { text, span } of sheet.prose) expect(text.length).toBe(span.end - span.start);
    const first = sheet.prose.find(({ text }) => text.includes('star'));
    expect(first?.text).toBe('Text ±         *star, 10:30 and ');
    const at = (first?.span.start ?? 0) + (first?.text.indexOf('star') ?? 0);
    expect(good.slice(at, at + 4)).toBe('star');
  });

  test('knows its block', () => {
    const low = sheet.prose.find(({ text }) => text === 'low');
    expect(under(sheet, low?.block)).toBe('High floods, *low* starves at :value[float-level] 😀.');
    expect(low?.operation).toBe(0);
  });

  test('is neither code nor the name in a directive', () => {
    const all = sheet.prose.map(({ text }) => text).join('|');
    expect(all).not.toContain('1/4 in');
    expect(all).not.toContain('cover inverted');
    expect(all).toContain(' set');
  });
});
