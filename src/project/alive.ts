/** Whether a process of that number runs. */
export function isAlive(pid: number): boolean {
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    // Another user's process can't be signaled and is there all the same.
    return error instanceof Error && 'code' in error && error.code === 'EPERM';
  }
}
