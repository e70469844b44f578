import {
  type AcrossFinding,
  acrossChecks,
  runAcross,
  type SheetFacts,
  unpackFacts,
} from '../checks/index.ts';
import { type CheckedSheet, markOf, type PartFolder, type Project } from '../project/index.ts';
import { stoppersAcross } from '../report/index.ts';

/** What was found between the sheets of a project. */
export interface FoundAcross {
  readonly found: readonly AcrossFinding[];
  /** Whether any of it stops the press. */
  readonly stops: boolean;
}

/**
 * Gathers the facts of a project's sheets as they are checked, packed as they come, and checks at the end
 * what lies between them; or tells what was found the last time between the very same sheets.
 */
export class AcrossSheets {
  readonly #project: Project;
  readonly #packed: Uint8Array[] = [];
  #digests: string[] | null = [];

  constructor(project: Project) {
    this.#project = project;
  }

  /** In the order in which they are told. */
  add({ facts, digest }: CheckedSheet): void {
    if (facts !== null) this.#packed.push(facts);
    if (digest === null) this.#digests = null;
    else this.#digests?.push(digest);
  }

  check(store: PartFolder | null): FoundAcross {
    const digests = this.#digests;
    if (store === null || digests === null) return this.#checkAnew();
    const name = store.nameOf(`across ${markOf(this.#project)} ${digests.join(' ')}`);
    const bytes = store.read(name);
    if (bytes !== null) return JSON.parse(Buffer.from(bytes).toString('utf8')) as FoundAcross;
    const anew = this.#checkAnew();
    store.keep(name, Buffer.from(JSON.stringify(anew)));
    return anew;
  }

  #checkAnew(): FoundAcross {
    const shared = new Map<string, string>();
    const decoder = new TextDecoder();
    const facts: SheetFacts[] = this.#packed
      .splice(0)
      .map((packed) => unpackFacts(decoder.decode(packed), shared));
    const found = runAcross(acrossChecks, facts, this.#project.context(this.#project.root));
    const status = new Map(facts.map((each) => [each.file, each.status]));
    const stops = stoppersAcross(found, (file) => status.get(file) ?? null).length > 0;
    return { found, stops };
  }
}
