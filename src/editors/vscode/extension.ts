import { join } from 'node:path';
import { type ExtensionContext, workspace } from 'vscode';
import { LanguageClient, type ServerOptions, TransportKind } from 'vscode-languageclient/node';

let client: LanguageClient | null = null;

/** Called by the editor in a folder with sheets: starts the server and hands it what is open. */
export async function activate(context: ExtensionContext): Promise<void> {
  const own = workspace.getConfiguration('gaugeleaf').get<string>('command')?.trim() ?? '';
  const packed = join(context.extensionPath, 'server.mjs');
  const server: ServerOptions =
    own === ''
      ? { module: packed, transport: TransportKind.stdio }
      : { command: own, args: ['language-server', '--stdio'] };
  client = new LanguageClient('gaugeleaf', 'Gaugeleaf', server, {
    documentSelector: [
      { scheme: 'file', language: 'markdown' },
      { scheme: 'file', pattern: '**/{edition,sources}.yaml' },
      { scheme: 'file', pattern: '**/kinds/*.{yaml,yml}' },
    ],
  });
  await client.start();
}

export async function deactivate(): Promise<void> {
  await client?.stop();
}
