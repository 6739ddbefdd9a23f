/**
 * Files that are dropped on the window, and recordings among them: one that is dropped where no student is looked at
 * waits until one is.
 */
import { useEffect, useRef } from 'react';

/** Endings and media types of recordings, for the browser's choice of files. */
export const TAKE_FILES = [
  'audio/*',
  ...['.wav', '.mp3', '.m4a', '.ogg', '.webm', '.flac', '.mid', '.midi'],
] as const;

/** Whether a file is a recording, by its type or its ending: sound, or a MIDI file. */
export function isTakeFile({ name, type }: Pick<File, 'name' | 'type'>): boolean {
  return type.startsWith('audio/') || TAKE_FILES.some((each) => name.toLowerCase().endsWith(each));
}

let waiting: File | null = null;

/** Keeps a recording until a student is looked at. */
export function letWait(file: File): void {
  waiting = file;
}

/** Tells of files that are dropped anywhere on the window, and of one that waits. */
export function useDropped(onFile: (file: File) => void): void {
  const latest = useRef(onFile);
  latest.current = onFile;
  useEffect(() => {
    const over = (event: DragEvent) => {
      if (event.dataTransfer?.types.includes('Files')) event.preventDefault();
    };
    const drop = (event: DragEvent) => {
      const file = event.dataTransfer?.files[0];
      if (!file) return;
      event.preventDefault();
      latest.current(file);
    };
    window.addEventListener('dragover', over);
    window.addEventListener('drop', drop);
    return () => {
      window.removeEventListener('dragover', over);
      window.removeEventListener('drop', drop);
    };
  }, []);
}

/** The name of the recording that waits, or null. */
export function waitingName(): string | null {
  return waiting?.name ?? null;
}

/** The recording that waits; it waits no longer. */
export function waitingFile(): File | null {
  const file = waiting;
  waiting = null;
  return file;
}
