import { describe, expect, test } from 'vitest';
import { openProject } from '../../src/project/project.ts';
import { readingDistance } from '../../src/project/reading-distance.ts';
import { folderWith } from './folder.ts';

describe('a reading distance', () => {
  test.each([
    ['700 mm', 700],
    ['28 in', 711.2],
    ['250 mm', 250],
    ['1500 mm', 1500],
  ])('%s is %f mm', (written, mm) => {
    expect(readingDistance(written)).toEqual({ mm });
  });

  test.each([
    ['249.9 mm', 'a card is not read at 249.9 mm: the press sizes type for 250 to 1500 mm'],
    ['1501 mm', 'a card is not read at 1501 mm: the press sizes type for 250 to 1500 mm'],
    ['500 ± 20 mm', '`500 ± 20 mm` is no plain distance'],
    ['2 psi', '`2 psi` is no plain distance'],
    ['letter Z drill', '`letter Z drill` is no plain distance'],
  ])('%s is refused', (written, message) => {
    expect(readingDistance(written)).toMatchObject({ message });
  });

  test.each(['500', 'an arm'])('%s cannot be read', (written) => {
    expect(readingDistance(written)).toMatchObject({
      message: expect.stringMatching(/^the reading distance can't be read: /),
      fix: 'write one length with its unit, such as `500 mm` or `20 in`',
    });
  });

  test('of an edition goes to the press, or is found at its place', () => {
    const edition = (line: string) => {
      const text = `gaugeleaf-edition: 1\ntitle: Settings\n${line}\n`;
      const root = folderWith({ 'edition.yaml': text });
      return openProject(root, root).edition();
    };
    expect(edition('reading-distance: 700 mm').edition?.facts.readingDistanceMm).toBe(700);
    expect(edition('').edition?.facts.readingDistanceMm).toBeNull();
    const { edition: found, faults } = edition('reading-distance: 700');
    expect(found?.facts.readingDistanceMm).toBeNull();
    const [finding] = faults?.findings ?? [];
    expect(finding?.severity).toBe('error');
    expect(faults?.lines.place(finding?.span.start ?? 0)).toMatchObject({ line: 3, column: 19 });
  });
});
