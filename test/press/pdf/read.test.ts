import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { readPdfFile } from '../../../src/press/pdf/read.ts';
import { PdfRef, PdfText, type PdfValue, writeValue } from '../../../src/press/pdf/values.ts';
import { PdfWriter } from '../../../src/press/pdf/write.ts';
import { flate } from '../../../src/project/flate.ts';

/** A file in the plain form with one object, as a table of offsets has it. */
function plainFile(object: string): Uint8Array {
  const head = '%PDF-1.4\n';
  const body = `${head}1 0 obj\n${object}\nendobj\n`;
  const table = `xref\n0 2\n0000000000 65535 f \n${String(head.length).padStart(10, '0')} 00000 n \n`;
  const tail = `trailer\n<</Size 2/Root 1 0 R>>\nstartxref\n${body.length}\n%%EOF\n`;
  return new Uint8Array(Buffer.from(body + table + tail, 'latin1'));
}

const refer = ({ number }: PdfRef) => `${number} 0 R`;

const values = fc.letrec<{ value: PdfValue }>((tie) => ({
  value: fc.oneof(
    { maxDepth: 3 },
    fc.constant(null),
    fc.boolean(),
    fc.integer({ min: -100_000, max: 100_000 }),
    fc.integer({ min: -9999, max: 9999 }).map((thousandths) => thousandths / 1000),
    fc.stringMatching(/^\/[A-Za-z][\w.-]{0,8}$/),
    fc
      .uint8Array({ maxLength: 12 })
      .map((bytes) => new PdfText(Buffer.from(bytes).toString('latin1'))),
    fc.integer({ min: 1, max: 9999 }).map((number) => new PdfRef(number)),
    fc.array(tie('value'), { maxLength: 4 }),
    fc
      .array(fc.tuple(fc.stringMatching(/^\/[A-Z][\w.-]{0,8}$/), tie('value')), { maxLength: 4 })
      .map((entries) => new Map(entries)),
  ),
})).value;

describe('values of a PDF', () => {
  test('come back as they were written', async () => {
    await fc.assert(
      fc.asyncProperty(values, async (value) => {
        const pdf = await readPdfFile(plainFile(writeValue(new Map([['/V', value]]), refer)));
        expect(pdf.dict(new PdfRef(1))?.get('/V')).toEqual(value);
      }),
    );
  });

  // ISO 32000-1, 7.3.4.2: examples of the table of escapes, from memory.
  test.each([
    ['(a\\(b\\)c)', 'a(b)c'],
    ['(a(b)c)', 'a(b)c'],
    ['(\\0533\\53x)', '+3+x'],
    ['(a\\\nb\\n)', 'ab\n'],
    ['<48 6920>', 'Hi '],
    ['<486>', 'H`'],
  ])('read the string %s', async (written, bytes) => {
    const pdf = await readPdfFile(plainFile(`<</V ${written}>>`));
    expect(pdf.dict(new PdfRef(1))?.get('/V')).toEqual(new PdfText(bytes));
  });

  test('never write a number with an exponent', () => {
    expect(writeValue([1e-7, -0.5, 1e-9, 12, 0.25], refer)).toBe('[.0000001 -.5 0 12 .25]');
  });
});

describe('a file in another form', () => {
  test('is read as well: objects in packed streams', async () => {
    const writer = new PdfWriter(flate);
    const pages = writer.add('<</Type/Pages/Count 0/Kids[]>>');
    const root = writer.add(`<</Type/Catalog/Pages ${pages} 0 R/Lang(en)>>`);
    const bytes = writer.finish(root, writer.add('<</Title(T)>>'));
    const pdf = await readPdfFile(bytes);
    expect(pdf.dict(pdf.trailer.get('/Root'))?.get('/Lang')).toEqual(new PdfText('en'));
  });

  test('that is none is refused in words', async () => {
    await expect(readPdfFile(new Uint8Array([1, 2, 3]))).rejects.toThrow(
      "The browser's PDF can't be read",
    );
  });
});
