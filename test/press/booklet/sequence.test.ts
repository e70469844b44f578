import { describe, expect, test } from 'vitest';
import { givenCount, hasRoomToFill, withTaken } from '../../../src/press/booklet/room-left.ts';
import { placingOf, sequence } from '../../../src/press/booklet/sequence.ts';

const plain = '<section class="part">';
const left = '<section class="chapter" data-begins="left">';
const filler = '<section class="chapter" data-fills style="page: x">';

/** The parts that are printed, each as long as its place in the list says. */
const taken = (parts: readonly string[], pages: readonly number[]) =>
  sequence(parts, async (at) => pages[at] ?? 1);

describe('how a part takes its place', () => {
  test('is said in its own tag, and nowhere within', () => {
    expect(placingOf(left)).toEqual({ beginsLeft: true, fills: false });
    expect(placingOf(filler)).toEqual({ beginsLeft: false, fills: true });
    expect(placingOf(`${plain}${left}${filler}`)).toEqual({ beginsLeft: false, fills: false });
    expect(placingOf('<section data-fillsup data-begins="right">').fills).toBe(false);
  });

  test('one that begins left where a left page comes needs no filler', async () => {
    expect(await taken([plain, filler, left], [1, 1, 4])).toEqual([0, 2]);
    expect(await taken([plain, filler, left, filler, left], [1, 1, 4, 1, 2])).toEqual([0, 2, 4]);
  });

  test('one that would come right takes the first filler before it', async () => {
    expect(await taken([plain, filler, left], [2, 1, 4])).toEqual([0, 1, 2]);
    expect(await taken([plain, left, filler, filler, left], [1, 5, 1, 1, 2])).toEqual([0, 1, 2, 4]);
  });

  test('fillers before a part that may begin anywhere, and at the end, are left out', async () => {
    expect(await taken([plain, left, filler, plain, filler], [1, 5, 1, 1, 1])).toEqual([0, 1, 3]);
  });

  test('without a filler it stands where it comes', async () => {
    expect(await taken([plain, left], [2, 4])).toEqual([0, 1]);
  });
});

describe('what may stand on the first page', () => {
  const part =
    '<section><div><h1>A</h1><div><!--takes--></div></div>' +
    '<div><!--gives--><p>1</p><!--next--><p>2</p><!--next--><p>3</p><!--given--></div></section>';

  test('is counted, and taken from the first on', () => {
    expect(hasRoomToFill(part)).toBe(true);
    expect(givenCount(part)).toBe(3);
    expect(withTaken(part, 2)).toBe(
      '<section><div><h1>A</h1><div><p>1</p><p>2</p></div></div><div><p>3</p></div></section>',
    );
    expect(withTaken(part, 0)).toContain('<div></div></div><div><p>1</p><p>2</p><p>3</p></div>');
  });

  test('is nothing where the part has no place for it', () => {
    expect(hasRoomToFill(part.replace('<!--takes-->', ''))).toBe(false);
    expect(hasRoomToFill('<section><!--takes--></section>')).toBe(false);
  });
});
