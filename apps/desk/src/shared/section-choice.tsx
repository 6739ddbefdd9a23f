/** Which part of a divided lesson is worked on: the lesson itself, or one of its sections. */

import { type Lesson, sectionsOf } from '@shedbook/core';
import { Select } from '@shedbook/stand';
import { useWords } from '../words/words.tsx';

interface SectionChoiceProps {
  readonly lesson: Lesson;
  /** Number of the section among all, from 0; null for the lesson itself. */
  readonly section: number | null;
  readonly onSection: (section: number | null) => void;
  /** Whether the lesson itself is on offer beside its sections; it is when left out. */
  readonly hasWhole?: boolean;
}

/** The lesson, or the section of it with a number; the lesson where there is no such section. */
export function partOf(lesson: Lesson, section: number | null): Lesson {
  return (section === null ? null : lesson.sections[section]) ?? lesson;
}

/** The choice; nothing where a lesson is not divided. */
export function SectionChoice({ lesson, section, onSection, hasWhole = true }: SectionChoiceProps) {
  const words = useWords().page;
  if (lesson.sections.length === 0) return null;
  return (
    <Select
      label={words.part}
      value={section ?? 'lesson'}
      onChange={({ target }) => onSection(target.value === 'lesson' ? null : Number(target.value))}
    >
      {hasWhole && <option value="lesson">{words.wholeLesson}</option>}
      {sectionsOf(lesson).map((each, index) => (
        <option key={index} value={index}>
          {each.heading ?? words.sectionNumber({ n: index + 1 })}
        </option>
      ))}
    </Select>
  );
}
