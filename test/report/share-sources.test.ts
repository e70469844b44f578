import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { parse } from 'yaml';
import { sheetFacts } from '../../src/checks/across/facts.ts';
import { gaugeBook } from '../../src/gauges/index.ts';
import { shareSources } from '../../src/report/index.ts';
import { readSheet } from '../../src/sheet/index.ts';
import { runs } from '../suite/part.ts';

const options = { kinds: new Map(), gauges: gaugeBook(), wireGauge: null };

function sheetWith(sources: string, more = ''): string {
  return `---\nsheet: x\nsources:\n${sources}\nsettings:\n  a: { value: 1 in, from: [m48 p. 1, b17] }\n${more}---\n\n# X\n`;
}

function share(texts: readonly string[], before: string | null = null) {
  const sheets = texts.map((text, index) => {
    const facts = sheetFacts(readSheet(text, `sheets/s${index}.md`, options));
    if (facts === null) throw new Error('no front matter');
    return { text, facts };
  });
  return shareSources(sheets, before, options);
}

const manual = '  m48: { title: Workshop Manual, year: 1948 }';

describe('papers that several sheets describe', () => {
  test('are moved, and nothing else of a sheet is touched', () => {
    const one = sheetWith(
      `${manual}\n  # ours is the second printing\n  b17: { title: Bulletin 17 } # lent`,
    );
    const two = sheetWith(`  kit: { title: Leaflet }\n${manual}`);
    const sharing = share([one, two, sheetWith('  kit: { title: Other leaflet }')]);
    expect(sharing?.moved).toEqual(['m48']);
    expect(sharing?.sourcesText).toBe(`gaugeleaf-sources: 1\nsources:\n${manual}\n`);
    expect([...(sharing?.sheets ?? [])]).toEqual([
      ['sheets/s0.md', one.replace(`${manual}\n`, '')],
      ['sheets/s1.md', two.replace(`${manual}\n`, '')],
    ]);
  });

  test('leave an empty list behind where there is no other, also in a file of Windows', () => {
    const text = sheetWith(manual).replaceAll('\n', '\r\n');
    const sharing = share([text, text]);
    expect(sharing?.sheets.get('sheets/s0.md')).toBe(
      text.replace(`sources:\r\n${manual}`, 'sources: {}'),
    );
    expect(sharing?.sourcesText).not.toContain('\r');
  });

  test('go to the end of a list that is there, whose comments stay', () => {
    const before = `# Papers of the club\ngaugeleaf-sources: 1\nsources:\n  old: { title: Old Book } # lent out\n`;
    const sharing = share([sheetWith(manual), sheetWith(manual)], before);
    expect(sharing?.sourcesText).toBe(`${before}${manual}\n`);
  });

  test('are only taken out where the list has them already, in the same words', () => {
    const before = `gaugeleaf-sources: 1\nsources:\n${manual}\n`;
    const sharing = share([sheetWith(manual)], before);
    expect(sharing?.sourcesText).toBe(before);
    expect(sharing?.sheets.size).toBe(1);
    expect(share([sheetWith(manual)], before.replace('1948', '1949'))).toBeNull();
    expect(
      share([sheetWith(manual), sheetWith(manual)], before.replace('1948', '1949')),
    ).toBeNull();
  });

  test.each([
    [
      'a comment among its lines',
      '  m48:\n    # from the loft\n    title: Workshop Manual\n    year: 1948',
    ],
    ['a comment behind it', `${manual} # from the loft`],
    ['a name for it', '  m48: &manual { title: Workshop Manual, year: 1948 }'],
    ['other words', '  m48: { title: Workshop Manual, year: 1949 }'],
    ['a list on one line', null],
  ])('stay where one of two has %s', (_, sources) => {
    const one = sheetWith(manual);
    const two =
      sources === null
        ? one.replace(`sources:\n${manual}`, `sources: {${manual}}`)
        : sheetWith(sources);
    expect(share([one, two])).toBeNull();
  });

  test('stay where an editor accepts that they are twice', () => {
    const kept = sheetWith(
      manual,
      'accept: [{ finding: source-repeated, at: m48, reason: printed on its own }]\n',
    );
    expect(share([sheetWith(manual), kept])).toBeNull();
    expect(share([sheetWith(manual), kept, sheetWith(manual)])?.sheets.size).toBe(2);
  });

  test('property: every sheet keeps its sources, and a second run finds nothing', () => {
    const described = fc.record({
      name: fc.constantFrom('m48', 'b17', 'kit'),
      title: fc.constantFrom('Workshop Manual', 'Bulletin 17', "'Leaflet: one'"),
      year: fc.constantFrom('1948', 'about 1950'),
      isBlock: fc.boolean(),
    });
    const sheet = fc
      .uniqueArray(described, { selector: ({ name }) => name, minLength: 1 })
      .map((list) =>
        sheetWith(
          list
            .map(({ name, title, year, isBlock }) =>
              isBlock
                ? `  ${name}:\n    title: ${title}\n    year: ${year}`
                : `  ${name}: { title: ${title}, year: ${year} }`,
            )
            .join('\n'),
          'note: kit\n',
        ).replace('b17]', 'b17, kit]'),
      );
    fc.assert(
      fc.property(fc.array(sheet, { minLength: 1, maxLength: 5 }), (texts) => {
        const sharing = share(texts);
        if (sharing === null) return;
        // By a YAML library of its own: what a sheet says itself goes before what is shared.
        const shared = parse(sharing.sourcesText).sources;
        const front = (text: string) => parse(text.split('---\n')[1] ?? '').sources;
        const after = texts.map((text, i) => sharing.sheets.get(`sheets/s${i}.md`) ?? text);
        for (const [i, text] of texts.entries()) {
          const own = front(after[i] ?? '');
          for (const [name, words] of Object.entries(front(text))) {
            expect({ ...shared, ...own }[name]).toEqual(words);
          }
        }
        expect(share(after, sharing.sourcesText)).toBeNull();
      }),
      { numRuns: runs(100) },
    );
  });
});
