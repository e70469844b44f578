/**
 * What stands between `<!--gives-->` and `<!--given-->` of a part, parted by `<!--next-->`, may stand earlier: as
 * much of it as its first page has room for goes to `<!--takes-->`. So the first page is filled, and what
 * follows it begins on the next as the style says.
 */

const given = /<!--gives-->([\s\S]*?)<!--given-->/;

/** Whether a part has something that may stand earlier. */
export function hasRoomToFill(html: string): boolean {
  return html.includes('<!--takes-->') && given.test(html);
}

/** The part with the first `count` of what it gives in the earlier place, and without its marks. */
export function withTaken(html: string, count: number): string {
  const [all = '', pieces = ''] = given.exec(html) ?? [];
  const list = pieces.split('<!--next-->');
  return html
    .replace(all, () => list.slice(count).join(''))
    .replace('<!--takes-->', () => list.slice(0, count).join(''));
}

/** How many pieces a part gives. */
export function givenCount(html: string): number {
  return given.exec(html)?.[1]?.split('<!--next-->').length ?? 0;
}
