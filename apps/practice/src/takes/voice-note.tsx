/** What the teacher said about a take, to be heard: kept on the device, else from the network. */
import type { SentTake, SpokenNote } from '@shedbook/routes';
import { useEffect, useState } from 'react';
import { keptVoice, voiceAddress } from './voice-notes.ts';

interface VoiceNoteProps {
  readonly take: SentTake;
  readonly note: SpokenNote;
  /** What it is about. */
  readonly label: string;
}

/** The sound. */
export function VoiceNote({ take, note, label }: VoiceNoteProps) {
  const [url, setUrl] = useState<string | null>(null);
  useEffect(() => {
    let address = '';
    let isGone = false;
    void keptVoice(take, note).then((kept) => {
      if (isGone) return;
      if (kept) address = URL.createObjectURL(kept);
      setUrl(kept ? address : voiceAddress(take, note));
    });
    return () => {
      isGone = true;
      if (address !== '') URL.revokeObjectURL(address);
    };
  }, [take, note]);
  // biome-ignore lint/a11y/useMediaCaption: the teacher's own words; the line beside it may say them too
  return url && <audio controls preload="none" src={url} aria-label={label} />;
}
