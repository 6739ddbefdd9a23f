/** What is wrong with a recording, in words. */
import type { CliWords } from '@shedbook/words';
import { InputError } from '../input-error.ts';
import type { FoundSound, SoundFaultFact } from './sound-fault.ts';

function sayFound(found: FoundSound, { sounds }: CliWords): string {
  switch (found.is) {
    case 'without':
      return sounds.without({ kind: sounds[found.kind] });
    case 'rate':
      return sounds.rate({ hertz: found.sampleRateHz });
    case 'tooLong':
      return sounds.tooLong(found);
    case 'seconds':
      return sounds.seconds({ heard: found.heardSeconds, whole: found.wholeSeconds });
    case 'codec':
      return sounds.codec(found);
    default:
      return sounds[found.is];
  }
}

function sayFault(path: string, fact: SoundFaultFact, words: CliWords): string {
  if (fact.fault === 'too-much') return words.tooMuch({ file: path });
  const found = sayFound(fact.found, words);
  const notRead = (what: string) =>
    words.found({ where: path, found: what, expected: words.expected.recordings });
  switch (fact.fault) {
    case 'cannot-read':
      return notRead(found);
    case 'breaks-off':
      return words.breaksOff({ file: path, found });
    case 'no-ffmpeg':
      return words.notDecoded({ file: path, found });
    case 'complaint':
      return notRead(words.sounds.complaint({ kind: found, why: fact.why }));
  }
}

/** The error for a recording that cannot be read. */
export function unreadableSound(path: string, fact: SoundFaultFact): InputError {
  return new InputError(({ words }) => sayFault(path, fact, words));
}
