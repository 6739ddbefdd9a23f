/** Undo and redo from anywhere but a field of text, which undoes by itself. */
import { useEffect } from 'react';
import { useDocument } from '../document/use-document.ts';
import { isWriting } from '../shared/is-writing.ts';

/** Ctrl or Cmd with Z; with Shift (or Y) forward again. */
export function useUndoKeys(): void {
  const lesson = useDocument();
  useEffect(() => {
    const onKey = (event: KeyboardEvent) => {
      if (!(event.ctrlKey || event.metaKey) || isWriting(event.target)) return;
      const key = event.key.toLowerCase();
      if (key === 'z' && !event.shiftKey) void lesson.undo();
      else if (key === 'y' || key === 'z') void lesson.redo();
      else return;
      event.preventDefault();
    };
    window.addEventListener('keydown', onKey);
    return () => window.removeEventListener('keydown', onKey);
  }, [lesson]);
}
