import { type Span, svgFault } from '../../text/index.ts';

/** A logo of more bytes than this is not printed: it stands on every page of a site. */
export const largestLogo = 256 * 1024;

/** Why a logo can't be printed, and where; null where it can. */
export interface LogoFault {
  readonly span: Span;
  readonly message: string;
  readonly fix: string;
}

/** What a mark on paper never needs besides. */
const forbidden: readonly { readonly sign: RegExp; readonly what: string }[] = [
  { sign: /<!(?:DOCTYPE|ENTITY)\b/i, what: 'a document type in it' },
  { sign: /<\s*(?:animate|set)\w*\b/i, what: 'a movement in it' },
];

/** What keeps an SVG from being printed as a logo; null where nothing does. */
export function svgLogoFault(text: string): LogoFault | null {
  const svg = /<svg\b[^>]*>/i.exec(text);
  if (svg === null) {
    return {
      span: { start: 0, end: 0 },
      message: 'the logo is no SVG: it has no <svg> in it',
      fix: 'save it as SVG, or as PNG under the name logo.png',
    };
  }
  for (const { sign, what } of forbidden) {
    const match = sign.exec(text);
    if (match === null) continue;
    return {
      span: { start: match.index, end: match.index + match[0].length },
      message: `the logo has ${what}`,
      fix: 'save it as a plain SVG of shapes alone, its letters as outlines',
    };
  }
  const fault = svgFault(text);
  if (fault !== null) {
    const { start, end, what } = fault;
    return {
      span: { start, end },
      message: `the logo has ${what}`,
      fix: 'save it as a plain SVG of shapes alone, its letters as outlines',
    };
  }
  if (!/\bviewBox\s*=/.test(svg[0])) {
    return {
      span: { start: svg.index, end: svg.index + svg[0].length },
      message: 'the logo does not say its size: without viewBox it is cut off or lost',
      fix: 'viewBox="0 0 WIDTH HEIGHT" in its <svg>',
    };
  }
  return null;
}

/** The most pixels a side that a PNG logo may have. */
const mostPixels = 4000;

/** What keeps the bytes of a PNG from being printed as a logo (its signature and IHDR, ISO/IEC 15948). */
export function pngLogoFault(bytes: Uint8Array): LogoFault | null {
  const span = { start: 0, end: 0 };
  const signature = [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a];
  if (bytes.length < 24 || signature.some((byte, at) => bytes[at] !== byte)) {
    return { span, message: 'the logo is no PNG', fix: 'save it as PNG, or as SVG' };
  }
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const [width, height] = [view.getUint32(16), view.getUint32(20)];
  if (Math.max(width, height) <= mostPixels) return null;
  return {
    span,
    message: `the logo has ${width} by ${height} pixels; at most ${mostPixels} either way are printed`,
    fix: 'make it smaller: 600 pixels are sharp at the size it is printed',
  };
}
