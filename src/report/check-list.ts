import { checkGroups, type ToldCheck } from '../checks/index.ts';
import type { Paint } from './paint.ts';

/** Every check with its severity and a line, group by group. */
export function checkList(checks: readonly ToldCheck[], ink: Paint): string {
  const width = Math.max(...checks.map((check) => check.id.length));
  const lines: string[] = [];
  for (const group of checkGroups) {
    const members = checks.filter((check) => check.group === group);
    if (members.length === 0) continue;
    if (lines.length > 0) lines.push('');
    lines.push(ink.bold(group));
    for (const { id, severity, summary } of members) {
      const tint = { error: ink.red, warning: ink.yellow, note: ink.blue }[severity];
      lines.push(`  ${id.padEnd(width)}  ${tint(severity.padEnd(7))}  ${summary}`);
    }
  }
  return `${lines.join('\n')}\n`;
}
