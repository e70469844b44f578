import {
  createConnection,
  ProposedFeatures,
  StreamMessageReader,
  StreamMessageWriter,
} from 'vscode-languageserver/node';
import { serve } from '../../language-server/index.ts';
import { packageVersion } from '../../project/index.ts';
import type { Io } from '../io.ts';
import type { ExitStatus } from '../run.ts';

/** `gaugeleaf language-server`: answers an editor on standard input and output until it is told to end. */
export function languageServer(io: Io): Promise<ExitStatus> {
  io.expectLongWork?.();
  const reader = new StreamMessageReader(io.stdin);
  const writer = new StreamMessageWriter(process.stdout);
  const connection = createConnection(ProposedFeatures.all, reader, writer);
  return new Promise((done) => {
    // An editor that is gone without a word closes the pipe.
    reader.onClose(() => done(0));
    connection.onExit(() => done(0));
    serve(connection, packageVersion());
  });
}
