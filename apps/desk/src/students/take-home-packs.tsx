/** Take-home packs that carry what was set for one student, one for each lesson that something is set of. */
import type { ShelfLesson } from '@shedbook/coach';
import type { StoredStudent } from '@shedbook/routes';
import { Button, Icon } from '@shedbook/stand';
import { useState } from 'react';
import { readPack } from '../document/api.ts';
import { offer } from '../shared/offer.ts';
import { useLanguage } from '../words/students-words.tsx';

interface PacksProps {
  readonly student: StoredStudent;
  readonly shelf: readonly ShelfLesson[];
}

/** The buttons; nothing where nothing is set. */
export function TakeHomePacks({ student, shelf }: PacksProps) {
  const { tag, words } = useLanguage();
  const [making, setMaking] = useState<'idle' | 'making' | 'failed'>('idle');
  const set = new Set(student.assignments.map(({ lesson }) => lesson));
  const make = async (id: string) => {
    setMaking('making');
    try {
      const { file, name } = await readPack(id, tag, { student: student.id });
      offer(file, name);
      setMaking('idle');
    } catch {
      setMaking('failed');
    }
  };
  return (
    <div>
      {shelf
        .filter(({ id }) => set.has(id))
        .map(({ id, lesson }) => (
          <Button key={id} disabled={making === 'making'} onClick={() => void make(id)}>
            <Icon name="file" />
            {words.students.packFor({ lesson: lesson.title, name: student.name })}
          </Button>
        ))}
      <p className="quiet" role="status">
        {making === 'making' && words.print.makingPack}
        {making === 'failed' && words.print.packFailed}
      </p>
    </div>
  );
}
