/** Which sections of a lesson a book has. */
import { type Lesson, parseLesson } from '@shedbook/core';
import { Check, useSay } from '@shedbook/stand';
import type { BooksWords } from '@shedbook/words';
import { useEffect, useState } from 'react';
import { readLesson } from '../document/api.ts';
import { wordsFor } from '../document/error-words.ts';
import { useWords } from '../words/words.tsx';
import styles from './books.module.css';
import { type BookChapter, chosenSections, sectionNames } from './chapters.ts';

interface ChapterSectionsProps {
  readonly chapter: BookChapter;
  readonly title: string;
  readonly words: BooksWords;
  readonly onChange: (sections: BookChapter['sections']) => void;
}

/** The lesson of a chapter, once it is read. */
function useLesson(id: string): Lesson | null {
  const words = useWords();
  const say = useSay();
  const [lesson, setLesson] = useState<Lesson | null>(null);
  useEffect(() => {
    readLesson(id).then(
      ({ text }) => setLesson(parseLesson(text, 'lesson').lesson),
      (error: unknown) => say(wordsFor(error, words)),
    );
  }, [id, say, words]);
  return lesson;
}

/** A box to tick for each section; the last one that is ticked stays. */
export function ChapterSections({ chapter, title, words, onChange }: ChapterSectionsProps) {
  const { sectionNumber } = useWords().page;
  const lesson = useLesson(chapter.lesson);
  if (!lesson) return null;
  const names = sectionNames(lesson.sections);
  if (names.length === 0) return <p className={`quiet ${styles.sections}`}>{words.undivided}</p>;
  const chosen = chapter.sections ?? names;
  return (
    <fieldset className={styles.sections}>
      <legend className="hidden-words">{words.sectionsOf({ title })}</legend>
      {names.map((name, index) => (
        <Check
          key={name}
          checked={chosen.includes(name)}
          onChange={(isOn) => onChange(chosenSections(names, chosen, name, isOn))}
        >
          {lesson.sections[index]?.heading ?? sectionNumber({ n: index + 1 })}
        </Check>
      ))}
    </fieldset>
  );
}
