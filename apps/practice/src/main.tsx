/** The practice room starts here. */
import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import '@shedbook/stand/theme/tokens.css';
import '@shedbook/stand/theme/base.css';
import { addStartPictures, chosenTheme, facesThere, showTheme } from '@shedbook/stand';
import { loadPack } from './load-pack.ts';
import { keepLink, registerWorker } from './offline/register.ts';
import { PracticeApp } from './practice-app.tsx';

showTheme(chosenTheme());
const pack = loadPack();
const root = document.getElementById('practice');
if (root) {
  void facesThere({ italics: false }).then(() =>
    createRoot(root).render(
      <StrictMode>
        <PracticeApp pack={pack} />
      </StrictMode>,
    ),
  );
}
pack.then(
  async ({ isPrivate }) => {
    addStartPictures().catch(() => undefined);
    await registerWorker();
    if (!isPrivate) return;
    void keepLink();
    const { startSending } = await import('./week/sending.ts');
    startSending();
    const { startSendingTakes } = await import('./takes/sent-takes.ts');
    startSendingTakes();
  },
  () => undefined,
);
