/**
 * The seven doors: what is made up for each, and where it is written first. What the compiler then asks for is the way
 * through the house.
 *
 * Conventions: `begins` and `afterwards` are what the page says before and after the places that the compiler names. `after` is
 * a text that stands once in the file; `add` is put behind it. `names` are what the compiler calls the addition.
 */

/** Each door with its addition. */
export const DOORS = [
  {
    door: 'A voice',
    begins: 'its name in `VOICES`, and in `SOUND_NAMES` the sound that it has',
    afterwards: [
      'Its line in `docs/GLOSSARY.md`, if the trade has another word for it; `node internal/checks/reference.mjs --write` renews the list in the reference.',
      'Until training has met it (`internal/listen-lab`) no recording is listened for it: `HEARD_AS` names the voice that it sounds like, and a report says so; `HEARD_VOICES` changes with the weights only.',
    ],
    names: ['gong'],
    edits: [
      { file: 'packages/core/src/kit/voice.ts', after: "'tom-low',\n", add: "'gong',\n" },
      { file: 'packages/sound/src/kit/sound.ts', after: "'tom-low',\n", add: "'gong',\n" },
    ],
  },
  {
    door: 'A feel',
    begins: 'its kind in `Feel`',
    afterwards: [
      'The sentences `a-feel` and `a-feel-in-range` in `packages/words` list the names. `node internal/checks/reference.mjs --write`; a rule and a test of how a beat is divided in `packages/core`.',
    ],
    names: ['quintuplet'],
    edits: [
      {
        file: 'packages/core/src/feel/feel.ts',
        after: "| { readonly kind: 'by tempo' }",
        add: "| { readonly kind: 'quintuplet' }",
      },
    ],
  },
  {
    door: 'A mark',
    begins:
      'its letter in `MARKS`, small and capital, and in `ARTICULATIONS` the way of striking that it asks for',
    afterwards: [
      'The tests of `packages/exchange` write and read every mark of every voice: they fail until reading knows it too.',
      'A head of a new kind is a name in `HeadKind`, beside `HEAD_KINDS`: print, MusicXML and desk then ask for theirs.',
    ],
    names: ['muffled', 'm'],
    edits: [
      { file: 'packages/core/src/rhythm/cell.ts', after: "'R',\n", add: "'m', 'M',\n" },
      { file: 'packages/core/src/kit/voice.ts', after: "'flam', 'drag'", add: ", 'muffled'" },
    ],
  },
  {
    door: 'A screen',
    begins:
      'a view of a lesson in `VIEWS`, a place of the desk in `Route`, one of the practice page in `Place`',
    afterwards: [
      'German follows: what English has and German lacks does not compile. Browser tests lie in `browser` beside the screens.',
    ],
    names: ['atlas', 'foyer', 'mirror'],
    edits: [
      { file: 'apps/desk/src/shared/address.ts', after: "'room'", add: ", 'atlas'" },
      {
        file: 'apps/desk/src/shared/address.ts',
        after: "| { readonly at: 'desk' }",
        add: "| { readonly at: 'foyer' }",
      },
      {
        file: 'apps/practice/src/page/route.ts',
        after: "| { readonly at: 'sheet' }",
        add: "| { readonly at: 'mirror' }",
      },
    ],
  },
  {
    door: 'A route',
    begins: 'a line in `ROUTES`',
    afterwards: [
      'To ask for it on the desk: `ask(NAME, …)`, whose places, query, body and answer are those of the table. `node internal/checks/routes.mjs --write` renews `docs/routes.md`.',
    ],
    names: ['countLessons'],
    edits: [
      {
        file: 'packages/routes/src/routes.ts',
        after: 'export const ROUTES = {\n',
        add: "countLessons: route({ method: 'GET', path: '/api/count', whose: 'school', does: 'Counts', params: none, query: none, body: null, answer: nothing, refusals: [] }),\n",
      },
    ],
  },
  {
    door: 'An export format',
    begins: 'its ending and media type in `STANDARD_FORMATS`',
    afterwards: [
      'What writes it lies in `packages/exchange`, without knowing files. Sound has its own list, `AUDIO_FORMATS` in `packages/pack`, with an encoder for each.',
    ],
    names: ['braille'],
    edits: [
      {
        file: 'packages/core/src/lesson/standard-formats.data.ts',
        after: "type: 'audio/midi' },\n",
        add: "braille: { ending: '.brl', type: 'text/plain' },\n",
      },
    ],
  },
  {
    door: 'A word',
    begins:
      'a fact in the union that its room exports, or a message of a screen in `packages/words/src/english`',
    afterwards: ['CONTRIBUTING.md, "Words", says how messages are written and which values they take.'],
    names: ['too-cold', 'tooCold'],
    edits: [
      {
        file: 'packages/composer/src/reason-fact.ts',
        after: '| PartFact',
        add: " | { readonly fact: 'too-cold'; readonly degrees: number }",
      },
      {
        file: 'packages/words/src/english/desk/desk.ts',
        after: 'export const desk = {\n',
        add: "tooCold: 'too cold',\n",
      },
    ],
  },
];
