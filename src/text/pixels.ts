/** Width and height in pixels that the head of a PNG, JPEG, GIF or WebP states; null where it states none. */
export function pixelsOf(
  bytes: Uint8Array,
): { readonly width: number; readonly height: number } | null {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const at = (index: number) => bytes[index] ?? 0;
  // PNG: ISO/IEC 15948, 11.2.2; GIF: GIF89a, 18; WebP: RFC 9649, 2.5 to 2.7; JPEG: ISO/IEC 10918-1, B.2.2.
  if (at(0) === 0x89 && bytes.length >= 24) {
    return { width: view.getUint32(16), height: view.getUint32(20) };
  }
  if (at(0) === 0x47 && bytes.length >= 10) {
    return { width: view.getUint16(6, true), height: view.getUint16(8, true) };
  }
  if (at(0) === 0x52 && bytes.length >= 30) {
    const form = String.fromCharCode(at(12), at(13), at(14), at(15));
    if (form === 'VP8X') {
      const three = (index: number) => at(index) | (at(index + 1) << 8) | (at(index + 2) << 16);
      return { width: three(24) + 1, height: three(27) + 1 };
    }
    if (form === 'VP8L') {
      const bits = view.getUint32(21, true);
      return { width: (bits & 0x3fff) + 1, height: ((bits >> 14) & 0x3fff) + 1 };
    }
    return { width: view.getUint16(26, true) & 0x3fff, height: view.getUint16(28, true) & 0x3fff };
  }
  if (at(0) !== 0xff || at(1) !== 0xd8) return null;
  for (let index = 2; index + 9 < bytes.length; ) {
    if (at(index) !== 0xff) return null;
    const mark = at(index + 1);
    const isFrame = mark >= 0xc0 && mark <= 0xcf && ![0xc4, 0xc8, 0xcc].includes(mark);
    if (isFrame) return { height: view.getUint16(index + 5), width: view.getUint16(index + 7) };
    index += 2 + view.getUint16(index + 2);
  }
  return null;
}
