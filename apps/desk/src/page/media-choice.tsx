/** Pictures, sound and video beside something: shown, told what they show, taken out, and more of them put there. */
import { MEDIUM_TYPES, type Medium } from '@shedbook/core';
import { Button, FileButton, Icon } from '@shedbook/stand';
import { KeptField } from '../shared/kept-field.tsx';
import { ShownMedia } from '../shared/shown-media.tsx';
import { useWords } from '../words/words.tsx';
import styles from './media-choice.module.css';
import { useAddMedia } from './use-add-media.ts';

/** Kinds that are offered; other pictures are drawn anew. */
const OFFERED = ['image/*', ...Object.keys(MEDIUM_TYPES).map((ending) => `.${ending}`)];

interface MediaChoiceProps {
  readonly media?: readonly Medium[] | undefined;
  readonly onMedia: (media: readonly Medium[]) => void;
}

/** The files, and a way to more. */
export function MediaChoice({ media = [], onMedia }: MediaChoiceProps) {
  const words = useWords().page;
  const { add } = useAddMedia(media, onMedia);
  return (
    <div className={styles.media} data-part="media">
      {media.map((medium, at) => (
        <div key={medium.path} className={styles.one}>
          <ShownMedia media={[{ ...medium, says: null }]} />
          <div className={styles.line}>
            <KeptField
              label={words.mediumSays}
              value={medium.says ?? ''}
              onKeep={(said) => onMedia(media.with(at, { ...medium, says: said.trim() || null }))}
            />
            <Button onClick={() => onMedia(media.toSpliced(at, 1))}>
              <Icon name="bin" />
              {words.removeMedium}
            </Button>
          </div>
        </div>
      ))}
      <FileButton dress="bare" accept={OFFERED} onFile={(file) => void add([file])}>
        <Icon name="plus" />
        {words.addMedium}
      </FileButton>
    </div>
  );
}
