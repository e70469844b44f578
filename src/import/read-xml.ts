import { SaxesParser } from 'saxes';
import { ListFault, listBounds } from './list-model.ts';

/** What is done with a part of a spreadsheet while it is read, element by element. */
export interface XmlHandlers {
  readonly open: (name: string, attributes: Readonly<Record<string, string>>) => void;
  readonly close: (name: string) => void;
  readonly text: (text: string) => void;
}

/**
 * Walks an XML text. A document type is refused, so there are no entities but XML's own five;
 * elements nest no deeper than the bounds. Fails with `ListFault`, `part` named in it.
 */
export function readXml(text: string, part: string, handlers: XmlHandlers): void {
  const damaged = new ListFault(
    `its part ${part} is damaged`,
    'open it in a spreadsheet program and save it again',
  );
  const parser = new SaxesParser<{ xmlns: false; position: false }>({
    xmlns: false,
    position: false,
  });
  let depth = 0;
  parser.on('error', () => {
    throw damaged;
  });
  parser.on('doctype', () => {
    throw new ListFault(`its part ${part} declares a document type, as no spreadsheet does`);
  });
  parser.on('opentag', ({ name, attributes }) => {
    depth += 1;
    if (depth > listBounds.depth) {
      throw new ListFault(`its part ${part} is nested more than ${listBounds.depth} deep`);
    }
    handlers.open(name, attributes);
  });
  parser.on('closetag', ({ name }) => {
    depth -= 1;
    handlers.close(name);
  });
  parser.on('text', handlers.text);
  parser.on('cdata', handlers.text);
  try {
    parser.write(text).close();
  } catch (error) {
    throw error instanceof ListFault ? error : damaged;
  }
}

/** An element's name without the prefix of its namespace. */
export function local(name: string): string {
  return name.slice(name.indexOf(':') + 1);
}
