/** Putting files beside something: chosen or dropped, kept by the server, and named in the lesson. */
import type { Medium } from '@shedbook/core';
import { useSay } from '@shedbook/stand';
import type { DragEvent } from 'react';
import { explain } from '../document/error-words.ts';
import { keepMedium } from '../document/keep-medium.ts';
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

/** @param onAdd told of each file that is kept */
export function useMedia(onAdd: (medium: Medium) => void): MediaActions {
  const language = useLanguage();
  const say = useSay();
  const add = async (files: readonly File[]) => {
    for (const file of files) {
      try {
        onAdd(await keepMedium(file));
      } catch (error) {
        say(await explain(error, language));
      }
    }
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
