/** What a person gave cannot be used: said in a sentence, and the command ends with 2. */
export class InputError extends Error {
  /** @param message where, what was found, what would be right */
  constructor(message: string) {
    super(message);
    this.name = 'InputError';
  }
}
const REASONS: Readonly<Record<string, string>> = {
  ENOENT: 'there is no such file',
  EISDIR: 'that is a folder',
  EACCES: 'it may not be read',
};

/** Why a file could not be used, in a clause. */
export function reasonOf(error: unknown): string {
  const { code, message } = error as NodeJS.ErrnoException;
  return REASONS[code ?? ''] ?? message;
}
