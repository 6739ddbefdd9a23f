/** The card that a film begins with, and its cover: what the lesson is called, who gives it, and what is in the film. */
import { countedTempo } from '@shedbook/core';
import { allMoved, type Item, setColumn, style } from '@shedbook/engrave';
import { exercisesInWords } from '@shedbook/words';
import { coloursOf, type Film } from './film.ts';
import { SHAPES } from './look.data.ts';

function tempiText(film: Film): string {
  const tempi = film.scenes.flatMap((scene) =>
    scene.kind === 'exercise' ? [countedTempo(scene.lesson.meter, scene.bpm)] : [],
  );
  const [from, to] = [Math.min(...tempi), Math.max(...tempi)];
  return from === to ? film.tools.said.tempo({ bpm: from }) : film.tools.said.tempi({ from, to });
}

/** What stands on the card. */
export function titleItems(film: Film): readonly Item[] {
  const { fonts, said } = film.tools;
  const { widthMm, heightMm, sideMm, small, card } = SHAPES[film.look.shape];
  const { ink, soft, accent } = coloursOf(film);
  const { lesson, exercises } = film.request;
  const width = widthMm - 2 * sideMm;
  const lines = (text: string, weight: 'bold' | 'italic' | 'regular', size: number, colour: string) =>
    setColumn(fonts, text, style(weight, size), width, { maxLines: 4, colour });
  const blocks = [
    lines(lesson.title, 'bold', card, ink),
    ...(lesson.by === null ? [] : [lines(said.teacher({ name: lesson.by }), 'italic', 1.2 * small, soft)]),
    lines(exercisesInWords(said, exercises), 'bold', 1.3 * small, accent),
    lines(tempiText(film), 'regular', 1.2 * small, ink),
  ];
  const gap = 1.1 * small;
  const height = blocks.reduce((sum, block) => sum + block.heightMm + gap, -gap);
  let y = (heightMm - height) / 2;
  const rule: Item = {
    ...{ kind: 'line', x: sideMm, x2: sideMm + 0.12 * widthMm, y: y - 1.5 * gap, y2: y - 1.5 * gap },
    ...{ strokeMm: 1.2, colour: accent },
  };
  const set = blocks.flatMap((block) => {
    const items = allMoved(block.items, sideMm, y);
    y += block.heightMm + gap;
    return items;
  });
  return [rule, ...set];
}
