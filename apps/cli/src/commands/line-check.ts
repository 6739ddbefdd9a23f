/** `shedbook line-check`: learns a kit in its room on one device, from a recording in which each limb plays alone. */
import { basename, extname } from 'node:path';
import type { Voice } from '@shedbook/core';
import { InputError } from '@shedbook/host';
import { type KnownKit, type LearntKit, learnKitInTurn, voicesKnown } from '@shedbook/listen';
import { readRecording } from '../listen/read-recording.ts';
import { readVoices, refused } from '../options.ts';
import type { Speaker } from '../terminal.ts';
import { replaceTextFile } from '../text-file.ts';

/** What the command line asks for. */
export interface LineCheckRequest {
  readonly take: string;
  /** Voices in the order in which they were played, joined by commas. */
  readonly limbs: string;
  /** What reports call it; the name of the recording when left out. */
  readonly name?: string;
  readonly out?: string;
  readonly json?: boolean;
}

/** What was learnt. @throws InputError where the limbs cannot be told apart, or one of them was not heard */
async function learntFrom(path: string, limbs: readonly Voice[], terminal: Speaker): Promise<LearntKit> {
  terminal.progress(terminal.catalogue.words.listening);
  const learnt = learnKitInTurn(await readRecording(path), limbs);
  terminal.progress(null);
  if (learnt && learnt.unheard.length === 0) return learnt;
  throw new InputError(({ words }) => words.lineCheck.notApart({ file: path, limbs: limbs.length }));
}

/**
 * Learns a kit and prints or writes what is known of it. @returns the exit status.
 * @throws InputError when the recording is no line check, or one of a single limb.
 */
export async function lineCheckCommand(request: LineCheckRequest, terminal: Speaker): Promise<number> {
  const { take, out } = request;
  const limbs = readVoices('limbs', request.limbs);
  // what a limb sounds like beside others is learnt, so that one alone teaches nothing
  if (limbs.length < 2) throw refused('--limbs', request.limbs, (expected) => expected.limbs);
  const { slopes, weights } = await learntFrom(take, limbs, terminal);
  const name = request.name ?? basename(take, extname(take));
  const kit: KnownKit = { name, weights, slopes };
  const text = JSON.stringify(kit);
  if (out !== undefined) await replaceTextFile(out, `${text}\n`, terminal);
  const { words } = terminal.catalogue;
  if (request.json || out === undefined) terminal.say(text);
  else terminal.say(words.lineCheck.written({ voices: voicesKnown(kit).length, name, file: out }));
  return 0;
}
