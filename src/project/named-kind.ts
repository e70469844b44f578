import { basename } from 'node:path';
import { kindNamed, levelName } from '../kinds/index.ts';
import type { Kind } from '../kinds/model.ts';
import { nearestName } from '../text/index.ts';
import type { Project } from './project.ts';
import { Refusal } from './refusal.ts';

/**
 * The kind that was named. Fails with `Refusal`, listing those there are, or saying that the file of
 * this one cannot be used.
 */
export function namedKind(
  text: string,
  { kinds, kindFaults }: Pick<Project, 'kinds' | 'kindFaults'>,
): Kind {
  const kind = kindNamed(text, kinds);
  if (kind !== null) return kind;
  const stem = (file: string) => basename(file).replace(/\.ya?ml$/i, '');
  const faulty = kindFaults.find(({ file }) => levelName(stem(file)) === levelName(text));
  if (faulty !== undefined) {
    throw new Refusal(
      `${faulty.file} describes the kind ${text.trim()}, and cannot be used as it is`,
      `gaugeleaf check ${faulty.file} says what is wrong with it`,
    );
  }
  const near = nearestName(levelName(text), kinds.keys());
  const all = [...kinds.keys()].join(', ');
  throw new Refusal(
    `there is no kind of unit called ${text.trim() || 'nothing at all'}`,
    near === null ? `the kinds are: ${all}` : `perhaps ${near} was meant; the kinds are: ${all}`,
  );
}
