/**
 * Loaded before the program (`node --import`): kills it, as by a power cut, at one of the moments in
 * which it changes something on the disk. KILL_WITHIN is the folder whose changes are counted, KILL_AT
 * the change at which it ends, from 1; a write ends half done. Without KILL_AT it counts to the end,
 * and says how many there were in the file KILL_COUNT.
 */
import fs from 'node:fs';
import { syncBuiltinESMExports } from 'node:module';

const { KILL_WITHIN = '/', KILL_AT, KILL_COUNT } = process.env;
const last = Number(KILL_AT ?? Number.POSITIVE_INFINITY);
let count = 0;
/** The files within the folder that are open to be written. */
const open = new Set();

const isWithin = (path) => String(path).startsWith(KILL_WITHIN);

/** Whether this is the moment; the caller ends the program once it has done what it does by half. */
function isLast() {
  count += 1;
  return count === last;
}

function die() {
  process.kill(process.pid, 'SIGKILL');
  // The signal may take a moment, and nothing more is to be done in it.
  for (;;);
}

const { openSync, closeSync, writeSync, writeFileSync } = fs;

fs.openSync = (path, flags, ...more) => {
  const writes = isWithin(path) && /[wa+]/.test(String(flags ?? 'r'));
  if (writes && isLast()) die();
  const handle = openSync(path, flags, ...more);
  if (writes) open.add(handle);
  return handle;
};
fs.closeSync = (handle) => {
  open.delete(handle);
  return closeSync(handle);
};
fs.writeSync = (handle, bytes, ...more) => {
  if (open.has(handle) && isLast()) {
    writeSync(handle, bytes.subarray(0, bytes.length >> 1));
    die();
  }
  return writeSync(handle, bytes, ...more);
};
fs.writeFileSync = (path, bytes, ...more) => {
  if (isWithin(path) && isLast()) {
    writeFileSync(path, bytes.slice(0, bytes.length >> 1), ...more);
    die();
  }
  return writeFileSync(path, bytes, ...more);
};
for (const name of ['renameSync', 'unlinkSync', 'rmSync', 'chmodSync', 'mkdirSync']) {
  const before = fs[name];
  fs[name] = (path, ...more) => {
    if (isWithin(path) && isLast()) die();
    return before(path, ...more);
  };
}
syncBuiltinESMExports();

if (KILL_COUNT !== undefined) process.on('exit', () => writeFileSync(KILL_COUNT, String(count)));
