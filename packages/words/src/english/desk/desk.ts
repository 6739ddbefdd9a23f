/** The desk with its lessons, in English. */

/** Words of `desk`. */
export const desk = {
  title: 'Lessons',
  lead: 'Write a sheet, hear it at any tempo, print it for Tuesday.',
  newLesson: 'New lesson',
  newTitle: 'Untitled lesson',
  importFile: 'Import',
  importHint: 'Lesson file, MusicXML or MIDI',
  untitled: 'Lesson without a title',
  exercises: '.input {$n :integer} .match $n one {{{$n} exercise}} * {{{$n} exercises}}',
  problems: '.input {$n :integer} .match $n one {{{$n} problem in the text}} * {{{$n} problems in the text}}',
  changed: 'changed {$when}',
  open: 'Open {$title}',
  more: 'More for {$title}',
  rename: 'Rename',
  duplicate: 'Duplicate',
  exportLesson: 'Export lesson file',
  exportMusicXml: 'Export MusicXML',
  exportMidi: 'Export MIDI',
  remove: 'Delete',
  removed: '{$title} was deleted.',
  restored: '{$title} is back.',
  undo: 'Undo',
  copyOf: '{$title}, copy',
  imported: '{$title} is on the desk.',
  importFailed: '{$file} could not be read.',
  empty: 'Nothing on the desk yet. Start a lesson, or import one.',
  renameTitle: 'Rename lesson',
  name: 'Title',
} as const;

/** Words of `guide`. */
export const guide = {
  title: 'From here to a printed sheet',
  steps: ['Open a lesson', 'Write a bar', 'Hear it', 'Print it'],
  done: 'Put this away',
} as const;
