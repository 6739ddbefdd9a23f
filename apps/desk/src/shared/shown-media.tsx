/** Pictures, sound and video of a lesson on the desk; what draws them is loaded where there are any. */
import type { Medium } from '@shedbook/core';
import { Suspense } from 'react';
import { lazily } from '../loading/later.ts';
import { findMedium } from './find-medium.ts';

const Prose = lazily(
  () => import('@shedbook/stand/prose'),
  (module) => module.Prose,
);

/** The files, one under the other; nothing where there are none. */
export function ShownMedia({ media = [] }: { readonly media?: readonly Medium[] | undefined }) {
  if (media.length === 0) return null;
  return (
    <Suspense>
      <Prose text={null} media={media} find={findMedium} />
    </Suspense>
  );
}
