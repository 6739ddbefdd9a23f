/** The teacher's own pictures, sound and video: kept beside the store, and shown on the desk. */
import { mediumType } from '@shedbook/core';
import { readMedium } from '@shedbook/pack/media';
import type { MediaStore } from '../store/media-files.ts';
import { answer, type Handlers, refuse } from './handlers.ts';

/** Answers the routes of such files. */
export function mediaHandlers({ media }: { readonly media: MediaStore }) {
  return {
    keepMedium: async ({ query: { name }, body }) => {
      const { file, fault } = readMedium(name, body);
      if (!file) return refuse('medium-refused', { fault });
      return answer({ path: await media.keep(file) });
    },
    readMedium: async ({ params: { name } }) => {
      const content = await media.read(name);
      const type = mediumType(name)?.type;
      return content && type ? answer({ name, type, content }) : refuse('no-such-medium', {});
    },
  } satisfies Partial<Handlers>;
}
