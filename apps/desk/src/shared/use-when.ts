/** Days as the reader writes them: the year is left out where it is this one. */
import { useLanguage } from '../words/words.tsx';

/** A way to say the day of a moment (ISO 8601). */
export function useWhen(): (iso: string) => string {
  const { tag } = useLanguage();
  const thisYear = new Date().getFullYear();
  return (iso) => {
    const date = new Date(iso);
    const year = date.getFullYear() === thisYear ? {} : { year: 'numeric' as const };
    return new Intl.DateTimeFormat(tag, { day: 'numeric', month: 'short', ...year }).format(date);
  };
}
