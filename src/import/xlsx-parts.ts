import { local, readXml } from './read-xml.ts';
import type { Parts } from './unpack.ts';

/** What the cells of an XLSX file refer to. */
export interface XlsxBook {
  readonly sheets: readonly {
    readonly name: string;
    readonly part: string;
    readonly hidden: boolean;
  }[];
  readonly from1904: boolean;
  readonly strings: readonly string[];
  /** The number format of each cell style. */
  readonly formats: readonly string[];
}

/** Formats that files name by number alone (ECMA-376 part 1, 18.8.30). */
const BUILT_IN: Readonly<Record<number, string>> = {
  0: 'General',
  1: '0',
  2: '0.00',
  3: '#,##0',
  4: '#,##0.00',
  9: '0%',
  10: '0.00%',
  11: '0.00E+00',
  12: '# ?/?',
  13: '# ??/??',
  14: 'mm-dd-yy',
  15: 'd-mmm-yy',
  16: 'd-mmm',
  17: 'mmm-yy',
  18: 'h:mm AM/PM',
  19: 'h:mm:ss AM/PM',
  20: 'h:mm',
  21: 'h:mm:ss',
  22: 'm/d/yy h:mm',
  37: '#,##0 ;(#,##0)',
  38: '#,##0 ;(#,##0)',
  39: '#,##0.00;(#,##0.00)',
  40: '#,##0.00;(#,##0.00)',
  45: 'mm:ss',
  46: '[h]:mm:ss',
  47: 'mmss.0',
  48: '##0.0E+0',
  49: '@',
};

/** Reads the parts of an XLSX file that are not its tables. Fails with `ListFault`. */
export function readBook(parts: Parts): XlsxBook {
  const targets = relations(parts.get('xl/_rels/workbook.xml.rels') ?? '<none/>');
  const sheets: { name: string; part: string; hidden: boolean }[] = [];
  let from1904 = false;
  readXml(parts.get('xl/workbook.xml') ?? '<none/>', 'xl/workbook.xml', {
    open: (name, attributes) => {
      if (local(name) === 'workbookPr') from1904 = isTrue(attributes.date1904);
      if (local(name) !== 'sheet') return;
      const id = Object.entries(attributes).find(([key]) => /(?:^|:)id$/.test(key))?.[1] ?? '';
      const part = targets.get(id);
      if (part === undefined) return;
      sheets.push({
        name: attributes.name ?? '',
        part,
        hidden: attributes.state === 'hidden' || attributes.state === 'veryHidden',
      });
    },
    close: () => {},
    text: () => {},
  });
  return {
    sheets,
    from1904,
    strings: sharedStrings(parts.get('xl/sharedStrings.xml')),
    formats: cellFormats(parts.get('xl/styles.xml')),
  };
}

export function isTrue(text: string | undefined): boolean {
  return text === '1' || text === 'true';
}

/** Signs that XML cannot hold stand as `_x000D_` (ECMA-376 part 1, 22.4.2.4). */
export function unescaped(text: string): string {
  return text.replace(/_x([0-9A-Fa-f]{4})_/g, (_, code: string) =>
    String.fromCharCode(Number.parseInt(code, 16)),
  );
}

function relations(text: string): ReadonlyMap<string, string> {
  const targets = new Map<string, string>();
  readXml(text, 'xl/_rels/workbook.xml.rels', {
    open: (name, { Id = '', Target = '' }) => {
      if (local(name) !== 'Relationship') return;
      targets.set(
        Id,
        Target.startsWith('/') ? Target.slice(1) : `xl/${Target.replace(/^\.\//, '')}`,
      );
    },
    close: () => {},
    text: () => {},
  });
  return targets;
}

function sharedStrings(text: string | undefined): string[] {
  const strings: string[] = [];
  if (text === undefined) return strings;
  let now = '';
  let inText = false;
  let phonetic = 0;
  readXml(text, 'xl/sharedStrings.xml', {
    open: (name) => {
      const element = local(name);
      if (element === 'si') now = '';
      else if (element === 'rPh') phonetic += 1;
      else if (element === 't') inText = phonetic === 0;
    },
    close: (name) => {
      const element = local(name);
      if (element === 'si') strings.push(unescaped(now));
      else if (element === 'rPh') phonetic -= 1;
      else if (element === 't') inText = false;
    },
    text: (piece) => {
      if (inText) now += piece;
    },
  });
  return strings;
}

function cellFormats(text: string | undefined): string[] {
  const formats: string[] = [];
  if (text === undefined) return formats;
  const own = new Map<number, string>();
  let inCells = false;
  readXml(text, 'xl/styles.xml', {
    open: (name, { numFmtId = '0', formatCode = '' }) => {
      const element = local(name);
      if (element === 'numFmt') own.set(Number(numFmtId), formatCode);
      else if (element === 'cellXfs') inCells = true;
      else if (element === 'xf' && inCells) {
        const id = Number(numFmtId);
        // 27 to 36 and 50 to 58 are days in the languages of East Asia.
        const eastern = (id >= 27 && id <= 36) || (id >= 50 && id <= 58);
        formats.push(own.get(id) ?? BUILT_IN[id] ?? (eastern ? 'yyyy-mm-dd' : 'General'));
      }
    },
    close: (name) => {
      if (local(name) === 'cellXfs') inCells = false;
    },
    text: () => {},
  });
  return formats;
}
