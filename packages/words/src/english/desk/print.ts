/** Print and what goes home, in English. */

/** Words of `print`. */
export const print = {
  title: 'Print',
  paper: 'Paper',
  tablet: 'tablet',
  counts: 'Counts under the notes',
  stickings: 'Hands',
  legend: 'Key to the noteheads',
  tickBoxes: 'Boxes to tick tempi',
  staff: 'Staff',
  compact: 'one line',
  full: 'whole groove',
  size: 'Size of the notes',
  download: 'Download PDF',
  preview: 'Preview of the printed pages',
  page: 'Page {$n :integer} of {$of :integer}',
  preparing: 'Engraving the pages …',
  failed: 'The pages could not be engraved.',
  takeHome: 'For practising at home',
  takeHomeHint:
    'A page with this lesson that students open on a phone or tablet: it plays, listens and works without a network. Unpack it on any web host.',
  practicePage: 'Address of that page',
  practicePageHint: 'Printed on the sheet as a code to scan.',
  practicePageWrong: 'An address begins with https://',
  demonstrate: 'Your own playing in the pack',
  demonstrateHint:
    'A video or a recording of an exercise as you play it: on their page students hear it as fast as you played, or slower, while ball and count follow you. A minute adds about 3 MB.',
  makePack: 'Take-home pack (ZIP)',
  makingPack: 'Making the pack; recording every exercise takes a while …',
  packFailed: 'The pack could not be made.',
} as const;
