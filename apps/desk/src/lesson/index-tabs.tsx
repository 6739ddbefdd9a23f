/** Index tabs at the edge of the sheet: the views of a lesson. */
import { pathOf, type Route, VIEWS, type View } from '../shared/address.ts';
import { go } from '../shared/route.ts';
import { useWords } from '../words/words.tsx';
import styles from './index-tabs.module.css';

interface IndexTabsProps {
  readonly id: string;
  readonly view: View;
}

/** The tabs; they are links, so a view has an address of its own. */
export function IndexTabs({ id, view }: IndexTabsProps) {
  const words = useWords().lesson;
  return (
    <nav
      className={styles.tabs}
      hidden={view === 'room'}
      data-part="index-tabs"
      aria-label={words.viewsLabel}
    >
      {VIEWS.map((each) => {
        const route: Route = { at: 'lesson', id, view: each };
        return (
          <a
            key={each}
            href={pathOf(route)}
            aria-current={each === view ? 'page' : undefined}
            onClick={(event) => {
              if (event.metaKey || event.ctrlKey || event.shiftKey) return;
              event.preventDefault();
              go(route);
            }}
          >
            {words.views[each]}
          </a>
        );
      })}
    </nav>
  );
}
