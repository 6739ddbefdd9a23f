/** The teachers of a school, as its head sees them: let in, renamed, let go; and whose students are whose. */
import type { ListedTeacher, SchoolStudent } from '@shedbook/routes';
import { AskText, Button, Icon, useSay } from '@shedbook/stand';
import type { SchoolWords } from '@shedbook/words';
import { useState } from 'react';
import { ask } from '../document/client.ts';
import { wordsFor } from '../document/error-words.ts';
import { useFresh } from '../document/use-fresh.ts';
import { ReallyErase } from '../shared/really-erase.tsx';
import { ShownOnce } from '../shared/shown-once.tsx';
import { useSchoolWords } from '../words/late-words.ts';
import { useWords } from '../words/students-words.tsx';
import { readSchool } from './api.ts';
import { nameOf } from './teacher-name.ts';
import { TeacherRow } from './teacher-row.tsx';
import styles from './teachers-list.module.css';

/** What the head does just now, which asks for something. */
type Doing =
  | { readonly does: 'invite' }
  | { readonly does: 'rename' | 'remove'; readonly teacher: ListedTeacher }
  | { readonly does: 'show'; readonly name: string; readonly address: string };

interface TeachersListProps {
  /** Id of whoever reads it. */
  readonly you: string;
  /** Called when students went from one to another. */
  readonly onHandOver: () => unknown;
}

/** The list. */
export function TeachersList(props: TeachersListProps) {
  const words = useSchoolWords();
  return words && <Teachers {...props} words={words.teachers} />;
}

function Teachers({
  you,
  onHandOver,
  words,
}: TeachersListProps & { readonly words: SchoolWords['teachers'] }) {
  const all = useWords();
  const say = useSay();
  const { value: school, refresh } = useFresh(readSchool);
  const [doing, setDoing] = useState<Doing | null>(null);
  const attempt = async (work: () => Promise<string | null>) => {
    try {
      const done = await work();
      if (done !== null) say(done);
      await refresh();
    } catch (error) {
      say(wordsFor(error, all));
    }
  };
  const show = (letter: { readonly teacher: { readonly name: string }; readonly address: string }) => {
    setDoing({ does: 'show', name: nameOf(letter.teacher, words), address: letter.address });
    return null;
  };
  const invite = (name: string) => attempt(async () => show(await ask('addTeacher', { body: { name } })));
  const inviteAgain = ({ id }: ListedTeacher) =>
    attempt(async () => show(await ask('inviteTeacher', { params: { id } })));
  const save = ({ id, name, role }: ListedTeacher, change: Partial<ListedTeacher>) =>
    attempt(async () => {
      await ask('saveTeacher', { params: { id }, body: { name, role, ...change } });
      return words.saved;
    });
  const remove = ({ id, name }: ListedTeacher) =>
    attempt(async () => {
      await ask('removeTeacher', { params: { id } });
      onHandOver();
      return words.removed({ name });
    });
  const handOver = ({ id, name }: SchoolStudent, teacher: ListedTeacher) =>
    attempt(async () => {
      await ask('handOver', { params: { id }, body: { teacher: teacher.id } });
      onHandOver();
      return words.handed({ student: name, name: nameOf(teacher, words) });
    });
  if (!school) return null;
  return (
    <section className={styles.teachers} aria-label={words.title} data-part="teachers">
      <h2>{words.title}</h2>
      <p className="quiet">{words.lead}</p>
      <ul>
        {school.teachers.map((teacher) => (
          <TeacherRow
            key={teacher.id}
            {...{ teacher, words, teachers: school.teachers, isYou: teacher.id === you }}
            students={school.students.filter((each) => each.teacher === teacher.id)}
            onRename={() => setDoing({ does: 'rename', teacher })}
            onRole={(role) => void save(teacher, { role })}
            onInvite={() => void inviteAgain(teacher)}
            onRemove={() => setDoing({ does: 'remove', teacher })}
            onHandOver={(student, to) => void handOver(student, to)}
          />
        ))}
      </ul>
      <Button onClick={() => setDoing({ does: 'invite' })}>
        <Icon name="plus" />
        {words.invite}
      </Button>
      {(doing?.does === 'invite' || doing?.does === 'rename') && (
        <AskText
          title={doing.does === 'invite' ? words.invite : words.rename}
          label={words.name}
          initial={doing.does === 'rename' ? doing.teacher.name : ''}
          done={doing.does === 'invite' ? words.invite : words.rename}
          onAnswer={(name) => void (doing.does === 'rename' ? save(doing.teacher, { name }) : invite(name))}
          onClose={() => setDoing((now) => (now?.does === 'show' ? now : null))}
        />
      )}
      {doing?.does === 'remove' && (
        <ReallyErase
          title={words.removeThis({ name: doing.teacher.name })}
          warning={words.reallyRemove({ name: doing.teacher.name })}
          keep={all.students.keep}
          erase={words.remove}
          onErase={() => void remove(doing.teacher)}
          onClose={() => setDoing(null)}
        />
      )}
      {doing?.does === 'show' && (
        <ShownOnce
          title={words.letter({ name: doing.name })}
          lead={words.once({ name: doing.name })}
          address={doing.address}
          label={words.letter({ name: doing.name })}
          onClose={() => setDoing(null)}
        />
      )}
    </section>
  );
}
