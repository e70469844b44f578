import { orderProof } from '../checks/index.ts';
import { traceOf } from '../order/index.ts';
import { examineFile, type Target } from '../project/index.ts';
import { traceLegend, traceTable } from '../report/index.ts';
import { type Io, say } from './io.ts';
import type { ExitStatus } from './run.ts';

/** The state of the unit after every step of some sheets, a table each. 2 where one cannot be read. */
export function trace(targets: readonly Target[], io: Io): ExitStatus {
  let refused = false;
  const tables: string[] = [];
  for (const { project, path } of targets) {
    const examined = examineFile(project, path);
    if (!examined.ok) {
      refused = true;
      say(io, `gaugeleaf: ${examined.refused.message}`);
      continue;
    }
    const proof = orderProof(examined.sheet);
    if (proof === null) {
      refused = true;
      say(io, `gaugeleaf: ${examined.sheet.file} is of no kind of unit that is known`);
      continue;
    }
    tables.push(traceTable(examined.sheet, traceOf(proof.walk, proof.kind)));
  }
  if (tables.length > 0) io.stdout.write(`${traceLegend}\n${tables.join('\n')}`);
  return refused ? 2 : 0;
}
