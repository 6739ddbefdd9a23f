/** Putting files beside something: chosen or dropped, kept by the server, and named in the lesson. */
import type { Medium } from '@shedbook/core';
import { useSay } from '@shedbook/stand';
import { type DragEvent, useRef } from 'react';
import { explain } from '../document/error-words.ts';
import { useLanguage } from '../words/words.tsx';

/** What is done with files. */
export interface MediaActions {
  readonly add: (files: readonly File[]) => Promise<void>;
  /** For whatever files may be dropped on. */
  readonly drop: {
    readonly onDragOver: (event: DragEvent) => void;
    readonly onDrop: (event: DragEvent) => void;
  };
}

/**
 * @param media what stands there
 * @param onMedia told once of all that stands there then: what has come meanwhile stays
 */
export function useAddMedia(
  media: readonly Medium[] | undefined,
  onMedia: (media: readonly Medium[]) => void,
): MediaActions {
  const language = useLanguage();
  const say = useSay();
  const latest = useRef({ media, onMedia });
  latest.current = { media, onMedia };
  const add = async (files: readonly File[]) => {
    const { keepMedium } = await import('../document/keep-medium.ts');
    const kept: Medium[] = [];
    for (const file of files) {
      try {
        kept.push(await keepMedium(file));
      } catch (error) {
        say(await explain(error, language));
      }
    }
    const now = latest.current;
    if (kept.length > 0) now.onMedia([...(now.media ?? []), ...kept]);
  };
  return {
    add,
    drop: {
      onDragOver: (event) => {
        if (event.dataTransfer.types.includes('Files')) event.preventDefault();
      },
      onDrop: (event) => {
        const files = [...event.dataTransfer.files];
        if (files.length === 0) return;
        event.preventDefault();
        event.stopPropagation();
        void add(files);
      },
    },
  };
}
