/**
 * The rooms of the house, lowest floor first. A room imports from the floors under its own and never from a neighbour.
 * Everything that the checks know about rooms follows from this table, and so does the table in CONTRIBUTING.md.
 *
 * `platform`: what a room may know of the machine that it runs on. `pure`: nothing but the language (no DOM, no Node,
 * no clock, no hidden randomness); `browser`: the DOM, no Node; `Node`: Node, no DOM.
 */
export const ROOMS = [
  {
    name: 'packages/core',
    floor: 0,
    platform: 'pure',
    does: 'exact time, meters, patterns, feel, grooves, notation, the lesson document and the report of a take',
  },
  {
    name: 'packages/signal',
    floor: 0,
    platform: 'pure',
    does: 'what listening, sound and judging share: FFT, resampling, filters, K-weighting, medians',
  },
  { name: 'packages/composer', floor: 1, platform: 'pure', does: 'a vocabulary to a graded sheet' },
  {
    name: 'packages/engrave',
    floor: 1,
    platform: 'pure',
    does: 'notation to SVG tiles, tiles to pages, pages to PDF',
  },
  {
    name: 'packages/exchange',
    floor: 1,
    platform: 'pure',
    does: 'Standard MIDI Files and MusicXML, read and write',
  },
  { name: 'packages/sound', floor: 1, platform: 'pure', does: 'kit, mix, loudness, audio files' },
  { name: 'packages/listen', floor: 1, platform: 'pure', does: 'a take to a report: facts, no verdict' },
  {
    name: 'packages/playing',
    floor: 2,
    platform: 'pure',
    does: 'what is played at which place of a form, and where the ball is on the bars meanwhile',
  },
  {
    name: 'packages/judge',
    floor: 2,
    platform: 'pure',
    does: 'a report to a verdict and remarks, as facts: levels of students, perception, tolerances',
  },
  { name: 'packages/coach', floor: 3, platform: 'pure', does: 'mastery and what comes next' },
  {
    name: 'packages/words',
    floor: 4,
    platform: 'pure',
    does: 'facts to sentences, one catalogue a language',
  },
  {
    name: 'packages/stand',
    floor: 5,
    platform: 'browser',
    does: 'what both browser products share: player, ball, pedals, controls, looks',
  },
  {
    name: 'packages/routes',
    floor: 5,
    platform: 'pure',
    does: 'what desk and server say to each other: one table of routes, their schemas and refusals',
  },
  {
    name: 'packages/pack',
    floor: 5,
    platform: 'pure',
    does: 'the take-home pack: page, lesson, tiles, files and recordings, and the code to scan',
  },
  {
    name: 'packages/film',
    floor: 5,
    platform: 'pure',
    does: 'a lesson as a film: scenes, chapters, captions, and what each frame shows and sounds like',
  },
  {
    name: 'packages/host',
    floor: 6,
    platform: 'Node',
    does: 'what the Node programs share: built pages, fonts, recordings, files on disk',
  },
  { name: 'apps/cli', floor: 7, platform: 'Node', does: 'the command line' },
  { name: 'apps/desk', floor: 7, platform: 'browser', does: "the teacher's desk" },
  { name: 'apps/practice', floor: 7, platform: 'browser', does: 'the page that students practise on' },
  {
    name: 'apps/server',
    floor: 7,
    platform: 'Node',
    does: 'the store and what it serves to desk and students',
  },
];

/** Folders outside the rooms. None of them ships, but `bin`. */
export const OUTBUILDINGS = [
  { name: 'bin', does: 'joins the apps into one command; nothing else may import an app' },
  { name: 'internal', does: 'checks, test helpers (`testing`), files from outside, how the ear is trained' },
  { name: 'bench', does: 'speed' },
  { name: 'demo', does: 'example lessons' },
  { name: 'docs', does: 'glossary and reference' },
  { name: 'scripts', does: 'what npm runs' },
];
