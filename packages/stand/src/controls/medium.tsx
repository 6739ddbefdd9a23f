/** The teacher's own pictures, sound and video on a screen, with the browser's own controls. */
import { type Medium, mediumType } from '@shedbook/core';
import { createContext, useContext } from 'react';
import styles from './medium.module.css';

/** Where a file lies, and how large a picture is. */
export interface ShownMedium {
  readonly href: string;
  /** Null for what is no picture, or where it is not known. */
  readonly size: { readonly widthPx: number; readonly heightPx: number } | null;
}

/** Finds a file by its path in the lesson; null where it is not to be had. */
export type FindMedium = (path: string) => ShownMedium | null;

/** Where the files of the lesson lie that is shown inside. */
export const MediaPlace = createContext<FindMedium>(() => null);

/** The last part of a path. */
function fileName(path: string): string {
  return path.slice(path.lastIndexOf('/') + 1);
}

function Playable({ medium, shown }: { readonly medium: Medium; readonly shown: ShownMedium }) {
  const { href, size } = shown;
  const says = medium.says ?? fileName(medium.path);
  switch (mediumType(medium.path)?.kind) {
    case 'sound':
      // biome-ignore lint/a11y/useMediaCaption: what the teacher recorded has no captions; what it is stands beside it
      return <audio src={href} controls preload="none" aria-label={says} />;
    case 'video':
      // biome-ignore lint/a11y/useMediaCaption: as above
      return <video src={href} controls preload="metadata" playsInline aria-label={says} />;
    default:
      return (
        <img
          src={href}
          alt={says}
          loading="lazy"
          {...(size && { width: size.widthPx, height: size.heightPx })}
        />
      );
  }
}

/** One file: shown or played where it is to be had, else named. */
export function MediumView({ medium }: { readonly medium: Medium }) {
  const shown = useContext(MediaPlace)(medium.path);
  const kind = mediumType(medium.path)?.kind ?? 'picture';
  if (!shown) return <p className="quiet">{medium.says ?? fileName(medium.path)}</p>;
  return (
    <figure className={styles.medium} data-part="medium" data-kind={kind}>
      <Playable medium={medium} shown={shown} />
      {medium.says !== null && <figcaption>{medium.says}</figcaption>}
    </figure>
  );
}
