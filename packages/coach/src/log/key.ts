/** A lesson and an exercise as one key. */

/** A lesson and an exercise (null: the groove alone) as one key. */
export function itemKey(lesson: string, exercise: string | null): string {
  return JSON.stringify([lesson, exercise]);
}
