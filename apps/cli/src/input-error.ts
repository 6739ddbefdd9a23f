/** What a person gave cannot be used: said in a sentence, and the command ends with 2. */
export class InputError extends Error {
  /** @param message where, what was found, what would be right */
  constructor(message: string) {
    super(message);
    this.name = 'InputError';
  }
}
