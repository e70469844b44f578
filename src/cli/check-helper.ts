import { checkFile, openProject, type Project, partFolder } from '../project/index.ts';
import type { Batch, HelperTask, HelperWord } from './check-crew.ts';

/** The end of the line to the thread that handed out the work. */
interface Port {
  on(event: 'message', listener: (batch: Batch) => void): unknown;
  postMessage(word: HelperWord): void;
}

/** Checks what is handed to this thread, batch by batch, until it is ended. */
export function helpCheck(port: Port, { cwd, kept }: HelperTask): void {
  const store = kept === null ? null : partFolder(kept);
  const projects = new Map<string, Project>();
  const projectOf = (named: string): Project => {
    const known = projects.get(named) ?? openProject(named, cwd);
    projects.set(named, known);
    return known;
  };
  port.on('message', (batch) => {
    port.postMessage(
      batch.map(([index, named, path]) => [index, checkFile(projectOf(named), path, store)]),
    );
  });
  port.postMessage('ready');
}
