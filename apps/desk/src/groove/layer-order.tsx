/** In which order the groove is built up: who joins when, and who joins together. */

import type { Lesson } from '@shedbook/core';
import { Button } from '@shedbook/stand';
import { joinLayer, moveLayer } from '../edit/groove.ts';
import { TurnButtons } from '../shared/turn-buttons.tsx';
import { useWords } from '../words/words.tsx';
import styles from './groove-view.module.css';
import type { GrooveWork } from './use-groove.ts';

/** The list. */
export function LayerOrder({ lesson, work }: { readonly lesson: Lesson; readonly work: GrooveWork }) {
  const words = useWords();
  const { layers } = lesson;
  const nameOf = (index: number) =>
    (layers[index]?.joins ?? [])
      .map((join) => (join === 'pattern' ? words.groove.thePattern : words.voices[join]))
      .join(' + ');
  return (
    <section className={styles.limb} aria-label={words.groove.order}>
      <h3>{words.groove.order}</h3>
      <ol className={styles.layers}>
        {layers.map(({ joins }, index) => (
          <li key={joins.join()}>
            <span>{nameOf(index)}</span>
            <span className={styles.layerTools}>
              <TurnButtons
                name={nameOf(index)}
                at={index}
                of={layers.length}
                onTurn={(by) => work.setLayers(moveLayer(layers, index, by))}
              />
              <Button
                disabled={index === 0 && joins.length < 2}
                onClick={() => work.setLayers(joinLayer(layers, index))}
              >
                {joins.length > 1 ? words.groove.apart : words.groove.joins}
              </Button>
            </span>
          </li>
        ))}
      </ol>
    </section>
  );
}
