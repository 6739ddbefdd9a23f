/**
 * Writing a preparation into a lesson: a section before the one that it is for, clapped to a click that thins out.
 *
 * Conventions: a section is its number among `sectionsOf` the lesson, from 0. What is written stays as it was; exercises
 * outside of a section become one, so that something can stand before them.
 */
import {
  divideOpening,
  editLesson,
  formatPattern,
  type Lesson,
  sectionPath,
  sectionsOf,
} from '@shedbook/core';
import { isMap, isSeq, type Node, parseDocument, visit } from 'yaml';
import type { PreparationFact } from './preparation-fact.ts';
import { preparationSteps } from './steps.ts';

/** Says a heading, a text or a name. */
export type SayPreparation = (fact: PreparationFact) => string;

/** Bars in which the click stays as it is. */
const TURN_BARS = 2;

/** The loop of a preparation: heard once, then clapped alone while the click thins out to nothing. */
function thinningLoop(beats: number) {
  const backbeat = Array.from({ length: beats }, (_, index) => index + 1).filter((beat) => beat % 2 === 0);
  const fewer = beats > 3 ? [backbeat, 1] : [1];
  const clicks = ['all', ...fewer, 'none'];
  return {
    sections: [{ pattern: TURN_BARS, click: 'all' }, ...clicks.map((click) => ({ rest: TURN_BARS, click }))],
  };
}

/** The keys that a section of its own needs to be in the same time as another one. */
const OF_TIME = ['meter', 'tempo', 'feel'];

function preparationData(
  section: Lesson,
  own: Readonly<Record<string, unknown>>,
  heading: string,
  say: SayPreparation,
) {
  const steps = preparationSteps(section);
  return {
    heading,
    text: say({ fact: 'preparation-text' }),
    ...Object.fromEntries(OF_TIME.flatMap((key) => (own[key] === undefined ? [] : [[key, own[key]]]))),
    groove: {},
    comping: 'clap',
    vocabulary: [],
    exercises: steps.map(({ name, pattern }) => ({
      pattern: formatPattern(pattern),
      name: say({ fact: `clap-${name}` }),
    })),
    forms: { loop: thinningLoop(section.meter.beats.length) },
  };
}

/** A section as a person would write it: each exercise and each part of a form in one line. */
function inShort(section: Node): Node {
  visit(section, {
    Map: (_, node, path) => {
      node.flow = node.items.length === 0 || path.some((each) => isSeq(each));
    },
  });
  return section;
}

/** A heading that no section has yet. */
function freeHeading(wished: string, taken: readonly (string | null)[]): string {
  for (let n = 1; ; n += 1) {
    const heading = n === 1 ? wished : `${wished} (${n})`;
    if (!taken.includes(heading)) return heading;
  }
}

/**
 * The text with a ready preparation before a section, and that section naming it.
 * @throws RangeError when there is no such section.
 */
export function withPreparation(text: string, lesson: Lesson, index: number, say: SayPreparation): string {
  const sections = sectionsOf(lesson);
  const section = sections[index];
  if (!section) throw new RangeError(`Internal error: there is no section ${index}`);
  const wished =
    section.heading === null
      ? say({ fact: 'preparation' })
      : say({ fact: 'preparation-of', heading: section.heading });
  const heading = freeHeading(
    wished,
    sections.map((each) => each.heading),
  );
  const isOutside = sectionPath(text, index).length === 0;
  const divided = isOutside ? divideOpening(text) : text;
  const [, place] = sectionPath(divided, index) as [string, number];
  const document = parseDocument(divided);
  const list = document.get('sections');
  const own = document.getIn(['sections', place]);
  if (!isSeq(list) || !isMap(own)) throw new RangeError('Internal error: the lesson has no sections');
  const data = preparationData(section, own.toJS(document) as Record<string, unknown>, heading, say);
  own.items.splice(own.has('heading') ? 1 : 0, 0, document.createPair('before', heading));
  list.items.splice(place, 0, inShort(document.createNode(data) as Node));
  return editLesson(divided, ['sections'], list);
}
