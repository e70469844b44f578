import { mkdirSync, mkdtempSync, realpathSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { PassThrough } from 'node:stream';
import { pathToFileURL } from 'node:url';
import {
  type ClientCapabilities,
  createConnection,
  createProtocolConnection,
  type InitializeResult,
  type ProtocolConnection,
  type PublishDiagnosticsParams,
  StreamMessageReader,
  StreamMessageWriter,
} from 'vscode-languageserver/node';
import { serve } from '../../src/language-server/index.ts';

/** Abilities of an editor that has them all. */
const able: ClientCapabilities = {
  textDocument: {
    hover: { contentFormat: ['markdown', 'plaintext'] },
    completion: { completionItem: { snippetSupport: true } },
    publishDiagnostics: { relatedInformation: true, versionSupport: true },
  },
  workspace: { workspaceEdit: { documentChanges: true, resourceOperations: ['rename'] } },
};

/** An editor made of the protocol's own library, on a folder of its own. */
export class Client {
  readonly root: string;
  readonly connection: ProtocolConnection;
  /** All that was published, in order. */
  readonly published: PublishDiagnosticsParams[] = [];
  readonly #waiting: (() => void)[] = [];
  initialized: InitializeResult | null = null;

  constructor(files: Readonly<Record<string, string>>) {
    this.root = realpathSync(mkdtempSync(join(tmpdir(), 'gaugeleaf-lsp-')));
    for (const [name, text] of Object.entries(files)) this.write(name, text);
    const [up, down] = [new PassThrough(), new PassThrough()];
    serve(createConnection(new StreamMessageReader(up), new StreamMessageWriter(down)), '1.2.3');
    this.connection = createProtocolConnection(
      new StreamMessageReader(down),
      new StreamMessageWriter(up),
    );
    this.connection.onNotification('textDocument/publishDiagnostics', (params) => {
      this.published.push(params as PublishDiagnosticsParams);
      for (const wake of this.#waiting.splice(0)) wake();
    });
    this.connection.listen();
  }

  async begin(capabilities: ClientCapabilities = able): Promise<InitializeResult> {
    const result = await this.connection.sendRequest<InitializeResult>('initialize', {
      processId: null,
      rootUri: pathToFileURL(this.root).href,
      capabilities,
    });
    this.initialized = result;
    await this.connection.sendNotification('initialized', {});
    return result;
  }

  path(name: string): string {
    return join(this.root, name);
  }

  uri(name: string): string {
    return pathToFileURL(this.path(name)).href;
  }

  write(name: string, text: string): void {
    mkdirSync(dirname(this.path(name)), { recursive: true });
    writeFileSync(this.path(name), text);
  }

  open(name: string, text: string, version = 1): Promise<void> {
    const languageId = name.endsWith('.md') ? 'markdown' : 'yaml';
    return this.connection.sendNotification('textDocument/didOpen', {
      textDocument: { uri: this.uri(name), languageId, version, text },
    });
  }

  /** Each change in turn, as an editor sends what is typed. */
  change(name: string, version: number, contentChanges: readonly unknown[]): Promise<void> {
    return this.connection.sendNotification('textDocument/didChange', {
      textDocument: { uri: this.uri(name), version },
      contentChanges,
    });
  }

  ask<T>(method: string, name: string, more: object = {}): Promise<T> {
    return this.connection.sendRequest<T>(method, {
      textDocument: { uri: this.uri(name) },
      ...more,
    });
  }

  /** The findings of a file, once some are published that `wanted` lets pass. */
  async findings(
    name: string,
    wanted: (params: PublishDiagnosticsParams) => boolean,
  ): Promise<PublishDiagnosticsParams> {
    const uri = this.uri(name);
    for (;;) {
      const found = this.published.findLast((each) => each.uri === uri && wanted(each));
      if (found) return found;
      await new Promise<void>((wake) => this.#waiting.push(wake));
    }
  }

  async end(): Promise<void> {
    await this.connection.sendRequest('shutdown');
    this.connection.dispose();
    rmSync(this.root, { recursive: true, force: true });
  }
}

/** The position of `|` in a text, and the text without it. */
export function cursor(marked: string): {
  readonly text: string;
  readonly position: { line: number; character: number };
} {
  const at = marked.indexOf('|');
  const before = marked.slice(0, at).split('\n');
  return {
    text: marked.slice(0, at) + marked.slice(at + 1),
    position: { line: before.length - 1, character: before.at(-1)?.length ?? 0 },
  };
}
