/** Every field that holds a number says its unit: in its name, in a branded type, or in its doc comment. */
import { childrenOf, lineOf } from '../source.mjs';
import { docAbove } from './comments.mjs';

/** Last words of names that say what is counted or measured. */
const NAMES = new RegExp(
  `(?:^|[a-z0-9])(?:${[
    'seconds?|ms|milliseconds|minutes?|hours?|days?|years?',
    'db|dba|dbfs|dbtp|lu|lufs|hz|bpm|mm|px|points?|pt|bytes?|cents|semitones|octaves?',
    'percent|share|ratio|probability|confidence',
    'samples?|ticks?|frames?|bars?|beats?|quarters|slots?|bins?|bands?|channels?|notes?|hits|strokes?|exercises?',
    'layers|pages?|lines?|columns?|rows?|count|counts|index|indices|position|number|total|times?|version|revision|seed',
    'length|repeat|repeats|steps?|loops?|takes?|places?|rounds?|missed|extra|reviews|lapses|matches|tries|id',
  ].join('|')})$|Per[A-Z][a-z]+$`,
  'i',
);

const UNITS = [
  'seconds?|milliseconds?|ms|microseconds?|minutes?|hours?|days?|weeks?|years?',
  'dB|dBA|dBFS|decibels?|LUFS|LU|Hz|kHz|bpm|quarter notes?|quarters',
  'mm|millimetres?|user units|px|pixels?|pt|points?|staff spaces?|staff steps?|em|bytes?|bits?|cents?|semitones?|octaves?|radians?',
  'percent|samples?|ticks?|frames?|bars?|beats?|slots?|bins?|bands?|channels?|whole notes?|strokes?|lines?|columns?|rows?',
].join('|');

/** Words of a field's comment that say its unit, what it counts, or that it has none. */
const WORDS = new RegExp(
  `\\b(?:${UNITS}|shares?|ratios?|fractions?|parts? of|probabilit(?:y|ies)|likelihood|logits?|factor|exponent|weights?)\\b` +
    '|\\b(?:counts?|counted|how many|how often|number of|numbers?|index|indices|no unit|MIDI key|velocity)\\b' +
    '|\\b(?:from [01]|0 to 1|0…1|-?1…1|1…127|0…127)\\b|±1',
  'i',
);

/** A type's comment may say the unit of all its fields: "in points". */
const OF_ALL = new RegExp(`\\b(?:in|of) (?:(?:tenths?|parts) of )?(?:a |an )?(?:${UNITS})\\b`, 'i');

/** Whether a type holds a bare number: itself, or in a list, a map or a union. */
function holdsNumber(type) {
  if (type?.type === 'TSNumberKeyword') return true;
  if (!type || /^TS(?:Function|TypeLiteral|Method|Constructor|IndexedAccess)/.test(type.type)) return false;
  if (type.type === 'TSUnionType' && type.types.some(({ type: each }) => each === 'TSStringKeyword'))
    return false;
  return childrenOf(type).some(holdsNumber);
}

function typeOf(node) {
  return node.typeAnnotation?.typeAnnotation ?? null;
}

/** Fields that hold a number, each with the fields around it, whose name or comment speaks for it too. */
function fieldsIn(node, around = []) {
  return childrenOf(node).flatMap((child) => {
    const isField = child.type === 'TSPropertySignature' || child.type === 'PropertyDefinition';
    if (child.accessibility === 'private' || child.key?.type === 'PrivateIdentifier') return [];
    const fields = isField ? [...around, child] : around;
    return isField && holdsNumber(typeOf(child))
      ? [fields, ...fieldsIn(child, fields)]
      : fieldsIn(child, fields);
  });
}

const nameOf = ({ key }) => String(key.name ?? key.value);

/** Whether a name or a comment says the unit of a number. */
function saysUnit(name, doc) {
  return NAMES.test(name) || (doc !== null && WORDS.test(doc));
}

/** Fields of types that hold a number without a unit, as `path:line: …`. */
export function unitFaults(path, source, named) {
  const isBare = (fields) => !fields.some((field) => saysUnit(nameOf(field), docAbove(source, field.start)));
  return named
    .filter(({ node }) => /^TS(?:Interface|TypeAlias)|^Class/.test(node.type))
    .filter(({ statement }) => !OF_ALL.test(docAbove(source, statement.start) ?? ''))
    .flatMap(({ name, node }) =>
      fieldsIn(node.body ?? node.typeAnnotation)
        .filter(isBare)
        .map((fields) => {
          const line = lineOf(source.text, fields.at(-1).start);
          return `${path}:${line}: ${[name, ...fields.map(nameOf)].join('.')} is a number without a unit`;
        }),
    );
}
