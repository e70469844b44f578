/**
 * Something could not be carried out, through no fault of the program: `message` says in plain
 * words what happened and what was passed, `hint` what was perhaps meant or can be done.
 */
export class Refusal extends Error {
  override readonly name = 'Refusal';
  readonly hint: string | null;

  constructor(message: string, hint: string | null = null) {
    super(message);
    this.hint = hint;
  }
}

/** A file system error's cause in a restorer's words, without paths or codes. */
export function causeInWords(error: unknown): string {
  const code = (error as { code?: unknown } | null)?.code;
  switch (code) {
    case 'ENOENT':
      return 'there is no such file';
    case 'EACCES':
    case 'EPERM':
      return 'this computer does not allow it (permissions)';
    case 'EISDIR':
      return 'it is a folder';
    case 'ENOTDIR':
      return 'a part of its path is a file, not a folder';
    case 'ELOOP':
      return 'its links lead around in a circle';
    case 'ENAMETOOLONG':
      return 'its name is too long';
    case 'ENOSPC':
      return 'the disk is full';
    case 'EROFS':
      return 'the disk cannot be written to';
    case 'EBUSY':
      return 'another program is using it';
    case 'EPIPE':
    case 'ERR_STREAM_DESTROYED':
      return 'whoever read it has closed it';
    case 'EADDRINUSE':
      return 'another program has it';
    case 'EIO':
      return 'the disk or line is broken';
    case 'EDQUOT':
      return 'the share of the disk that this user has is full';
    case 'EXDEV':
      return 'it lies on another disk';
    case 'ENOTEMPTY':
      return 'the folder is not empty';
    case 'ENOMEM':
      return 'the memory is full';
    case 'ENOEXEC':
      return 'it is no program of this system';
    case 'ETXTBSY':
      return 'it is being written to';
    case 'ETIMEDOUT':
      return 'nothing came in time';
    case 'EMFILE':
    case 'ENFILE':
      return 'too many files are open';
    default:
      return 'the system gives no reason that can be said in words';
  }
}
