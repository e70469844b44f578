import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { applyEdits } from '../../src/report/edits.ts';
import { mend } from '../../src/report/index.ts';
import { finding } from './specimens.ts';

const edit = (start: number, end: number, text: string) => ({ span: { start, end }, text });

describe('applying edits', () => {
  it('makes several in one go, whatever their order', () => {
    expect(applyEdits('abcdef', [edit(4, 5, 'E!'), edit(0, 1, ''), edit(2, 3, 'CC')])).toBe(
      'bCCdE!f',
    );
  });

  it('keeps byte order mark and line ends, and gives its own lines the ends of the file', () => {
    const text = '\ufeffone\r\ntwo\r\n';
    expect(applyEdits(text, [edit(6, 9, 'a\nb')])).toBe('\ufeffone\r\na\r\nb\r\n');
  });

  it('makes a doubled edit once and refuses colliding ones', () => {
    expect(applyEdits('abc', [edit(1, 2, 'X'), edit(1, 2, 'X')])).toBe('aXc');
    expect(() => applyEdits('abc', [edit(0, 2, 'X'), edit(1, 3, 'Y')])).toThrow('collide at 1-3');
    expect(() => applyEdits('abc', [edit(1, 1, 'X'), edit(1, 1, 'Y')])).toThrow('collide');
    expect(() => applyEdits('abc', [edit(2, 9, 'X')])).toThrow('outside');
  });

  it('touching edits do not collide', () => {
    expect(applyEdits('abc', [edit(0, 1, 'X'), edit(1, 2, 'Y')])).toBe('XYc');
  });

  it('leaves everything outside the spans as it was', () => {
    fc.assert(
      fc.property(
        fc.array(fc.tuple(fc.string(), fc.string({ minLength: 1 }), fc.string()), { maxLength: 6 }),
        fc.string(),
        (parts, tail) => {
          const edits = [];
          let text = '';
          let expected = '';
          for (const [kept, old, fresh] of parts) {
            const clean = fresh.replace(/[\r\n]/g, '');
            text += kept;
            edits.push(edit(text.length, text.length + old.length, clean));
            text += old;
            expected += kept + clean;
          }
          expect(applyEdits(text + tail, edits.reverse())).toBe(expected + tail);
        },
      ),
    );
  });
});

describe('mending', () => {
  it('takes all of a finding’s edits or none, the first of two that collide', () => {
    const first = finding({ check: 'first', edits: [edit(0, 1, 'A'), edit(4, 5, 'E')] });
    const second = finding({ check: 'second', edits: [edit(2, 3, 'C'), edit(4, 6, 'X')] });
    const third = finding({ check: 'third', edits: [edit(1, 2, 'B')] });
    const accepted = finding({ check: 'kept', edits: [edit(3, 4, 'D')], accepted: 'so it is' });
    const { text, mended } = mend('abcdef', [first, second, third, accepted, finding({})]);
    expect(text).toBe('ABcdEf');
    expect(mended.map((each) => each.check)).toEqual(['first', 'third']);
  });
});
