import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { decodeText } from '../../src/project/decode.ts';

const bytes = (text: string, encoding: BufferEncoding = 'utf8') => Buffer.from(text, encoding);

describe('decoding a file', () => {
  it('takes UTF-8 as it is, byte order mark and all', () => {
    expect(decodeText(bytes('12° ½'))).toEqual({ text: '12° ½', fault: null });
    expect(decodeText(bytes('\ufeffa'))).toEqual({ text: '\ufeffa', fault: null });
    expect(decodeText(new Uint8Array())).toEqual({ text: '', fault: null });
  });

  it('reads UTF-16 of either end, and says what it is', () => {
    const little = Buffer.concat([Buffer.from([0xff, 0xfe]), bytes('---\n12°', 'utf16le')]);
    const big = Buffer.from(little).swap16();
    for (const file of [little, big, bytes('---\n12°', 'utf16le')]) {
      const read = decodeText(file);
      expect(read.text.replace('\ufeff', '')).toBe('---\n12°');
      expect(read.fault?.message).toBe('the file is saved as UTF-16, not as UTF-8');
      expect(read.fault?.fix).toContain('UTF-8');
    }
  });

  it('points at the first byte that is no UTF-8, and shows what it seems to be', () => {
    const read = decodeText(bytes('angle: 12°\nbore: ½', 'latin1'));
    expect(read.text).toBe('angle: 12°\nbore: ½');
    expect(read.fault).toEqual({
      start: 9,
      end: 10,
      message: 'the file is not saved as UTF-8: the byte B0 here is ° in an old Western encoding',
      fix: 'save the file as UTF-8 (in the editor: Save with encoding)',
    });
  });

  it('never throws, and a fault lies inside the text', () => {
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 40 }), (file) => {
        const { text, fault } = decodeText(file);
        if (fault === null) expect(Buffer.from(text, 'utf8')).toEqual(Buffer.from(file));
        else expect(fault.end).toBeLessThanOrEqual(text.length);
      }),
    );
  });
});
