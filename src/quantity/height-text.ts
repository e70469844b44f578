/** A height above the sea as one that is read with its unit: `sea level` is 0 ft. */
export function heightText(text: string): string {
  return /^(?:(?:at|the) )?(?:mean )?sea[ -]level$/i.test(text.trim()) ? '0 ft' : text;
}
