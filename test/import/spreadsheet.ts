import { execFileSync } from 'node:child_process';
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';

/** A cell as it is typed: text, a number, or one with a format, a day, a formula or a merging. */
export type TypedCell =
  | string
  | number
  | null
  | { readonly value: number; readonly style: 'three' | 'sixtyfourths' | 'dollars' }
  | { readonly date: string }
  | { readonly formula: string; readonly value: number }
  | { readonly text: string; readonly across?: number; readonly down?: number };

export interface TypedSheet {
  readonly name: string;
  readonly rows: readonly (readonly TypedCell[])[];
  /** 1-based. */
  readonly hiddenRows?: readonly number[];
  readonly hiddenColumns?: readonly number[];
}

function xml(text: string): string {
  return text.replace(/&/g, '&amp;').replace(/</g, '&lt;').replace(/"/g, '&quot;');
}

function cell(typed: TypedCell): string {
  if (typed === null) return '<table:table-cell/>';
  if (typeof typed === 'string') {
    return `<table:table-cell office:value-type="string"><text:p>${xml(typed)}</text:p></table:table-cell>`;
  }
  if (typeof typed === 'number') {
    return `<table:table-cell office:value-type="float" office:value="${typed}"/>`;
  }
  if ('date' in typed) {
    return `<table:table-cell table:style-name="day" office:value-type="date" office:date-value="${typed.date}"/>`;
  }
  if ('formula' in typed) {
    return `<table:table-cell table:formula="of:=${xml(typed.formula)}" office:value-type="float" office:value="${typed.value}"/>`;
  }
  if ('style' in typed) {
    return `<table:table-cell table:style-name="${typed.style}" office:value-type="float" office:value="${typed.value}"/>`;
  }
  const { text, across = 1, down = 1 } = typed;
  return `<table:table-cell table:number-columns-spanned="${across}" table:number-rows-spanned="${down}" office:value-type="string"><text:p>${xml(text)}</text:p></table:table-cell>${'<table:covered-table-cell/>'.repeat(across - 1)}`;
}

/** A flat OpenDocument spreadsheet (OpenDocument 1.3 part 3, 3.1.2) that a spreadsheet program opens. */
export function flatSpreadsheet(sheets: readonly TypedSheet[]): string {
  const tables = sheets.map(({ name, rows, hiddenRows = [], hiddenColumns = [] }) => {
    const width = Math.max(...rows.map((row) => row.length));
    const columns = Array.from({ length: width }, (_, at) =>
      hiddenColumns.includes(at + 1)
        ? '<table:table-column table:visibility="collapse"/>'
        : '<table:table-column/>',
    );
    const lines = rows.map((row, at) => {
      const hidden = hiddenRows.includes(at + 1) ? ' table:visibility="collapse"' : '';
      return `<table:table-row${hidden}>${row.map(cell).join('')}</table:table-row>`;
    });
    return `<table:table table:name="${xml(name)}">${columns.join('')}${lines.join('')}</table:table>`;
  });
  return `<?xml version="1.0" encoding="UTF-8"?>
<office:document xmlns:office="urn:oasis:names:tc:opendocument:xmlns:office:1.0" xmlns:style="urn:oasis:names:tc:opendocument:xmlns:style:1.0" xmlns:text="urn:oasis:names:tc:opendocument:xmlns:text:1.0" xmlns:table="urn:oasis:names:tc:opendocument:xmlns:table:1.0" xmlns:number="urn:oasis:names:tc:opendocument:xmlns:datastyle:1.0" xmlns:of="urn:oasis:names:tc:opendocument:xmlns:of:1.2" office:version="1.3" office:mimetype="application/vnd.oasis.opendocument.spreadsheet">
<office:automatic-styles>
<number:number-style style:name="N1"><number:number number:decimal-places="3" number:min-decimal-places="3" number:min-integer-digits="1"/></number:number-style>
<number:number-style style:name="N2"><number:fraction number:min-integer-digits="0" number:min-numerator-digits="1" number:denominator-value="64"/></number:number-style>
<number:number-style style:name="N3"><number:number number:decimal-places="0" number:min-integer-digits="1"/></number:number-style>
<number:date-style style:name="N4"><number:day/><number:text>-</number:text><number:month number:textual="true"/></number:date-style>
<style:style style:name="three" style:family="table-cell" style:data-style-name="N1"/>
<style:style style:name="sixtyfourths" style:family="table-cell" style:data-style-name="N2"/>
<style:style style:name="dollars" style:family="table-cell" style:data-style-name="N3"/>
<style:style style:name="day" style:family="table-cell" style:data-style-name="N4"/>
</office:automatic-styles>
<office:body><office:spreadsheet>${tables.join('')}</office:spreadsheet></office:body></office:document>
`;
}

/** Whether the spreadsheet program of Debian's packages is here; where it is not, its tests are skipped. */
export const hasOffice = (() => {
  try {
    execFileSync('soffice', ['--version'], { stdio: 'ignore', timeout: 60_000 });
    return true;
  } catch {
    console.warn('soffice is not installed: lists that it writes are not tried');
    return false;
  }
})();

/**
 * A flat spreadsheet as the program saves it in another format; `folder` is one that the test takes
 * away again. The program gets a profile of its own there, so that none of the user's is touched.
 */
export function savedAs(format: 'xlsx' | 'ods' | 'csv', flat: string, folder: string): Uint8Array {
  const source = join(folder, 'list.fods');
  const out = join(folder, `out-${format}`);
  mkdirSync(out, { recursive: true });
  writeFileSync(source, flat);
  execFileSync(
    'soffice',
    [
      `-env:UserInstallation=file://${join(folder, 'profile')}`,
      '--headless',
      '--convert-to',
      format,
      '--outdir',
      out,
      source,
    ],
    { stdio: 'ignore', timeout: 180_000 },
  );
  return readFileSync(join(out, `list.${format}`));
}
