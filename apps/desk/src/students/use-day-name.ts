/** A day in the reader's words. */
import { useLanguage } from '../words/students-words.tsx';

/** Says a day, ISO 8601 without a time. @param year whether its year is said too */
export function useDayName(year = false): (day: string) => string {
  const { tag } = useLanguage();
  const format = new Intl.DateTimeFormat(tag, {
    ...{ weekday: 'long', day: 'numeric', month: 'long', timeZone: 'UTC' },
    ...(year ? { year: 'numeric' } : {}),
  });
  return (day) => format.format(new Date(`${day}T12:00:00Z`));
}
