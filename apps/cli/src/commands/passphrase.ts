/** `shedbook passphrase`: who knows it comes to the desk where others reach it. */
import { InputError } from '@shedbook/host';
import type { AskSecret } from '../secret.ts';
import type { Speaker } from '../terminal.ts';
import type { LoadDesk } from './serve.ts';

/** What the command line asks for. */
export interface PassphraseRequest {
  /** Folder that lessons are kept in. */
  readonly data?: string;
}

/**
 * Asks for a passphrase, twice where somebody types it, and sets it.
 * @throws InputError where nothing was given, the two differ, or it cannot be set; nothing is changed then
 */
export async function passphrase(
  { data }: PassphraseRequest,
  terminal: Speaker,
  loadDesk: LoadDesk,
  askSecret: AskSecret,
): Promise<void> {
  const { passphrase: said } = terminal.catalogue.words;
  const [first, second] = await askSecret([said.ask, said.again]);
  if (first === undefined || first === '') throw new InputError(({ words }) => words.passphrase.nothing);
  if (second !== undefined && second !== first) throw new InputError(({ words }) => words.passphrase.differ);
  const { setPassphrase } = await loadDesk();
  await setPassphrase(first, data);
  terminal.say(said.set);
}
