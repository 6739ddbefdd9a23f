/** A take as the file that goes to the teacher. */
import { read } from '../kept/database.ts';
import { packTake } from './export-take.ts';
import { asFlac } from './flac.ts';
import type { Take } from './take.ts';
import { audioOf } from './take-store.ts';

/** The file of a take that is kept; null where it was deleted. */
export async function takeFile(id: string): Promise<Uint8Array<ArrayBuffer> | null> {
  const take = await read<Take>('takes', id);
  if (!take) return null;
  const audio = await audioOf(id);
  const sound = audio && ({ name: 'take.flac', content: await asFlac(audio) } as const);
  return packTake(take, sound, null);
}
