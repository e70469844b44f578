import { fileURLToPath, pathToFileURL } from 'node:url';
import type { Range } from 'vscode-languageserver/node';
import type { LineIndex, Region, Span } from '../text/index.ts';

/** A span as the protocol has it: lines and UTF-16 columns, both from 0. */
export function rangeOf({ start, end }: Span, lines: LineIndex): Range {
  return { start: positionOf(start, lines), end: positionOf(Math.max(start, end), lines) };
}

function positionOf(offset: number, lines: LineIndex): Range['start'] {
  const { line, column } = lines.place(offset);
  return { line: line - 1, character: column - 1 };
}

/** A region, which counts from 1, as the protocol has it. */
export function rangeOfRegion({ line, column, endLine, endColumn }: Region): Range {
  return {
    start: { line: line - 1, character: column - 1 },
    end: { line: endLine - 1, character: endColumn - 1 },
  };
}

/** The path of a file on this machine; null for anything that is not saved as one. */
export function pathOf(uri: string): string | null {
  try {
    return uri.startsWith('file:') ? fileURLToPath(uri) : null;
  } catch {
    return null;
  }
}

export function uriOf(path: string): string {
  return pathToFileURL(path).href;
}
