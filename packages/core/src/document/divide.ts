/** Exercises that stand outside of a section, made a section of their own. */
import { isSeq, parseDocument, YAMLMap, YAMLSeq } from 'yaml';
import { editLesson } from './edit.ts';

/**
 * The text of a lesson with its exercises that stand outside of a section as its first section; as it is where there are
 * none. Comments go with what they stand at.
 * @throws SyntaxError when the text is not YAML: check it first.
 */
export function divideOpening(text: string): string {
  const document = parseDocument(text);
  const exercises = document.get('exercises', true);
  if (!isSeq(exercises) || exercises.items.length === 0) return text;
  const written = document.get('sections');
  const list = isSeq(written) ? written : new YAMLSeq();
  const opening = new YAMLMap();
  opening.set('exercises', exercises);
  list.items.unshift(opening);
  return editLesson(editLesson(text, ['exercises'], undefined), ['sections'], list);
}
