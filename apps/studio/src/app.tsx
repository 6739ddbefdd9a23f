/** The studio: the desk, or a lesson lying open. */
import { Desk } from './desk/desk.tsx';
import { LessonScreen } from './lesson/lesson-screen.tsx';
import { GlyphSheet } from './notation/glyph-sheet.tsx';
import { NoticeProvider } from './shared/notice.tsx';
import { readRoute, usePath } from './shared/route.ts';
import { WordsProvider } from './words/words.tsx';

function Screen() {
  const route = readRoute(usePath());
  return route.at === 'desk' ? <Desk /> : <LessonScreen key={route.id} id={route.id} view={route.view} />;
}

/** Everything. */
export function App() {
  return (
    <WordsProvider>
      <NoticeProvider>
        <GlyphSheet />
        <Screen />
      </NoticeProvider>
    </WordsProvider>
  );
}
