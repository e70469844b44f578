import { gaugeBook } from '../gauges/index.ts';
import { heightText, readStatement } from '../quantity/index.ts';
import { locate } from './safe-path.ts';

/** What is wrong with the club's altitude; null where it is a height. Every vacuum is worked from it. */
export function altitudeFault(text: string): { message: string; fix: string } | null {
  const reading = readStatement(heightText(text), { gauges: gaugeBook(), expect: ['length'] });
  if (reading.ok && reading.statement.dimension === 'length' && reading.statement.nominal)
    return null;
  return {
    message: `the altitude ${text} is no height`,
    fix: 'write it with its unit, such as 1200 ft or 350 m, or `sea level`',
  };
}

/** What is wrong with the file of the last edition; null where it is there. */
export function previousFault(root: string, path: string): { message: string; fix: string } | null {
  const { status } = locate(root, root, path);
  if (status === 'found') return null;
  return {
    message: `\`previous: ${path}\` ${status === 'outside' ? 'lies outside the project' : 'is not there'}`,
    fix: 'name a file in the project that `gaugeleaf export --format json` wrote for the last edition, or take the line out',
  };
}
