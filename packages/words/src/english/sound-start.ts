/** What is said until a sound comes, where none comes, and where it comes by a simpler way, in English. */

/** Words beside Play. */
export const soundStart = {
  loading: 'Setting up the kit …',
  slow: 'The sound is slow to come. Trying a simpler one …',
  simpler: {
    room: 'This device is busy: you hear the drums without the room around them.',
    kit: 'The kit takes long to set up here. You hear a simpler one until it is there.',
    plain: 'You hear a simpler sound: this browser would not play the whole one. A newer browser may.',
  },
  failed: {
    output:
      'No sound came out of this device. End a call, close other programs that sound, look after loudspeaker or headphones; then press Play again.',
    others:
      'No sound came, not even a simpler one. Close other programs and pages, open this page anew, then press Play again.',
  },
  held: 'The sound was taken away, by a call or another program. Play goes on from the bar where it stopped.',
} as const;
