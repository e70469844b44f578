#!/usr/bin/env node
import { run } from './run.ts';

// A reader that has seen enough (`| head`) closes the pipe: nothing is wrong then.
for (const stream of [process.stdout, process.stderr]) {
  stream.on('error', (error: NodeJS.ErrnoException) => {
    if (error.code === 'EPIPE') process.exit(process.exitCode ?? 0);
    throw error;
  });
}

// Files are written whole in one go, so between two goes nothing of them is left behind; leaving
// by exit() lets a browser that was started be ended too. 130 and 143 are what a shell reports.
process.once('SIGINT', () => process.exit(130));
process.once('SIGTERM', () => process.exit(143));

process.exitCode = await run(process.argv.slice(2), {
  stdout: process.stdout,
  stderr: process.stderr,
  stdin: process.stdin,
  env: process.env,
  cwd: process.cwd(),
  today: () => {
    const now = new Date();
    const two = (number: number) => String(number).padStart(2, '0');
    return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
  },
});
