/** What the teacher wrote and shows, with the files of the pack. */
import type { Medium } from '@shedbook/core';
import type { Pack } from '@shedbook/pack';
import { usePracticeSession } from '../session/practice-session.tsx';
import { Prose } from '../ui/prose.tsx';

/** Where a file of a pack lies; null where the pack has none of that name. */
function findIn({ media = [] }: Pack, path: string) {
  const found = media.find(({ of }) => of === path);
  if (!found) return null;
  const { path: href, widthPx, heightPx } = found;
  return { href, size: widthPx && heightPx ? { widthPx, heightPx } : null };
}

/** The text, and under it its pictures, sound and video; nothing where there is neither. */
export function TeacherText({
  text = null,
  media,
}: {
  readonly text?: string | null;
  readonly media: readonly Medium[] | undefined;
}) {
  const { pack } = usePracticeSession();
  return <Prose text={text} media={media} find={(path) => findIn(pack, path)} />;
}
