/** What a new lesson says before anybody has written in it. */

/** The text of a new lesson: a bar to write in, and the groove that a lesson has by itself. */
export function newLessonText(title: string): string {
  return [
    `title: ${JSON.stringify(title)}`,
    'meter: 4/4',
    'tempo: 80',
    'feel: triplet',
    'groove:',
    '  ride: x x.x x x.x',
    '  hihat-foot: . x . x',
    '  bass: x x x x',
    'exercises:',
    '  - "... ... ... ..."',
    '',
  ].join('\n');
}
