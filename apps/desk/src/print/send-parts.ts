/** Large files on their way to the server, part by part. */
import { PART_BYTES } from '@shedbook/routes';
import { ask } from '../document/client.ts';

/** What is asked and told on the way. */
export interface Sending {
  /** Told the name of the file on the server, before its first part. */
  readonly begun?: (performance: string) => void;
  /** Told the part that is sent, 0 to 1. */
  readonly tell: (share: number) => void;
  /** Whether it is still wanted. */
  readonly isWanted: () => boolean;
}

/** Throws a file away that was sent, or a part of one. */
export function dropSent(performance: string | null): void {
  if (performance !== null) ask('dropPerformance', { params: { performance } }).catch(() => undefined);
}

/** Sends a file. @returns its name on the server, or null where it was not wanted any more, and is thrown away */
export async function sendInParts(file: Blob, { begun, tell, isWanted }: Sending): Promise<string | null> {
  const { performance } = await ask('beginPerformance', { body: {} });
  begun?.(performance);
  for (let at = 0; at < file.size && isWanted(); at += PART_BYTES) {
    tell(at / file.size);
    await ask('sendPerformance', { params: { performance, at }, body: file.slice(at, at + PART_BYTES) });
  }
  if (isWanted()) return performance;
  dropSent(performance);
  return null;
}
