/**
 * Opening a recording by what its first bytes say it is, not by its name. A decoder is loaded with the first file that
 * needs it.
 *
 * Sources: RIFF (WAV); RFC 9639 (FLAC); RFC 3533 and 7845 (Ogg, Opus); ISO/IEC 11172-3 (MP3 frame sync) and id3.org
 * (ID3v2); RFC 8794 (EBML: WebM, Matroska); ISO/IEC 14496-12 (`ftyp`: MP4, M4A, QuickTime).
 */
import type { DecodedSound, ForFfmpeg } from './decoded-sound.ts';
import { requireWholePages } from './ogg-pages.ts';
import { cannotRead, type FoundSound } from './sound-fault.ts';
import { openWav } from './wav.ts';

/** What the first bytes say a file is. */
function kindOf(head: Buffer): 'wav' | 'flac' | 'vorbis' | 'opus' | 'container' | 'mp3' | 'text' | 'other' {
  const at = (from: number, to: number) => head.toString('latin1', from, to);
  if (at(0, 4) === 'RIFF' && at(8, 12) === 'WAVE') return 'wav';
  if (at(0, 4) === 'fLaC') return 'flac';
  // The first packet of an Ogg file names its codec.
  if (at(0, 4) === 'OggS' && at(29, 33) === 'FLAC') return 'flac';
  if (at(0, 4) === 'OggS') return at(29, 35) === 'vorbis' ? 'vorbis' : 'opus';
  if (at(4, 8) === 'ftyp' || at(4, 8) === 'moov' || at(4, 8) === 'mdat') return 'container';
  if (head.length >= 4 && head.readUInt32BE(0) === 0x1a45_dfa3) return 'container';
  if (at(0, 3) === 'ID3') return 'mp3';
  if (head.length >= 2 && (head.readUInt16BE(0) & 0xffe6) === 0xffe2) return 'mp3';
  return head.includes(0) ? 'other' : 'text';
}

const forFfmpeg = (found: FoundSound): ForFfmpeg => ({ forFfmpeg: found, wholeSeconds: null });

/**
 * Opens a recording.
 * @param head the first bytes of the file
 * @throws SoundFault when it cannot be read; a file that breaks off throws while its blocks are read.
 */
export async function openSound(path: string, head: Buffer): Promise<DecodedSound | ForFfmpeg> {
  switch (kindOf(head)) {
    case 'wav':
      return (await openWav(path)) ?? forFfmpeg({ is: 'oddWav' });
    case 'flac':
      return (await import('./streams.ts')).openFlac(path, head);
    case 'vorbis':
      await requireWholePages(path);
      return (await import('./streams.ts')).openVorbis(path);
    case 'opus':
      await requireWholePages(path);
      return (await import('./container.ts')).openContainer(path);
    case 'mp3':
      return (await import('./streams.ts')).openMp3(path, head);
    case 'container':
      return (await import('./container.ts')).openContainer(path);
    case 'text':
      throw cannotRead({ is: 'text' });
    default:
      return forFfmpeg({ is: 'unknown' });
  }
}
