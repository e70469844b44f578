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
    case 'EMFILE':
    case 'ENFILE':
      return 'too many files are open';
    default:
      return typeof code === 'string' ? `the system says ${code}` : 'the reason is not known';
  }
}
