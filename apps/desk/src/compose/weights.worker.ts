/** Fits the weights of difficulty to what students played, beside the page. */
import { fitWeights, trialsIn } from '@shedbook/coach';
import { parseLesson } from '@shedbook/core';
import type { WeightsAnswer, WeightsOrder } from './weights-messages.ts';

function answer({ id, text, logs }: WeightsOrder): WeightsAnswer {
  const { lesson } = parseLesson(text, 'lesson');
  return lesson && fitWeights(trialsIn([{ id, lesson }], logs), lesson.compose.weights);
}

self.onmessage = ({ data }: MessageEvent<WeightsOrder>) => self.postMessage(answer(data));
