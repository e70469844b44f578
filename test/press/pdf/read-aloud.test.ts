import { describe, expect, test } from 'vitest';
import { calledAs } from '../../../src/press/pdf/bookmarks.ts';
import { artifactsMarked, wholeWords } from '../../../src/press/pdf/marked-content.ts';
import { mendedTags, structureFaults } from '../../../src/press/pdf/mend-tags.ts';
import { xmpPacket } from '../../../src/press/pdf/metadata.ts';
import type { Tag } from '../../../src/press/pdf/part.ts';

const tag = (role: string, kids: Tag['kids'] = [], more = ''): Tag => ({
  role,
  kids,
  more,
  attributes: '',
  id: null,
  headers: [],
});
const alt = '/Alt(A float)';

describe('what is read aloud', () => {
  test('Matterhorn 13-004: a picture gives its figure its words, and every figure has some', () => {
    const figure = tag('Figure', [tag('Figure', [{ page: 0, mark: 1 }], alt), tag('Caption')]);
    const [mended] = mendedTags([figure]);
    expect(mended?.more).toBe(alt);
    expect(mended?.kids.map((kid) => ('role' in kid ? kid.role : 'mark'))).toEqual([
      'mark',
      'Caption',
    ]);
    expect(structureFaults([{ tags: [tag('Figure')] }])).toEqual(['13-004']);
    expect(structureFaults([{ tags: mendedTags([figure, tag('Figure')]) }])).toEqual([]);
  });

  test('Matterhorn 14-002, 14-003: headings begin at the first level and leave none out', () => {
    expect(structureFaults([{ tags: [tag('H2')] }])).toEqual(['14-002']);
    expect(structureFaults([{ tags: [tag('H1'), tag('H3')] }])).toEqual(['14-003']);
    expect(structureFaults([{ tags: [tag('H1'), tag('H2'), tag('H1')] }])).toEqual([]);
  });

  test('Matterhorn 02-001, 09-005: roles are those of PDF 1.7, and an item has a label and a body', () => {
    expect(structureFaults([{ tags: [tag('Strong')] }])).toEqual(['02-001']);
    expect(mendedTags([tag('Strong'), tag('Aside')]).map(({ role }) => role)).toEqual([
      'Span',
      'Note',
    ]);
    const [item] = mendedTags([tag('LI', [tag('Lbl'), { page: 0, mark: 2 }, tag('P')])]);
    expect(item?.kids.map((kid) => ('role' in kid ? kid.role : 'mark'))).toEqual(['Lbl', 'LBody']);
  });

  test('words whole: a line ends with its space, but behind a hyphen', () => {
    const line = (level: number, glyphs: string) =>
      `BT\n/F1 10 Tf\n1 0 0 -1 10 ${level} Tm\n<${glyphs}> Tj\nET`;
    const content = [line(10, '00050006'), line(20, '00070008'), line(30, '0009')].join('\n');
    const spaced = wholeWords(
      content,
      () => '0001',
      (_, glyph) => glyph === '0008',
    );
    expect([...spaced.matchAll(/<(\w+)>/g)].map(([, hex]) => hex)).toEqual([
      '000500060001',
      '00070008',
      '00090001',
    ]);
  });

  test('Matterhorn 01-005: what is painted in no marked stretch is an artifact', () => {
    const content = '0 0 m\n1 1 l\nS\n/P <</MCID 0 >>BDC\n0 0 5 5 re\nf\nEMC\nBT\n<0001> Tj\nET';
    expect(artifactsMarked(content)).toBe(
      '/Artifact BMC\n0 0 m\n1 1 l\nS\nEMC\n/P <</MCID 0 >>BDC\n0 0 5 5 re\nf\nEMC\n/Artifact BMC\nBT\n<0001> Tj\nET\nEMC',
    );
  });

  test('Matterhorn 06-002, 06-003: metadata have title and language, and the identifier where it is true', () => {
    const facts = { title: 'A & B', author: null, language: 'en' };
    const packet = xmpPacket({ ...facts, isUniversal: true });
    expect(packet).toContain('<rdf:li xml:lang="x-default">A &amp; B</rdf:li>');
    expect(packet).toContain('<rdf:li>en</rdf:li>');
    expect(packet).toContain('<pdfuaid:part>1</pdfuaid:part>');
    expect(xmpPacket({ ...facts, isUniversal: false })).not.toContain('<pdfuaid:part>');
  });

  test('bookmarks are called as the headings, where there are as many', () => {
    const at = { page: 0, x: 0, y: 0 };
    const outline = [
      { title: '1Strip', ...at, entries: [{ title: 'forthe', ...at, entries: [] }] },
    ];
    const [first] = calledAs(outline, ['1 Strip', 'for the']);
    expect([first?.title, first?.entries[0]?.title]).toEqual(['1 Strip', 'for the']);
    expect(calledAs(outline, ['one'])).toBe(outline);
  });
});
