/** The takes that are kept on this device. */
import { drop, keep, read, readAll } from '../kept/database.ts';
import type { Take, WholeTake } from './take.ts';

/** A sound as it is kept: its bytes, since some browsers keep no blobs in a private window (WebKit). */
interface KeptAudio {
  readonly id: string;
  /** A blob in what earlier pages kept. */
  readonly audio: ArrayBuffer | Blob;
  readonly type?: string;
}

/** Every take, newest first. */
export async function listTakes(): Promise<readonly Take[]> {
  const takes = await readAll<Take>('takes');
  return takes.toSorted((a, b) => (a.startedAt < b.startedAt ? 1 : -1));
}

/** Whether a take is kept for good. */
export async function isKept(id: string): Promise<boolean> {
  return (await read<Take>('takes', id)) !== undefined;
}

/** The sound of a take, or null. */
export async function audioOf(id: string): Promise<Blob | null> {
  const { audio, type = '' } = (await read<KeptAudio>('audio', id)) ?? {};
  return audio instanceof ArrayBuffer ? new Blob([audio], { type }) : (audio ?? null);
}

/** Keeps a take. @throws DOMException `QuotaExceededError` when there is no room; then nothing of it is kept. */
export async function keepTake({ take, audio }: WholeTake): Promise<void> {
  const sound: KeptAudio | null = audio && {
    id: take.id,
    audio: await audio.arrayBuffer(),
    type: audio.type,
  };
  await keep(sound ? { takes: take, audio: sound } : { takes: take });
}

/** Deletes a take. @returns what was there, to be kept again by whoever thinks better of it. */
export async function removeTake(take: Take): Promise<WholeTake> {
  const audio = await audioOf(take.id);
  await drop(['takes', 'audio'], take.id);
  return { take, audio };
}

/** Bytes that takes use, and bytes that the browser has left where it says so. */
export async function spaceOf(
  takes: readonly Take[],
): Promise<{ readonly used: number; readonly left: number | null }> {
  const used = takes.reduce((sum, take) => sum + take.audioBytes, 0);
  const estimate = await navigator.storage?.estimate?.().catch(() => null);
  const { quota, usage } = estimate ?? {};
  return { used, left: quota === undefined || usage === undefined ? null : Math.max(0, quota - usage) };
}
