/** Forms of a lesson, in English. */

/** Words of `forms`. */
export const forms = {
  title: 'Forms',
  opens: 'Forms',
  hear: 'Hear it',
  add: 'New form from this one',
  newName: 'My form',
  removeForm: 'Delete this form',
  sections: 'Sections',
  section: 'Section {$n :integer}',
  plays: 'What plays',
  play: {
    pattern: 'exercise',
    time: 'groove alone',
    rest: 'silence',
  },
  bars: 'Bars',
  repeat: 'Times through',
  countIn: 'Bars of count-in',
  addSection: 'Add a section to the form',
  up: 'Move section {$n :integer} up',
  down: 'Move section {$n :integer} down',
  remove: 'Delete section {$n :integer}',
  fewer: '{$what}: one less',
  more: '{$what}: one more',
  addEnding: 'End it on an accent',
  noEnding: 'No accent at the end',
  ending: 'Its last bar ends on',
  onBeat: 'Beat',
  voices: 'Who strikes',
} as const;
