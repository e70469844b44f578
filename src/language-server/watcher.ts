import { realpathSync } from 'node:fs';
import { basename, dirname } from 'node:path';
import type {
  Connection,
  Diagnostic,
  PublishDiagnosticsClientCapabilities,
  TextDocuments,
} from 'vscode-languageserver/node';
import type { TextDocument } from 'vscode-languageserver-textdocument';
import { retyped } from '../desk/index.ts';
import type { DeskDocument } from '../desk/model.ts';
import { type DiskChange, EditionWatch, type FileFaults, fileId } from '../project/index.ts';
import { faultDiagnostics, placedDiagnostics, sheetDiagnostics } from './findings.ts';
import { pathOf } from './places.ts';
import type { Found } from './server.ts';
import { Shelf } from './shelf.ts';

/** How long nothing is typed before what lies between sheets is looked at, in milliseconds. */
const rest = 250;

/** How long the next change is waited for before the sheet is read, and how long at most, in milliseconds. */
const pause = 5;
const longest = 50;

/** What was read of an open sheet, and what was found in it. */
interface Read {
  readonly version: number;
  readonly document: DeskDocument;
}

/**
 * Follows what is open, and tells the editor what is found: of the sheet in hand as soon as it is read, of
 * the sheets that are based on it next, and what lies between sheets once nothing is typed for a moment.
 */
export class Watcher {
  /** The documents of the editor by their paths. */
  readonly open = new Map<string, TextDocument>();
  readonly #connection: Connection;
  /** By their roots, and by the folders of what was asked for. */
  readonly #shelves = new Map<string, Shelf>();
  readonly #folders = new Map<string, Shelf>();
  readonly #read = new Map<string, Read>();
  readonly #own = new Map<string, readonly Diagnostic[]>();
  readonly #across = new Map<string, readonly Diagnostic[]>();
  readonly #waiting = new Set<string>();
  readonly #watching = new Map<string, EditionWatch>();
  #watches = false;
  #saysVersions = false;
  #hasRelated = false;
  #later: ReturnType<typeof setTimeout> | null = null;
  #soon: ReturnType<typeof setTimeout> | null = null;
  #since = 0;
  #round = 0;

  constructor(connection: Connection, documents: TextDocuments<TextDocument>) {
    this.#connection = connection;
    documents.onDidOpen(({ document }) => this.#opened(document));
    documents.onDidChangeContent(({ document }) => this.#changed(document));
    documents.onDidClose(({ document }) => this.#closed(document));
    documents.onDidSave(({ document }) => this.#saved([document.uri]));
    connection.onDidChangeWatchedFiles(({ changes }) => {
      this.#saved(changes.map(({ uri }) => uri));
    });
    connection.onShutdown(() => {
      if (this.#later !== null) clearTimeout(this.#later);
      if (this.#soon !== null) clearTimeout(this.#soon);
      for (const watch of this.#watching.values()) watch.close();
    });
  }

  /** Looks at the files of each project itself, for an editor that does not. */
  watch(): void {
    this.#watches = true;
    for (const shelf of this.#shelves.values()) this.#watchOne(shelf);
  }

  #watchOne(shelf: Shelf): void {
    const { root, project } = shelf;
    if (!project.isProject || this.#watching.has(root)) return;
    const told = ({ sheets, around }: DiskChange): void => {
      this.#guarded(() => this.#written(shelf, sheets, around));
    };
    this.#watching.set(root, new EditionWatch(root, told));
  }

  begin(shows: PublishDiagnosticsClientCapabilities | null): void {
    this.#saysVersions = shows?.versionSupport === true;
    this.#hasRelated = shows?.relatedInformation === true;
  }

  /** The sheet of a document as it stands now; null where it is none, or is not open. */
  sheet(uri: string): Found | null {
    const path = this.#pathOf(uri);
    const text = path === null ? undefined : this.open.get(path);
    if (path === null || text === undefined) return null;
    const shelf = this.#shelfOf(path);
    if (shelf === null || !shelf.isSheet(path, text.getText())) return null;
    const known = this.#read.get(path);
    if (known?.version === text.version) return { document: known.document, text, shelf };
    const document = shelf.openSheet(path, { text: text.getText() });
    this.#read.set(path, { version: text.version, document });
    return { document, text, shelf };
  }

  /** The same with what was read of the sheet a moment ago, where what is typed since is not read yet. */
  typed(uri: string): Found | null {
    const path = this.#pathOf(uri);
    const text = path === null ? undefined : this.open.get(path);
    const known = path === null ? undefined : this.#read.get(path);
    const shelf = path === null ? null : this.#shelfOf(path);
    if (text === undefined || known === undefined || shelf === null) return this.sheet(uri);
    if (known.version === text.version) return { document: known.document, text, shelf };
    return { document: retyped(known.document, text.getText()), text, shelf };
  }

  /** Reads what is not read yet of the project's sheets, one after another; ends early where it is called off. */
  async readAll(shelf: Shelf, isOver: () => boolean): Promise<void> {
    for (let next = shelf.nextUnread(); next !== null; next = shelf.nextUnread()) {
      if (isOver()) return;
      const known = this.#read.get(next);
      const isNow = known !== undefined && known.version === this.open.get(next)?.version;
      if (isNow) shelf.take(next, shelf.markOf(next), known.document);
      else shelf.read(next);
      // What is typed meanwhile comes first.
      await new Promise((done) => setImmediate(done));
    }
  }

  #pathOf(uri: string): string | null {
    const path = pathOf(uri);
    if (path === null) return null;
    try {
      return realpathSync(path);
    } catch {
      return path;
    }
  }

  #shelfOf(path: string): Shelf | null {
    const folder = dirname(path);
    const before = this.#folders.get(folder);
    if (before !== undefined) return before;
    try {
      const shelf = new Shelf(folder, this.open);
      const known = this.#shelves.get(shelf.root);
      this.#folders.set(folder, known ?? shelf);
      if (known !== undefined) return known;
      this.#shelves.set(shelf.root, shelf);
      if (this.#watches) this.#watchOne(shelf);
      return shelf;
    } catch (error) {
      this.#tellFault(error);
      return null;
    }
  }

  #opened(document: TextDocument): void {
    const path = this.#pathOf(document.uri);
    if (path === null) return;
    this.open.set(path, document);
    this.#shelfOf(path)?.refile();
    if (/\.ya?ml$/i.test(path)) this.#tellFiles(path);
  }

  #changed(document: TextDocument): void {
    const path = this.#pathOf(document.uri);
    if (path === null) return;
    this.open.set(path, document);
    this.#waiting.add(path);
    this.#tellSoon();
    this.#tellLater();
  }

  #closed(document: TextDocument): void {
    const path = this.#pathOf(document.uri);
    if (path === null) return;
    this.open.delete(path);
    this.#read.delete(path);
    this.#own.delete(path);
    this.#across.delete(path);
    this.#waiting.delete(path);
    void this.#connection.sendDiagnostics({ uri: document.uri, diagnostics: [] });
    this.#tellBasedOn(path);
  }

  /** Files that were written, by the editor or by somebody else. */
  #saved(uris: readonly string[]): void {
    const paths = uris.flatMap((uri) => this.#pathOf(uri) ?? []);
    const shelves = new Set(paths.flatMap((path) => this.#shelfOf(path) ?? []));
    for (const shelf of shelves) {
      const own = paths.filter((path) => this.#shelfOf(path) === shelf);
      // A sheet that comes or goes changes what others may be based on.
      const isAround = own.some((path) => shelf.isAround(path) || !shelf.knows(path));
      this.#written(shelf, own, isAround);
    }
  }

  /** What was read of a project may be old: of these files, or with `around` of all. */
  #written(shelf: Shelf, paths: readonly string[], around: boolean): void {
    if (around) {
      shelf.reopen();
      // A folder may have become a project, or part of one.
      this.#folders.clear();
    }
    // Of what is open the text in the editor counts, whatever is on disk.
    else if (paths.every((path) => this.open.has(path))) return;
    for (const path of this.open.keys()) {
      if (this.#shelfOf(path) !== shelf) continue;
      this.#read.delete(path);
      this.#waiting.add(path);
      if (/\.ya?ml$/i.test(path)) this.#tellFiles(path);
    }
    this.#tellSoon();
    this.#tellLater();
  }

  /** Of several changes that come at once only the last is read; but who types on and on is told too. */
  #tellSoon(): void {
    const now = performance.now();
    if (this.#soon === null) this.#since = now;
    else if (now - this.#since > longest) return;
    else clearTimeout(this.#soon);
    this.#soon = setTimeout(() => {
      this.#soon = null;
      this.#guarded(() => this.#tellWaiting());
    }, pause);
  }

  /** A fault of ours is told, and ends nothing: what is open in the editor depends on it. */
  #guarded(work: () => void): void {
    try {
      work();
    } catch (error) {
      this.#tellFault(error);
    }
  }

  #tellFault(error: unknown): void {
    this.#connection.console.error(error instanceof Error ? error.message : String(error));
  }

  #tellWaiting(): void {
    const paths = [...this.#waiting];
    this.#waiting.clear();
    for (const path of paths) {
      this.#guarded(() => this.#tellSheet(path));
      this.#guarded(() => this.#tellBasedOn(path));
    }
  }

  #tellSheet(path: string): void {
    const text = this.open.get(path);
    if (text === undefined || !/\.md$/i.test(path)) return;
    const found = this.sheet(text.uri);
    this.#own.set(path, found === null ? [] : sheetDiagnostics(found.document, found.shelf));
    if (found === null) this.#across.delete(path);
    this.#publish(path);
  }

  /** Sheets that are open and take something from this one are other sheets now. */
  #tellBasedOn(path: string): void {
    const id = fileId(path);
    for (const [other, { document }] of [...this.#read]) {
      if (other === path || dirname(other) !== dirname(path)) continue;
      const { family, front } = document.sheet;
      const based = front?.entries.get('based-on')?.value;
      const isBased =
        family?.members.some(({ file }) => basename(file) === `${id}.md`) === true ||
        (based?.kind === 'scalar' && based.text === id);
      if (!isBased) continue;
      this.#read.delete(other);
      this.#tellSheet(other);
    }
  }

  /** What is wrong with files that are no sheets: the edition, the sources, the kinds. */
  #tellFiles(path: string): void {
    const shelf = this.#shelfOf(path);
    const text = this.open.get(path);
    if (shelf === null || text === undefined) return;
    const { project } = shelf;
    const faults: readonly (FileFaults | null)[] = [
      project.edition().faults,
      project.sharedSources().faults(),
      ...project.kindFaults,
    ];
    const own = faults.filter((each) => each !== null && each.file === project.show(path));
    const found = own.flatMap((each) =>
      each === null ? [] : faultDiagnostics(each, (file) => shelf.pathOf(file)),
    );
    this.#own.set(path, found);
    this.#publish(path);
  }

  #tellLater(): void {
    this.#round++;
    if (this.#later !== null) clearTimeout(this.#later);
    this.#later = setTimeout(() => {
      this.#later = null;
      this.#tellAcross().catch((error) => this.#tellFault(error));
    }, rest);
  }

  /** What lies between sheets: the rest of each project is read first, unless something is typed meanwhile. */
  async #tellAcross(): Promise<void> {
    const round = this.#round;
    const shelves = new Set([...this.open.keys()].flatMap((path) => this.#shelfOf(path) ?? []));
    for (const shelf of shelves) {
      if (!shelf.project.isProject) continue;
      await this.readAll(shelf, () => round !== this.#round);
      if (round !== this.#round) return;
      const found = new Map(
        shelf.across().map(({ file, findings }) => [shelf.pathOf(file), findings] as const),
      );
      for (const path of this.open.keys()) {
        if (this.#shelfOf(path) !== shelf || !/\.md$/i.test(path)) continue;
        const next = placedDiagnostics(found.get(path) ?? [], (file) => shelf.pathOf(file));
        if (JSON.stringify(next) === JSON.stringify(this.#across.get(path) ?? [])) continue;
        this.#across.set(path, next);
        this.#publish(path);
      }
    }
  }

  #publish(path: string): void {
    const text = this.open.get(path);
    if (text === undefined) return;
    const diagnostics = [...(this.#own.get(path) ?? []), ...(this.#across.get(path) ?? [])];
    void this.#connection.sendDiagnostics({
      uri: text.uri,
      ...(this.#saysVersions ? { version: text.version } : {}),
      diagnostics: this.#hasRelated ? diagnostics : diagnostics.map(withoutRelated),
    });
  }
}

function withoutRelated({ relatedInformation: _, ...diagnostic }: Diagnostic): Diagnostic {
  return diagnostic;
}
