import { asciiName } from '../../text/index.ts';

/**
 * Gives ids that are plain ASCII and that no two elements of a page share: `setting-float-level` for
 * `setting` and `Float level`. The same names in the same order get the same ids, so a link to one
 * goes on working when other things are added; of equal names the second gets `-2` behind.
 */
export function idMaker(): (prefix: string, name: string) => string {
  const taken = new Set<string>();
  return (prefix, name) => {
    const plain = `${prefix}-${asciiName(name) || 'unnamed'}`;
    let id = plain;
    for (let count = 2; taken.has(id); count++) id = `${plain}-${count}`;
    taken.add(id);
    return id;
  };
}
