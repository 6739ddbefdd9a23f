/** A lesson on the desk: its first page, its title, and what can be done with it. */

import { STANDARD_FORMAT_NAMES } from '@shedbook/core';
import type { LessonSummary } from '@shedbook/routes';
import { Icon } from '@shedbook/stand';
import { memo, useRef } from 'react';
import { pathOf, type Route } from '../shared/address.ts';
import { PickMenu } from '../shared/pop-over.tsx';
import { go } from '../shared/route.ts';
import { useWords } from '../words/words.tsx';
import type { ExportFormat } from './files.ts';
import styles from './lesson-card.module.css';
import { SheetPicture } from './sheet-picture.tsx';
import { useNear } from './use-near.ts';
import { usePicture } from './use-picture.ts';

/** What the menu of a lesson offers. */
export type CardAction = 'rename' | 'duplicate' | 'file' | 'archive' | ExportFormat | 'remove';

interface LessonCardProps {
  readonly lesson: LessonSummary;
  /** When it was last changed, in words. */
  readonly changed: string;
  readonly onAction: (lesson: LessonSummary, action: CardAction) => void;
}

interface CardMenuProps {
  readonly title: string;
  readonly isArchived: boolean;
  readonly onAction: (action: CardAction) => void;
}

function CardMenu({ title, isArchived, onAction }: CardMenuProps) {
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
      items={[
        ['rename', words.rename],
        ['duplicate', words.duplicate],
        ['file', words.file],
        ['archive', isArchived ? words.fromArchive : words.archive],
        ...exports,
        ['remove', words.remove],
      ]}
      onPick={onAction}
    />
  );
}

/** What stands under the title: how much there is in it, when it was changed, and where it is filed. */
function Facts({ lesson, changed }: Pick<LessonCardProps, 'lesson' | 'changed'>) {
  const words = useWords();
  const { exercises, errors, level, shelves } = lesson;
  const filed = [...(level === null ? [] : [words.levels[level]]), ...shelves].join(', ');
  return (
    <p className={styles.facts}>
      <span>{errors > 0 ? words.desk.problems({ n: errors }) : words.desk.exercises({ n: exercises })}</span>
      <span>{changed}</span>
      {filed !== '' && <span className={styles.filed}>{filed}</span>}
    </p>
  );
}

/** One lesson of the list. Its picture is drawn, and its menu is there, as long as it is in sight. */
export const LessonCard = memo(function LessonCard({ lesson, changed, onAction }: LessonCardProps) {
  const words = useWords().desk;
  const card = useRef<HTMLLIElement>(null);
  const isNear = useNear(card);
  const picture = usePicture(lesson, isNear);
  const title = lesson.title ?? words.untitled;
  const route: Route = { at: 'lesson', id: lesson.id, view: 'page' };
  return (
    <li className={styles.card} data-part="lesson-card" ref={card}>
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
      <div className={styles.sheet}>
        <SheetPicture lesson={picture} />
      </div>
      <div className={styles.words}>
        <div>
          <h2>{title}</h2>
          <Facts lesson={lesson} changed={changed} />
        </div>
        <CardMenu
          title={title}
          isArchived={lesson.isArchived}
          onAction={(action) => onAction(lesson, action)}
        />
      </div>
    </li>
  );
});
