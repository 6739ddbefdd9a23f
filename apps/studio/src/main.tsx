/** The studio starts here. */
import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import './theme/tokens.css';
import './theme/base.css';
import './theme/controls.css';
import './notation/notation.css';
import { App } from './app.tsx';
import { chosenTheme, showTheme } from './shared/theme.ts';

showTheme(chosenTheme());
const root = document.getElementById('studio');
if (root) {
  createRoot(root).render(
    <StrictMode>
      <App />
    </StrictMode>,
  );
}
