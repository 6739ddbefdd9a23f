/**
 * `docs/lesson-reference.md` with its picture, `docs/lesson.schema.json` and `docs/book.schema.json`, generated from the
 * schemas. With `--write` they
 * are written anew; the check fails where the committed ones differ.
 */
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { ROOT } from './tree.mjs';

const REFERENCE = 'docs/lesson-reference.md';
const SCHEMA = 'docs/lesson.schema.json';
const BOOK_SCHEMA = 'docs/book.schema.json';

const SIGNS = 'docs/how-signs.svg';
const EXAMPLE = 'docs/example-sign.svg';
const HELD = 'docs/held.svg';

const BOOKS = `## Books

A book is one YAML file whose name ends in \`.book.yaml\`, beside its lessons: \`build\` makes one PDF of it, with title page,
contents, a key to the notation, the lessons as chapters, and an index by voice and rhythm; \`check\` checks the book and
all its lessons. Only \`title\` and \`lessons\` are needed. Editors can use \`book.schema.json\`.`;

const INTRO = `# Lesson files: reference

Generated from the schema in \`packages/core/src/document/schema.ts\` by \`node internal/checks/reference.mjs --write\`;
editors that know JSON Schema can use \`lesson.schema.json\`.

A lesson is one YAML file whose name ends in \`.lesson.yaml\`. Only \`title\` is needed.

## Pattern text

Beats are separated by spaces, bars by \`|\`. Inside a beat there is one character a place, so the number of
characters is the subdivision: 1 to 8. \`x.. ..x x.x ...\` is a quarter, a last triplet, a first and last
triplet, a rest; \`x.x.x\` are three strokes of a quintuplet.

| mark | meaning |
|---|---|
| \`.\` | nothing |
| \`x\` | stroke |
| \`X\` | accent; every mark in upper case is the same with an accent |
| \`g\` | ghost note |
| \`f\` | flam (drums) |
| \`d\` | drag (drums) |
| \`b\` | buzz (drums), bell (ride) |
| \`o\` | open hi-hat, splash (by the foot) |
| \`s\` | side stick (on the snare) |
| \`r\` | rim shot (on the snare) |
| \`w\` | sweep of a brush (on the snare) |
| \`~\` | not struck: the buzz or the sweep before it goes on |

A roll or a sweep is held over as many places, beats and bar lines as have a \`~\`: \`b ~ x .\` is a roll of two beats that
ends in a stroke, \`x . b ~ | ~ ~ x .\` one over the bar line, \`w ~~x w ~~x\` sweeps that each go on to a tap. On the
page it is tied, it sounds until it ends, and a student is asked for its beginning alone. After anything else, and at the
beginning of a pattern, \`~\` is refused; in a bar that is repeated it has to go on from what is played before it each time.

![A roll over two beats, a roll over the bar line, and held sweeps, each with its text](held.svg)
`;

function typeOf(schema) {
  if (schema.enum) return schema.enum.map((each) => `\`${each}\``).join(', ');
  if (schema.anyOf) {
    const branches = schema.anyOf.filter((each) => each.type !== 'null');
    return [...new Set(branches.map(typeOf))].join(' or ');
  }
  if (schema.type === 'array') return `list of ${typeOf(schema.items)}`;
  if (schema.type === 'object') return schema.properties ? 'map' : 'map by name';
  const { minimum, maximum } = schema;
  const range =
    minimum !== undefined && maximum !== undefined && maximum < 2 ** 32 ? ` ${minimum} to ${maximum}` : '';
  return `${{ string: 'text', boolean: 'true or false', integer: 'whole number', number: 'number' }[schema.type] ?? 'value'}${range}`;
}

/** Maps inside a schema: its own properties, or those of its branches, items and values. */
function mapsIn(schema) {
  if (schema.anyOf) return schema.anyOf.flatMap(mapsIn);
  if (schema.type === 'array') return mapsIn(schema.items);
  if (schema.properties) return [schema];
  if (schema.type === 'object' && typeof schema.additionalProperties === 'object')
    return mapsIn(schema.additionalProperties);
  return [];
}

function isByVoice(map) {
  return 'hihat-foot' in map.properties;
}

/** The description, with the default that the schema itself knows. */
function meaningOf({ description = '', default: fallback }) {
  const isPlain = ['number', 'string', 'boolean'].includes(typeof fallback);
  return isPlain ? `${description}; ${fallback} when left out` : description;
}

/** Keys that a section has of its own; all others are those of the lesson, and are told there. */
const OF_SECTIONS = ['heading', 'text'];

function rows(map, prefix) {
  const entries = Object.entries(map.properties);
  const told = prefix === 'sections' ? entries.filter(([key]) => OF_SECTIONS.includes(key)) : entries;
  return told.flatMap(([key, schema]) => {
    const path = prefix === '' ? key : `${prefix}.${key}`;
    const name = `\`${path}\``;
    const row = `| ${name} | ${typeOf(schema).replaceAll('|', '\\|')} | ${meaningOf(schema).replaceAll('|', '\\|')} |`;
    const inside = mapsIn(schema).flatMap((each) =>
      isByVoice(each) ? voiceRows(each, path) : rows(each, path),
    );
    return [row, ...inside];
  });
}

function voiceRows(map, path) {
  const [first] = Object.values(map.properties);
  return mapsIn(first).flatMap((each) => rows(each, `${path}.VOICE`));
}

const HOW = `## How a limb plays

\`how\` says it in plain words, joined by commas: beside a voice of the groove, for a whole lesson or section by voice, or
beside an exercise. At most one word of each kind goes with a voice; words of your own stand beside them as they are.
Sheet, lesson room and practice page show words and signs, and the kit plays what it has a sound for. They say nothing of
*what* is played: a bar stays the same bar for everything that a student has practised of it.

    groove:
      ride: {pattern: x x.x x x.x, how: 'tip, bow'}
      bass: {pattern: x x x x, level: feathered, how: heel down}
    exercises:
      - {pattern: x . x ., how: 'centre, low stroke, as if it were hot'}

![The signs, each with its word](how-signs.svg)`;

const EXAMPLES = `## Examples

An exercise with \`example\` is shown before a student plays it: it goes round a few times, then comes a phrase form.
Recordings, films and the recordings of a pack show it so where no form is asked for; on the desk and in the lesson room it
is what is heard first, and on the practice page a button plays it, of which nothing is counted. On the sheet it has a
small sign under its number.

    exercises:
      - {pattern: x . x ., example: true}
      - {pattern: x . . x, example: {times: 2, form: four and two}}

![The sign of an example](example-sign.svg)`;

const PREPARATION = `## What comes before

A section names with \`before\` what a student must have first: the heading of a section above it. \`shedbook prepare\`, or
one press on the desk, writes such a section from meter and feel: the subdivision counted, clapped and kept while the click
thins out. What is clapped throughout (\`clap\`) is heard as on one surface and counted on the sheet; plans put it first. A
\`click\` in a form holds for its bars, whatever else is chosen.

    sections:
      - heading: Count and clap
        groove: {}
        comping: clap
        exercises: [x.x x.x x.x x.x]
        forms:
          loop: {sections: [{pattern: 2, click: all}, {rest: 2, click: [2, 4]}, {rest: 2, click: none}]}
      - heading: Time on the ride
        before: Count and clap`;

/** The sign of an example. */
function examplePicture({ EXAMPLE_SIGN, EXAMPLE_SIGN_BOX, HOW_SIGN_STROKE }) {
  const { width, height } = EXAMPLE_SIGN_BOX;
  const { lines, filled } = EXAMPLE_SIGN;
  const size = `viewBox="-2 -2 ${width + 4} ${height + 4}" width="${3 * (width + 4)}" height="${3 * (height + 4)}"`;
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" ${size}>`,
    '  <title>The sign of an example</title>',
    `  <rect x="-2" y="-2" width="${width + 4}" height="${height + 4}" fill="#fff"/>`,
    `  <path d="${lines}" fill="none" stroke="#000" stroke-width="${HOW_SIGN_STROKE}"/><path d="${filled}"/>`,
    '</svg>',
    '',
  ].join('\n');
}

/** What is held, each with its text: engraved as on a sheet. */
async function heldPicture({ barPart, meter, notateBar, parsePattern }) {
  const { loadEngraver } = await import(pathToFileURL(join(ROOT, 'packages/engrave/dist/index.js')).href);
  const engraver = await loadEngraver();
  const down = 22;
  const lines = ['b ~ x .', 'x . b ~ | ~ ~ x .', 'w ~~x w ~~x'].map((text, index) => {
    const pattern = parsePattern(text);
    const bars = pattern.bars.map((_, bar) => notateBar([barPart('snare', pattern, bar)], meter('4/4')));
    const request = { id: `held${index}`, bars, staff: 'line', staffSpaceMm: 1.9, widthMm: 60 * bars.length };
    const { svg } = engraver.engraveTile({ ...request, title: text });
    const words = `<text y="4" font-family="monospace" font-size="3.4">${text}</text>`;
    const tile = svg
      .trim()
      .replaceAll('mm"', '"')
      .replace('class="definition-scale"', '$& aria-hidden="true"');
    return `<g transform="translate(4 ${down * index + 2})">${words}<g transform="translate(0 7)">${tile}</g></g>`;
  });
  const [width, height] = [130, down * lines.length];
  const open = `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${width} ${height}" width="${5 * width}" height="${5 * height}">`;
  const title = '<title>What is held, each with its text</title>';
  return `${[open, title, `<rect width="${width}" height="${height}" fill="#fff"/>`, ...lines, '</svg>'].join('\n')}\n`;
}

/** The words, what they go with, and which of them the kit has a sound for. */
function howRows({ HOW_WORDS, HOW_KINDS, HOW_OF }) {
  return HOW_WORDS.map((word) => {
    const voices = Object.keys(HOW_OF).filter((voice) => HOW_OF[voice].includes(word));
    const others = HOW_WORDS.filter((each) => each !== word && HOW_KINDS[each] === HOW_KINDS[word]);
    const named = (all) => all.map((each) => `\`${each}\``).join(', ');
    return `| \`${word}\` | ${named(voices)} | ${named(others)} |`;
  });
}

/** Every sign with its word, in columns. */
function signsPicture({ HOW_SIGN_BOX, HOW_SIGN_STROKE, HOW_SIGNS, HOW_WORDS }) {
  const COLUMNS = 4;
  const [across, down, scale] = [180, 44, 2.4];
  const rows = Math.ceil(HOW_WORDS.length / COLUMNS);
  const signs = HOW_WORDS.map((word, index) => {
    const x = 16 + (index % COLUMNS) * across;
    const y = 12 + Math.floor(index / COLUMNS) * down;
    const { lines, filled } = HOW_SIGNS[word];
    const stroke = `fill="none" stroke="#000" stroke-width="${HOW_SIGN_STROKE}"`;
    const sign = `<path d="${lines}" ${stroke}/><path d="${filled}"/>`;
    const text = `<text x="${x + HOW_SIGN_BOX.width * scale + 12}" y="${y + 18}">${word}</text>`;
    return `  <g transform="translate(${x} ${y}) scale(${scale})">${sign}</g>\n  ${text}`;
  });
  const [width, height] = [16 + COLUMNS * across, 12 + rows * down];
  const paper = `  <rect width="${width}" height="${height}" fill="#fff"/>`;
  const open = `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${width} ${height}" width="${width}" height="${height}" font-family="sans-serif" font-size="15">`;
  const title = '  <title>The signs of how a limb plays, each with its word</title>';
  return `${[open, title, paper, ...signs, '</svg>'].join('\n')}\n`;
}

/** The files as text. */
async function generate() {
  const core = await import(pathToFileURL(join(ROOT, 'packages/core/dist/index.js')).href);
  const { bookSchema, lessonSchema, VOICES } = core;
  const { z } = await import('zod');
  const schema = z.toJSONSchema(lessonSchema, { io: 'input' });
  const book = z.toJSONSchema(bookSchema, { io: 'input' });
  const table = ['| key | value | meaning |', '|---|---|---|'];
  const keys = ['## Keys', '', ...table, ...rows(schema, '')];
  const books = [BOOKS, '', ...table, ...rows(book, '')];
  const how = [HOW, '', '| word | goes with | instead of |', '|---|---|---|', ...howRows(core)];
  const voices = ['## Voices', '', `${VOICES.map((voice) => `\`${voice}\``).join(', ')}.`];
  return {
    [REFERENCE]: `${[INTRO.trimEnd(), '', ...voices, '', ...how, '', EXAMPLES, '', PREPARATION, '', ...keys, '', ...books].join('\n')}\n`,
    [SIGNS]: signsPicture(core),
    [EXAMPLE]: examplePicture(core),
    [HELD]: await heldPicture(core),
    [SCHEMA]: `${JSON.stringify(schema, null, 2)}\n`,
    [BOOK_SCHEMA]: `${JSON.stringify(book, null, 2)}\n`,
  };
}

/** Committed files that differ from what the schema says. */
export async function checkReference(tree) {
  const files = await generate();
  return Object.entries(files)
    .filter(([path, text]) => !tree.has(path) || tree.read(path) !== text)
    .map(([path]) => `${path}: differs from the schema; run node internal/checks/reference.mjs --write`);
}

if (process.argv.includes('--write')) {
  for (const [path, text] of Object.entries(await generate())) writeFileSync(join(ROOT, path), text);
}
