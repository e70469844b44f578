/**
 * Prints how many tests passed and failed, alone on a line, from what `vitest --reporter=json` wrote:
 * `node test/suite/count.mjs FILE ...`. A test that several runs tell of is counted once, and has failed
 * if it failed in any; a file that could not be read as tests counts as one that failed, and so does a
 * run that wrote nothing.
 */
import { existsSync, readFileSync } from 'node:fs';

/** By file and name, the worst that became of a test. */
const ends = new Map();
const badness = ['skipped', 'passed', 'failed'];

function note(name, status) {
  const end = badness.includes(status) ? status : 'skipped';
  const before = ends.get(name) ?? 'skipped';
  ends.set(name, badness.indexOf(end) > badness.indexOf(before) ? end : before);
}

for (const path of process.argv.slice(2)) {
  if (!existsSync(path)) {
    note(path, 'failed');
    continue;
  }
  for (const { name: file, status, assertionResults } of JSON.parse(readFileSync(path, 'utf8'))
    .testResults) {
    // Two tests of one name in a file are told apart by which comes first.
    const times = new Map();
    for (const { fullName, status: end } of assertionResults) {
      const nth = (times.get(fullName) ?? 0) + 1;
      times.set(fullName, nth);
      note(`${file} ${fullName} ${nth}`, end);
    }
    const isTold = assertionResults.some(({ status: end }) => end === 'failed');
    if (status === 'failed' && !isTold) note(file, 'failed');
  }
}

const count = (end) => [...ends.values()].filter((each) => each === end).length;
if (count('skipped') > 0) {
  process.stdout.write(`${count('skipped')} skipped: what they need is not on this machine\n`);
}
process.stdout.write(`${count('passed')} passed, ${count('failed')} failed\n`);
