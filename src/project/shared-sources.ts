import { join } from 'node:path';
import validate from '../generated/validate-sources.js';
import { type SharedSources, sourcesIn } from '../sheet/index.ts';
import { lookup, readYaml, schemaWords, type YamlRead } from '../text/index.ts';
import { type Fault, type FileFaults, fileFaults } from './file-faults.ts';
import { readOwnText } from './read-text.ts';
import { isTaken } from './safe-path.ts';

/** The name of the file, in the project's own folder. */
export const sharedSourcesFile = 'sources.yaml';

/** What a project's `sources.yaml` says, and what is wrong with it. */
export interface SharedSourcesRead {
  readonly sources: SharedSources;
  /** Null where there is no such file. */
  readonly faults: () => FileFaults | null;
}

const check = 'sources-invalid';

/** Reads `sources.yaml` of a project; of one that is not there, nothing. Never throws. */
export function readSharedSources(root: string, file: string): SharedSourcesRead {
  const path = join(root, sharedSourcesFile);
  if (!isTaken(path)) return { sources: new Map(), faults: () => null };
  const read = readOwnText(root, path, file);
  if (!read.ok) {
    const { message, fix } = read;
    const fault = { check, span: { start: 0, end: 0 }, message, fix };
    return { sources: new Map(), faults: () => fileFaults(file, '', [fault]) };
  }
  const { text, fault } = read;
  const base = text.startsWith('\ufeff') ? 1 : 0;
  const yaml = readYaml(text.slice(base), base);
  const spoiled = fault && {
    check,
    span: { start: fault.start, end: fault.end },
    message: fault.message,
    fix: fault.fix,
  };
  return {
    sources: sourcesIn(yaml),
    faults: () => fileFaults(file, text, [...(spoiled ? [spoiled] : []), ...faultsIn(yaml)]),
  };
}

/** What is wrong with a text that may stand in it. */
export function sourcesTextFaults(text: string, file: string): FileFaults {
  const base = text.startsWith('\ufeff') ? 1 : 0;
  return fileFaults(file, text, faultsIn(readYaml(text.slice(base), base)));
}

function faultsIn(yaml: YamlRead): Fault[] {
  const faults = yaml.problems.map(({ span, message, fix, related }) => ({
    check,
    span,
    message,
    fix,
    related: related === null ? [] : [related],
  }));
  if (yaml.sound && yaml.root?.kind === 'map' && !validate(yaml.value)) {
    for (const { path, onKey, message, fix } of schemaWords(validate.errors, yaml.value)) {
      const span = lookup(yaml.root, path, onKey ? 'key' : 'value') ?? yaml.root.span;
      faults.push({ check, span, message, fix, related: [] });
    }
  } else if (yaml.root?.kind !== 'map' && faults.length === 0) {
    faults.push({
      check,
      span: { start: 0, end: 0 },
      message: 'the file of shared sources lists none',
      fix: 'write `gaugeleaf-sources: 1`, and `sources:` with a source to a line below it',
      related: [],
    });
  }
  return faults;
}
