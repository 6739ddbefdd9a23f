/** What a person gave cannot be used: said in the language of whoever runs the program. */
import { CLI, type CliCatalogue, sizeWords } from '@shedbook/words';
import { TooLargeError } from './outside/read-up-to.ts';

/** Says something in a language. */
export type SayIn = (catalogue: CliCatalogue) => string;

/** What a person gave cannot be used; the command ends with 2. */
export class InputError extends Error {
  override readonly name = 'InputError';
  /** Where, what was found, what would be right. */
  readonly say: SayIn;

  /** @param say says where, what was found, what would be right; its English is the message of the error */
  constructor(say: SayIn) {
    super(say(CLI.en));
    this.say = say;
  }
}

/**
 * Why a file could not be used, in a clause of the language. Where the system says something that nobody has put into words,
 * its own name of it stands in the clause.
 */
export function reasonOf(error: unknown, { words }: CliCatalogue): string {
  if (error instanceof TooLargeError)
    return words.tooLarge({ most: sizeWords(words.sizes, error.mostBytes) });
  const { code, message } = error as NodeJS.ErrnoException;
  const reasons: Readonly<Record<string, string>> = words.reasons;
  return reasons[code ?? ''] ?? words.otherReason({ reason: code ?? message });
}
