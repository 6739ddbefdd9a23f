/** The desk starts here. */
import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import '@shedbook/stand/theme/tokens.css';
import '@shedbook/stand/theme/base.css';
import { addStartPictures, chosenTheme, facesThere, showTheme } from '@shedbook/stand';
import { App } from './app.tsx';

showTheme(chosenTheme());
const root = document.getElementById('desk');
if (root) {
  void facesThere({ italics: true }).then(() =>
    createRoot(root).render(
      <StrictMode>
        <App />
      </StrictMode>,
    ),
  );
  addStartPictures().catch(() => undefined);
}
