/** An open lesson for components. */
import { createContext, useContext, useEffect, useState, useSyncExternalStore } from 'react';
import { readLesson } from './api.ts';
import { createBackup } from './backup.ts';
import { type DocumentState, LessonDocument } from './lesson-document.ts';

function browserStorage(): Storage | null {
  try {
    return window.localStorage;
  } catch {
    return null;
  }
}

const DocumentContext = createContext<LessonDocument | null>(null);

/** Gives the open lesson to what is inside. */
export const DocumentProvider = DocumentContext.Provider;

/** The open lesson. */
export function useDocument(): LessonDocument {
  const document = useContext(DocumentContext);
  if (!document) throw new Error('Internal error: no lesson is open here');
  return document;
}

/** What the open lesson shows. */
export function useDocumentState(): DocumentState {
  const document = useDocument();
  return useSyncExternalStore(document.subscribe, document.state);
}

/** Opens a lesson; an error while it could not be opened, null while it is on its way. */
export function useOpenLesson(id: string): {
  readonly document: LessonDocument | null;
  readonly error: Error | null;
} {
  const [document, setDocument] = useState<LessonDocument | null>(null);
  const [error, setError] = useState<Error | null>(null);
  useEffect(() => {
    let gone = false;
    readLesson(id).then(
      (stored) => !gone && setDocument(new LessonDocument(stored, createBackup(browserStorage()))),
      (reason: Error) => !gone && setError(reason),
    );
    return () => {
      gone = true;
    };
  }, [id]);
  return { document, error };
}

/** Takes up what was changed in another window when this one comes to the front. */
export function useFreshness(document: LessonDocument | null, onChange: () => void): void {
  useEffect(() => {
    if (!document) return;
    const look = async () => {
      if (!document.settled) return;
      const stored = await readLesson(document.id).catch(() => null);
      if (stored && document.adopt(stored)) onChange();
    };
    window.addEventListener('focus', look);
    return () => window.removeEventListener('focus', look);
  }, [document, onChange]);
}

/** Asks before a page is left with changes that are not kept. */
export function useLeaveWarning(document: LessonDocument | null): void {
  useEffect(() => {
    const warn = (event: BeforeUnloadEvent) => {
      if (document && !document.settled) event.preventDefault();
    };
    window.addEventListener('beforeunload', warn);
    return () => window.removeEventListener('beforeunload', warn);
  }, [document]);
}
