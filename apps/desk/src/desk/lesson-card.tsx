/** A lesson on the desk: its first page, its title, and what can be done with it. */

import { STANDARD_FORMAT_NAMES } from '@shedbook/core';
import { Icon } from '@shedbook/stand';
import type { DeskLesson } from '../document/use-lessons.ts';
import { pathOf, type Route } from '../shared/address.ts';
import { PickMenu } from '../shared/pop-over.tsx';
import { go } from '../shared/route.ts';
import { useLanguage, useWords } from '../words/words.tsx';
import type { ExportFormat } from './files.ts';
import styles from './lesson-card.module.css';
import { SheetPicture } from './sheet-picture.tsx';

/** What the menu of a lesson offers. */
export type CardAction = 'rename' | 'duplicate' | ExportFormat | 'remove';

interface LessonCardProps {
  readonly lesson: DeskLesson;
  readonly onAction: (action: CardAction) => void;
}

function useWhen(): (iso: string) => string {
  const { tag } = useLanguage();
  const thisYear = new Date().getFullYear();
  return (iso) => {
    const date = new Date(iso);
    const year = date.getFullYear() === thisYear ? {} : { year: 'numeric' as const };
    return new Intl.DateTimeFormat(tag, { day: 'numeric', month: 'short', ...year }).format(date);
  };
}

function CardMenu({
  title,
  onAction,
}: {
  readonly title: string;
  readonly onAction: (action: CardAction) => void;
}) {
  const words = useWords().desk;
  const said: Readonly<Record<ExportFormat, string>> = {
    yaml: words.exportLesson,
    musicxml: words.exportMusicXml,
    midi: words.exportMidi,
  };
  const exports = (['yaml', ...STANDARD_FORMAT_NAMES] as const).map(
    (format) => [format, said[format]] as const,
  );
  return (
    <PickMenu<CardAction>
      label={words.more({ title })}
      opens={<Icon name="more" />}
      dress="bare"
      placement="bottom end"
      items={[['rename', words.rename], ['duplicate', words.duplicate], ...exports, ['remove', words.remove]]}
      onPick={onAction}
    />
  );
}

/** One lesson of the list. */
export function LessonCard({ lesson, onAction }: LessonCardProps) {
  const words = useWords().desk;
  const when = useWhen();
  const { reading, stored } = lesson;
  const title = lesson.title ?? words.untitled;
  const route: Route = { at: 'lesson', id: stored.id, view: 'page' };
  const errors = reading.problems.filter((problem) => problem.severity === 'error').length;
  const facts = reading.lesson
    ? words.exercises({ n: reading.lesson.exercises.length })
    : words.problems({ n: errors });
  return (
    <li className={styles.card} data-part="lesson-card">
      <div className={styles.sheet}>
        <SheetPicture lesson={reading.lesson} />
        <a
          className={styles.link}
          href={pathOf(route)}
          onClick={(event) => {
            if (event.metaKey || event.ctrlKey || event.shiftKey) return;
            event.preventDefault();
            go(route);
          }}
        >
          <span className="hidden-words">{words.open({ title })}</span>
        </a>
      </div>
      <div className={styles.words}>
        <div>
          <h2>{title}</h2>
          <p className={styles.facts}>
            <span>{facts}</span>
            <span>{words.changed({ when: when(stored.updatedAt) })}</span>
          </p>
        </div>
        <CardMenu title={title} onAction={onAction} />
      </div>
    </li>
  );
}
