import { stdin, stdout } from 'node:process';
import {
  createConnection,
  ProposedFeatures,
  StreamMessageReader,
  StreamMessageWriter,
} from 'vscode-languageserver/node';
import { serve } from '../../language-server/index.ts';
import { packageVersion } from '../../project/index.ts';

// What the extension starts: the language server, without the rest of the program.
const reader = new StreamMessageReader(stdin);
serve(
  createConnection(ProposedFeatures.all, reader, new StreamMessageWriter(stdout)),
  packageVersion(),
);
