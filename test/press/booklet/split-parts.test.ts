import { describe, expect, test } from 'vitest';
import { fillPageNumbers, hasPageNumbers } from '../../../src/press/booklet/page-numbers.ts';
import { splitBooklet } from '../../../src/press/booklet/split-parts.ts';
import { PressStopped } from '../../../src/press/index.ts';

describe('a booklet is taken apart', () => {
  test('at the children of main, whatever stands in them', () => {
    const one = '<section class="a > b"><p>1 &lt; 2<br><img alt="</section>"></p></section>';
    const two = '<div><svg><title></div></title><path d="M0 0"/></svg><!-- </div> --></div>';
    const html = `<html><body><p>x</p><main>\n${one}\n\n${two}\n</main></body></html>`;
    expect(splitBooklet(html)).toEqual({
      shell: '<html><body><p>x</p><main></main></body></html>',
      parts: [one, two],
    });
  });

  test('in a time that grows with its length only', () => {
    const section = `<section>${'<svg><title>A</title></svg>'.repeat(20_000)}</section>`;
    const start = performance.now();
    expect(splitBooklet(`<main>${section}${section}</main>`).parts.length).toBe(2);
    expect(performance.now() - start).toBeLessThan(10_000);
  });

  test.each([
    ['<section><p>open</section>', '<p>'],
    ['<section>', '<section>'],
    ['</section>', '<section>'],
  ])('but not where %s has %s unclosed', (inner, name) => {
    expect(() => splitBooklet(`<main>${inner}</main>`)).toThrow(PressStopped);
    expect(() => splitBooklet(`<main>${inner}</main>`)).toThrow(name);
  });

  test('and not without a main', () => {
    expect(() => splitBooklet('<body></body>')).toThrow('has no <main>');
  });
});

describe('page numbers', () => {
  const html = '<a href="#u"><span class="page-number" data-page-of="u">000</span></a>';

  test('are filled in where they are asked for', () => {
    expect(hasPageNumbers(html)).toBe(true);
    expect(fillPageNumbers(html, new Map([['u', 17]]))).toBe(html.replace('000', '17'));
  });

  test('stop the press where nothing has that id', () => {
    expect(() => fillPageNumbers(html, new Map())).toThrow(
      'asks for the page of "u", but no element has that id',
    );
  });
});
