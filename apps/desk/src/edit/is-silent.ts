/** Bars without a stroke. */
import { type Exercise, isRest } from '@shedbook/core';

/** Whether nothing is struck in an exercise: the bar that a new lesson begins with. */
export function isSilent({ parts }: Pick<Exercise, 'parts'>): boolean {
  return parts.every((part) => part.pattern.bars.flat().every(isRest));
}
