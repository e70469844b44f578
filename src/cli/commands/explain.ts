import { acrossChecks, allChecks, explainCheck } from '../../checks/index.ts';
import { projectChecks, Refusal } from '../../project/index.ts';
import { checkList, paint } from '../../report/index.ts';
import { nearestName } from '../../text/index.ts';
import { type Io, usesColor } from '../io.ts';
import type { ExitStatus } from '../run.ts';

/** `gaugeleaf explain`: one finding with its examples, or a list of all of them. */
export async function explain(name: string | undefined, io: Io): Promise<ExitStatus> {
  const checks = [...allChecks, ...acrossChecks, ...projectChecks];
  if (name === undefined) {
    io.stdout.write(checkList(checks, paint(usesColor(io, io.stdout))));
    return 0;
  }
  const wanted = name.trim().toLowerCase();
  const check = checks.find((each) => each.id === wanted);
  if (check === undefined) {
    const ids = checks.map((each) => each.id);
    const near = nearestName(wanted, ids);
    const meant =
      near === null ? ids.filter((id) => wanted.length > 2 && id.includes(wanted)) : [near];
    throw new Refusal(
      `there is no finding called ${name}`,
      meant.length === 0 || meant.length > 5
        ? 'gaugeleaf explain lists all there are'
        : `perhaps ${meant.join(' or ')} was meant`,
    );
  }
  io.stdout.write(explainCheck(check));
  return 0;
}
