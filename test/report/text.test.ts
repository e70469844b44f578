import { describe, expect, it } from 'vitest';
import { placeFindings } from '../../src/report/index.ts';
import { toText } from '../../src/report/text.ts';
import { LineIndex } from '../../src/text/span.ts';
import { finding, reports, text } from './specimens.ts';

describe('findings as text', () => {
  it('groups by file, aligns the columns and sums up', () => {
    expect(toText(reports)).toBe(`sheets/orlo.md
  5:12  error    sizes-disagree
        No. 29 drill is 0.1360 in, but \`also\` says 0.163 in (0.027 in more)
        fix: 0.136 in, if two digits were swapped; otherwise correct the drill
        see: 4:12 the value
  6:14  warning  chopped
        a message with 100% of the odd: characters, all of them
   3:3  note     usual-range
        high

1 error, 1 warning, 1 note in 1 of 2 sheets; 1 accepted by the editor; 1 can be mended with check --fix
`);
  });

  it('shows accepted findings with their reason when all are asked for', () => {
    expect(toText(reports, { all: true })).toContain(
      '  4:12  accepted  loosely-rounded\n        loose\n        accepted: the maker rounds so\n',
    );
  });

  it('breaks long lines under their own beginning on a terminal', () => {
    const lines = toText(reports, { width: 50 }).split('\n');
    expect(lines.slice(1, 6)).toEqual([
      '  5:12  error    sizes-disagree',
      '        No. 29 drill is 0.1360 in, but `also` says',
      '        0.163 in (0.027 in more)',
      '        fix: 0.136 in, if two digits were swapped;',
      '             otherwise correct the drill',
    ]);
  });

  it('says so when nothing is wrong', () => {
    expect(toText([], { sheets: 8 })).toBe('No findings in 8 sheets\n');
    expect(toText([], { sheets: 1 })).toBe('No findings in 1 sheet\n');
  });

  it('colors only when asked, and closes every color', () => {
    expect(toText(reports)).not.toContain('\u001b');
    const colored = toText(reports, { color: true });
    expect(colored).toContain('\u001b[31merror  \u001b[39m');
    // biome-ignore lint/suspicious/noControlCharactersInRegex: the colors are control sequences.
    expect(colored.replace(/\u001b\[\d+m/g, '')).toBe(toText(reports));
  });

  it('keeps a sheet from writing to the terminal', () => {
    const hostile = finding({ message: 'value \u001b[2J\u202e0.5\r\nnext', fix: null });
    const report = {
      file: 'sheets/\u001b]0;x\u0007.md',
      findings: placeFindings([hostile], new LineIndex(text)),
    };
    const shown = toText([report]);
    expect(shown).toContain('value <U+001B>[2J<U+202E>0.5 next\n');
    expect(shown).toContain('sheets/<U+001B>]0;x<U+0007>.md\n');
  });
});
